#include "target/edge_cuts.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "target/remedies.hpp"

namespace fairblade::target {

using section::MeasuredSection;

namespace {

// No place outside the target's face stands further from it than this: straight across, or past an end of the chord.
double most_outside(const TargetSection& target, const section::SurfacePoint& point) {
  const double across = point.half_breadth - target.half_breadth(point.face, point.x);
  if (!(across > 0)) return 0;
  if (point.x >= target.leading_edge_x && point.x <= target.trailing_edge_x()) return across;
  const double edge = std::clamp(point.x, target.leading_edge_x, target.trailing_edge_x());
  return std::hypot(point.x - edge, std::max(0.0, point.half_breadth - target.half_breadth(point.face, edge)));
}

// How far it does: the least distance to the face near there, or to the nose.
double outside_by(const TargetSection& target, const section::SurfacePoint& point, double most) {
  // The nearest place lies within `most` along the chord; a round nose wants even steps in sqrt(x).
  const double from = std::max(target.leading_edge_x, point.x - most);
  const double to = std::min(target.trailing_edge_x(), point.x + most);
  if (to <= from) return most;
  const double u0 = std::sqrt(from - target.leading_edge_x);
  const double u1 = std::sqrt(to - target.leading_edge_x);
  constexpr int steps = 400;
  double best = most * most;
  for (int k = 0; k <= steps; ++k) {
    const double u = u0 + (u1 - u0) * k / steps;
    const double x = std::min(target.leading_edge_x + u * u, to);
    const double along = x - point.x, across = target.half_breadth(point.face, x) - point.half_breadth;
    best = std::min(best, along * along + across * across);
  }
  return std::sqrt(best);
}

struct EdgeCut {
  double depth = 0;  // mm, along the target's normal, deepest at a reading; told only where deeper than `beyond`
  double x = 0;      // mm aft of the measured leading edge
  Face face = Face::port;
};

EdgeCut deepest(const MeasuredSection& measured, const TargetSection& target, double from, double to, double beyond) {
  std::vector<std::pair<double, const section::SurfacePoint*>> outside;  // what may stand out furthest comes first
  for (const auto& point : measured.points) {
    if (point.x < from || point.x > to) continue;
    const double most = most_outside(target, point);
    if (most > beyond) outside.emplace_back(most, &point);
  }
  std::stable_sort(outside.begin(), outside.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  EdgeCut out;
  const section::SurfacePoint* at = nullptr;
  for (const auto& [most, point] : outside) {
    if (most < out.depth) break;
    const double depth = outside_by(target, *point, most);
    if (depth < out.depth || !(depth > 0)) continue;
    if (depth == out.depth && at != nullptr && at < point) continue;  // the first that was read
    out = {depth, point->x, point->face};
    at = point;
  }
  return out;
}

// Readings ahead of 2 % of the chord, and aft of 92 %.
EdgeCut nose_cut(const MeasuredSection& measured, const TargetSection& target, double beyond) {
  return deepest(measured, target, -1, cut_from * measured.chord, beyond);
}

EdgeCut tail_cut(const MeasuredSection& measured, const TargetSection& target, double beyond) {
  return deepest(measured, target, cut_to * measured.chord, 2 * measured.chord, beyond);
}

}  // namespace

void judge_edges(const job::Job& job, const MeasuredSection& measured, const job::TargetRequest& request, const Wish& wish,
                 double thickness_ratio, TargetSection& target) {
  const auto mm = [&](double v) { return both_units(v, job.units); };
  const double limit = request.max_removal;
  const auto keeps = [&](const Wish& changed, bool nose) {
    const TargetSection tried = target_of(changed, thickness_ratio);
    return (nose ? nose_cut(measured, tried, limit) : tail_cut(measured, tried, limit)).depth <= limit + 1e-9;
  };
  const bool stays = measured.skeg > 0 || request.leading_edge == job::LeadingEdgeWork::leave;
  const EdgeCut nose = stays ? EdgeCut{} : nose_cut(measured, target, limit);
  if (nose.depth > limit + 1e-9) {
    const auto forward = least_tenth(0, 0.2 * measured.chord, job.units, [&](double d) {
      Wish changed = wish;
      changed.leading_edge_x -= d;
      changed.chord += d;
      return keeps(changed, true);
    });
    std::string ways =
        forward ? "build the leading edge forward by " + mm(std::max(0.1, *forward - wish.leading_edge_x)) + ", or " : "";
    target.warnings.push_back({"nose-cut", "station " + measured.station,
                               std::string(section::name_of(nose.face)) + ": the leading edge would be cut " + mm(nose.depth) +
                                   " deep at x " + mm(nose.x) + ": " + ways + "allow " + mm(rounded_up(nose.depth, job.units)) +
                                   " off there"});
  }
  const EdgeCut tail = tail_cut(measured, target, limit);
  if (tail.depth <= limit + 1e-9) return;
  const auto aft = least_tenth(0, 0.4 * measured.chord, job.units, [&](double d) {
    Wish changed = wish;
    changed.chord += d;
    return keeps(changed, false);
  });
  const double edge = target.trailing_edge_thickness;
  const auto thicker = least_tenth(edge, std::max(edge, 0.5 * thickness_ratio * wish.chord), job.units, [&](double e) {
    Wish changed = wish;
    changed.edge = {job::TrailingEdgeThickness::Kind::mm, e};
    return buildable(curve_of(changed, thickness_ratio)) && keeps(changed, false);
  });
  const double already = target.trailing_edge_x() - measured.chord;
  // An edge drawn in by fairing is at its old place again before it is extended.
  std::string ways = aft && already + *aft >= 0.05 ? "extend the trailing edge by " + mm(already + *aft) + ", or " : "";
  if (thicker) ways += "leave it " + mm(*thicker) + " thick, or ";
  target.warnings.push_back({"tail-cut", "station " + measured.station,
                             std::string(section::name_of(tail.face)) + ": the run aft would be cut " + mm(tail.depth) +
                                 " deep at x " + mm(tail.x) + ": " + ways + "allow " + mm(rounded_up(tail.depth, job.units)) +
                                 " off there"});
}

}  // namespace fairblade::target
