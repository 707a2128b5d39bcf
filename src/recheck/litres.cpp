#include "recheck/litres.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

#include "base/polyline.hpp"
#include "base/side_by_side.hpp"
#include "fill/fill.hpp"
#include "fill/noise.hpp"
#include "target/target.hpp"

namespace fairblade::recheck {
namespace {

using fill::mm3_per_litre;
constexpr int steps = 8;  // of Simpson's rule in each piece of span, an even number

/// Depth along one face at one height, by fraction of the girth; straight between its places, which span 0 to 1.
struct Profile {
  double down = 0;
  std::size_t height = 0;  ///< which of the round's
  std::vector<double> place, depth;

  /// At the piece that begins at the last place up to g, looked for from `k` on: asked for rising places.
  double at(double g, std::size_t& k) const {
    while (k + 1 < place.size() && place[k] <= g) ++k;
    const double run = place[k] - place[k - 1];
    const double w = run > 0 ? std::clamp((g - place[k - 1]) / run, 0.0, 1.0) : 1;
    return depth[k - 1] + w * (depth[k] - depth[k - 1]);
  }
};

Profile profile_of(const HeightRead& height, std::size_t number, Face face) {
  Profile out{height.surface.down, number, {}, {}};
  const double girth = height.girth[face == Face::port ? 0 : 1];
  std::vector<std::pair<double, double>> read;
  for (const std::size_t k : height.counted(face)) read.emplace_back(height.readings[k].girth / girth, height.readings[k].depth);
  std::sort(read.begin(), read.end());
  const auto push = [&](double place, double depth) {
    out.place.push_back(place);
    out.depth.push_back(depth);
  };
  push(0, read.front().second);
  for (const auto& [place, depth] : read) push(std::clamp(place, 0.0, 1.0), depth);
  push(1, read.back().second);
  return out;
}

/// Depths of two profiles at the places of both.
struct Bay {
  std::vector<double> place, a, b;
};

Bay bay_of(const Profile& a, const Profile& b) {
  Bay out;
  out.place.reserve(a.place.size() + b.place.size());
  std::merge(a.place.begin(), a.place.end(), b.place.begin(), b.place.end(), std::back_inserter(out.place));
  out.place.erase(std::unique(out.place.begin(), out.place.end()), out.place.end());
  std::size_t in_a = 1, in_b = 1;
  for (const double place : out.place) {
    out.a.push_back(a.at(place, in_a));
    out.b.push_back(b.at(place, in_b));
  }
  return out;
}

/// Integrals of what is above nothing and of what is below it, w of the way from one profile to another; per mm of
/// girth.
Amount areas(const Bay& bay, double w) {
  Amount out;
  const auto depth = [&](std::size_t k) { return (1 - w) * bay.a[k] + w * bay.b[k]; };
  double from = depth(0);
  for (std::size_t k = 1; k < bay.place.size(); ++k) {
    const double run = bay.place[k] - bay.place[k - 1], to = depth(k);
    if ((from > 0) == (to > 0)) {
      (from + to > 0 ? out.add : out.remove) += run * std::abs(from + to) / 2;
    } else {
      const double turn = run * from / (from - to);
      (from > 0 ? out.add : out.remove) += turn * std::abs(from) / 2;
      (to > 0 ? out.add : out.remove) += (run - turn) * std::abs(to) / 2;
    }
    from = to;
  }
  return out;
}

/// One face of the blade.
class FaceIntegral {
 public:
  FaceIntegral(const std::vector<Profile>& profiles, const std::map<double, double>& girths)
      : profiles_(profiles), girths_(girths) {}

  /// mm³ between two heights, none of the profiles' nor of the girths' strictly between them.
  Amount over(double from, double to) const {
    const auto [a, b] = about((from + to) / 2);
    const Bay bay = bay_of(*a, *b);
    Amount out;
    for (int k = 0; k <= steps; ++k) {
      const double down = from + (to - from) * k / steps, apart = b->down - a->down;
      const double w = apart > 0 ? std::clamp((down - a->down) / apart, 0.0, 1.0) : 0;
      const double weight = (to - from) / (3 * steps) * (k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2) * girth(down);
      const Amount here = areas(bay, w);
      out.add += weight * here.add;
      out.remove += weight * here.remove;
    }
    return out;
  }
  /// The height whose readings count for most there.
  std::size_t nearest(double down) const {
    const auto [a, b] = about(down);
    return std::abs(down - a->down) <= std::abs(b->down - down) ? a->height : b->height;
  }
  double girth(double down) const {
    const auto below = girths_.lower_bound(down);
    if (below == girths_.begin()) return below->second;
    if (below == girths_.end()) return girths_.rbegin()->second;
    const auto above = std::prev(below);
    return above->second + (down - above->first) / (below->first - above->first) * (below->second - above->second);
  }

