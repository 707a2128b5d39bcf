#include "recheck/open_places.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::recheck {
namespace {

constexpr double as_high = 0.01;  // mm
constexpr double stretches = 40;  // of the chord

double stretch_of(const HeightRead& height) {
  return (height.surface.section.trailing_edge_x - height.surface.section.leading_edge_x) / stretches;
}

const HeightRead* height_at(const std::vector<HeightRead>& heights, double down) {
  const auto found = std::find_if(heights.begin(), heights.end(),
                                  [&](const HeightRead& one) { return std::abs(one.surface.down - down) < as_high; });
  return found == heights.end() ? nullptr : &*found;
}

}  // namespace

void OpenPlaces::read_again(const std::vector<HeightRead>& heights) {
  std::erase_if(places_, [&](const OpenPlace& place) {
    const HeightRead* height = height_at(heights, place.down);
    return height && std::any_of(height->readings.begin(), height->readings.end(), [&](const Judged& one) {
             return one.face == place.reading.face && std::abs(one.x - place.reading.x) <= stretch_of(*height);
           });
  });
}

void OpenPlaces::add(const std::string& file, const std::vector<HeightRead>& heights, double tolerance) {
  constexpr double twice = 2;  // standard deviations, as what is listed as work
  for (const HeightRead& height : heights) {
    const std::size_t before = places_.size();
    for (const Judged& one : height.readings) {
      if (within(one, tolerance) || one.alone || std::abs(one.depth) <= twice * one.sigma) continue;
      if (one.both && one.face == Face::starboard) continue;
      const bool same = places_.size() > before && places_.back().reading.face == one.face &&
                        std::abs(places_.back().reading.x - one.x) <= stretch_of(height);
      if (!same) places_.push_back({file, height.surface.name, height.surface.down, one});
      else if (std::abs(one.depth) > std::abs(places_.back().reading.depth)) places_.back().reading = one;
    }
  }
}

std::vector<OpenPlace> OpenPlaces::at_heights_of(const std::vector<HeightRead>& last) const {
  std::vector<OpenPlace> out;
  for (const OpenPlace& place : places_) {
    if (height_at(last, place.down)) out.push_back(place);
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const OpenPlace& a, const OpenPlace& b) { return std::abs(a.reading.depth) > std::abs(b.reading.depth); });
  return out;
}

}  // namespace fairblade::recheck
