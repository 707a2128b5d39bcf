#include "fill/nose.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/numerics.hpp"
#include "base/polyline.hpp"
#include "base/side_by_side.hpp"

namespace fairblade::fill {
namespace {

using target::Face;
using target::TargetSection;

constexpr double degree = std::numbers::pi / 180;
constexpr double nose_share = 0.12, most_share = 0.6;  // of the chord: the least and the most that a gauge spans
constexpr double past_flat = 6;                        // mm that it goes on aft of the last flat
constexpr double shortest_tail = 40;                   // mm, for its lettering
constexpr double widest_horn = 150;                    // mm ahead that a horn still reaches for the stock

/// A face of the finished target, closely read: for flats at several angles.
struct CloseFace {
  static constexpr int steps = 600;
  CloseFace(const TargetSection& of, Face which) : target(of), face(which) {
    for (int k = 0; k <= steps; ++k) half_breadth[static_cast<std::size_t>(k)] = target.half_breadth(face, place(k));
  }
  double place(int k) const { return target.leading_edge_x + target.chord * (1 - 1e-12) * k * k / (steps * steps); }
  const TargetSection& target;
  Face face;
  std::array<double, steps + 1> half_breadth{};
};

/// A flat at that angle on the finished face: where y cos - x sin is greatest, sharpened by the slope.
std::optional<Point> touching(const CloseFace& close, double angle) {
  const TargetSection& target = close.target;
  const double across = std::cos(angle), along = std::sin(angle);
  int best = 0;
  double most = -1e300;
  for (int k = 0; k <= CloseFace::steps; ++k) {
    const double height = close.half_breadth[static_cast<std::size_t>(k)] * across - close.place(k) * along;
    if (height > most) most = height, best = k;
  }
  if (best == CloseFace::steps) return std::nullopt;
  const double low = best == 0 ? target.leading_edge_x + 1e-9 * target.chord : close.place(best - 1);
  const auto steeper = [&](double x) { return target.slope(close.face, x) - std::tan(angle); };
  const double x = root_between(steeper, low, close.place(best + 1)).value_or(close.place(best));
  return Point(x, target.half_breadth(close.face, x));
}

std::optional<Flat> flat_of(const CloseFace& close, const StageSection& section, double degrees) {
  const auto at = touching(close, degrees * degree);
  if (!at) return std::nullopt;
  const double inwards = section.stage.to_come - section.stand_off;
  const Flat out{degrees, at->x() + inwards * std::sin(degrees * degree) - section.leading_edge_x,
                 at->y() - inwards * std::cos(degrees * degree)};
  if (out.x < 0 || out.half_breadth <= 0) return std::nullopt;  // the coats have taken this part of the nose
  return out;
}

/// Length of a face from the leading edge to x, and of the blunt piece ahead of it, to the centre plane: less than nothing on the
/// face that begins beyond that, so that both faces' sum is right where the nose stands off it.
double run_of(const Polyline& line, double x) {
  double sum = line.front().y();
  for (std::size_t k = 1; k < line.size(); ++k) {
    const Point &a = line[k - 1], &b = line[k];
    if (a.x() >= x) break;
    const double share = b.x() > x ? (x - a.x()) / (b.x() - a.x()) : 1;
    sum += share * std::hypot(b.x() - a.x(), b.y() - a.y());
  }
  return sum;
}

/// How far the gauge reaches: at least past the last flat; to the stock where that is near, else to a round share.
void reach_of(Nose& nose) {
  double least = std::max(nose_share * nose.chord, shortest_tail);
  for (const auto& face : nose.flats) {
    for (const auto& flat : face) {
      if (flat) least = std::max(least, flat->x + past_flat);
    }
  }
  const double most = std::min(longest_gauge - shortest_horn, most_share * nose.chord);
  least = std::min(least, most);
  nose.horn = shortest_horn;
  if (nose.ahead && *nose.ahead >= least && *nose.ahead <= most) {
    nose.tail = *nose.ahead;
    nose.ends_on_stock = true;
  } else {
    double share = std::ceil(least / nose.chord * 20 - 1e-9) / 20;
    if (share * nose.chord > most) share = std::max(1.0, std::floor(most / nose.chord * 100)) / 100;
    nose.tail = share * nose.chord;
  }
  nose.tail_fraction = nose.tail / nose.chord;
  if (!nose.ahead) return;
  if (*nose.ahead < -nose.horn && -*nose.ahead <= std::min(widest_horn, longest_gauge - nose.tail)) {
    nose.horn = -*nose.ahead;
    nose.ends_on_stock = true;
  }
  if (*nose.ahead >= -nose.horn && *nose.ahead <= nose.tail) nose.stock = nose.ahead;
}

std::string why_none(const Height& height) {
  if (height.target.skeg > 0) return "behind a fixed skeg: there is no nose";
  if (height.edge_left) return "the leading edge is left as it is";
  return {};
}

}  // namespace

Hold hold_of(const StageSection& section, double radius, double end) {
  const double front = section.leading_edge_x;
  const double chord = section.trailing_edge_x - front;
  const auto thickness = [&](double x) {
    return ordinate_at(section.port, front + x) + ordinate_at(section.starboard, front + x);
  };
  const auto behind = [&](double x) { return x - tip_per_gap * thickness(x); };  // where the tip comes to
  constexpr int steps = 400;
  const auto place = [&](int k) { return chord * k * k / (steps * steps); };
  int widest = 0;
  for (int k = 1; k <= steps; ++k) {
    if (thickness(place(k)) > thickness(place(widest))) widest = k;
  }
  Hold out;
  out.gap_for_radius = gap_per_radius * radius;
  int last = widest;
  while (last > 0 && behind(place(last)) > 0) --last;
  out.at_widest = last == widest;
  out.x = out.at_widest ? place(widest) : root_between(behind, place(last), place(last + 1)).value_or(place(last));
  out.gap = thickness(out.x);
  out.radius = out.gap / gap_per_radius;
  out.end_gap = thickness(end);
  out.short_at_end = behind(end);
  return out;
}

Nose nose_of(const Height& height, const Stage& stage, double stand_off) {
  Nose out;
  out.name = height.name;
  out.down = height.down;
  out.station = height.station;
  out.why_none = why_none(height);
  if (!out.why_none.empty()) return out;
  const TargetSection& target = height.target;
  const auto section = stage_section(target, stage, stand_off);
  if (!section) {
    out.why_none = "the coats are thicker than the blade here";
    return out;
  }
  out.section = *section;
  out.chord = section->trailing_edge_x - section->leading_edge_x;
  if (target.ahead) out.ahead = *target.ahead - (section->leading_edge_x - target.leading_edge_x);
  out.finished_radius = target.leading_edge_radius;
  out.radius = std::max(0.0, target.leading_edge_radius - stage.to_come + stand_off);
  for (const Face face : {Face::port, Face::starboard}) {
    const CloseFace close(target, face);
    for (std::size_t k = 0; k < flat_degrees.size(); ++k) {
      out.flats[face == Face::port ? 0 : 1][k] = flat_of(close, *section, flat_degrees[k]);
    }
  }
  reach_of(out);
  const double end = section->leading_edge_x + out.tail;
  out.girth = run_of(section->port, end) + run_of(section->starboard, end);
  out.cloth = out.girth + 2 * cloth_lap;
  out.hold = hold_of(*section, out.radius, out.tail);
  return out;
}

std::vector<Nose> noses_down(const job::Job& job, const std::vector<target::TargetSection>& targets, const Stage& stage,
                             double spacing) {
  const auto heights = heights_down(job, targets, spacing);
  std::vector<Nose> out(heights.size());
  side_by_side(out.size(), [&](std::size_t k) { out[k] = nose_of(heights[k], stage); });
  return out;
}

}  // namespace fairblade::fill