 private:
  std::pair<const Profile*, const Profile*> about(double down) const {
    std::size_t k = 0;
    while (k < profiles_.size() && profiles_[k].down < down) ++k;
    if (k == 0) return {&profiles_.front(), &profiles_.front()};
    if (k == profiles_.size()) return {&profiles_.back(), &profiles_.back()};
    return {&profiles_[k - 1], &profiles_[k]};
  }
  const std::vector<Profile>& profiles_;
  const std::map<double, double>& girths_;
};

/// Length of each face of the target by height, at the stage.
std::map<double, double> girths_of(const Frozen& frozen, const std::vector<HeightRead>& heights, Face face) {
  std::map<double, double> out;
  for (const HeightRead& one : heights) out[one.surface.down] = one.girth[face == Face::port ? 0 : 1];
  for (const auto& target : frozen.targets) {
    if (out.count(target.down) != 0) continue;
    const auto section = fill::stage_section(target, frozen.stage);
    if (!section) continue;
    out[target.down] = length_of(section->line(face));
  }
  return out;
}

/// What reading error makes of the litres.
struct ByError {
  fill::NoiseSum add, remove;
  double spread = 0;  ///< mm³, of weights times deviations
  void weigh(const fill::WeighedChange& one) {
    add.add(one);
    remove.add({-one.change, one.sigma, one.weight});
    spread += one.weight * one.sigma;
  }
};

/// The surface that each reading stands for: half-way to its neighbours along the girth and down the blade.
void weigh(const std::vector<HeightRead>& heights, const std::vector<Profile>& profiles, Face face, double first, double last,
           ByError& out) {
  for (std::size_t p = 0; p < profiles.size(); ++p) {
    const HeightRead& height = heights[profiles[p].height];
    const double above = p == 0 ? first : (profiles[p - 1].down + profiles[p].down) / 2;
    const double below = p + 1 == profiles.size() ? last : (profiles[p].down + profiles[p + 1].down) / 2;
    const double girth = height.girth[face == Face::port ? 0 : 1];
    const auto own = height.counted(face);
    for (std::size_t i = 0; i < own.size(); ++i) {
      const Judged& one = height.readings[own[i]];
      const double from = i == 0 ? 0 : (height.readings[own[i - 1]].girth + one.girth) / 2;
      const double to = i + 1 == own.size() ? girth : (one.girth + height.readings[own[i + 1]].girth) / 2;
      // Calipers are one reading for both faces, so it is weighed once, twice over.
      if (one.both && face == Face::starboard) continue;
      out.weigh({one.depth, one.sigma, std::max(0.0, to - from) * std::max(0.0, below - above) * (one.both ? 2 : 1)});
    }
  }
}

void add_up(Amount& to, const Amount& mm3) {
  to.add += mm3.add / mm3_per_litre;
  to.remove += mm3.remove / mm3_per_litre;
}

}  // namespace

Litres litres_left(const Frozen& frozen, const std::vector<HeightRead>& heights) {
  Litres out;
  out.by_height.resize(heights.size());
  if (heights.empty()) return out;
  const double first = frozen.targets.front().down, last = frozen.targets.back().down;
  const double top = std::min(first, 0.0), bottom = std::max(last, frozen.job.bottom.value_or(last));
  out.carried_on = heights.front().surface.down > first || heights.back().surface.down < last;
  ByError by_error;
  for (const Face face : {Face::port, Face::starboard}) {
    std::vector<Profile> profiles;
    for (std::size_t k = 0; k < heights.size(); ++k) {
      if (!heights[k].counted(face).empty()) profiles.push_back(profile_of(heights[k], k, face));
    }
    if (profiles.empty()) continue;
    const auto girths = girths_of(frozen, heights, face);
    const FaceIntegral integral(profiles, girths);
    std::vector<double> turns{first, last};
    for (const auto& [down, girth] : girths) turns.push_back(down);
    for (std::size_t k = 1; k < profiles.size(); ++k) turns.push_back((profiles[k - 1].down + profiles[k].down) / 2);
    std::sort(turns.begin(), turns.end());
    std::vector<Amount> here(turns.size());  // from the turn before
    side_by_side(turns.size(), [&](std::size_t k) {
      if (k > 0 && turns[k] > turns[k - 1] && turns[k] <= last) here[k] = integral.over(turns[k - 1], turns[k]);
    });
    for (std::size_t k = 1; k < turns.size(); ++k) {
      add_up(out.left, here[k]);
      add_up(out.by_height[integral.nearest((turns[k - 1] + turns[k]) / 2)], here[k]);
    }
    if (first > top) add_up(out.beyond, integral.over(top, first));
    if (bottom > last) add_up(out.beyond, integral.over(last, bottom));
    weigh(heights, profiles, face, first, last, by_error);
  }
  constexpr double at_reading = 0.39894, between_readings = 0.81161;
  out.by_chance = at_reading * between_readings * (heights.size() > 1 ? between_readings : 1) * by_error.spread / mm3_per_litre;
  out.add_error = by_error.add.total().error / mm3_per_litre;
  out.remove_error = by_error.remove.total().error / mm3_per_litre;
  return out;
}

}  // namespace fairblade::recheck
