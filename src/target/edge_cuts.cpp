#include "target/edge_cuts.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "target/edges_only.hpp"
#include "target/face_shapes.hpp"
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

/// The readings of a stretch, and the outline between them: a corner that nobody read stands out as well.
std::vector<section::SurfacePoint> places_in(const MeasuredSection& measured, double from, double to) {
  constexpr int between = 24;
  std::vector<section::SurfacePoint> out;
  for (const auto& point : measured.points) {
    if (point.x >= from && point.x <= to) out.push_back(point);
  }
  const double first = std::max(from, 0.0), last = std::min(to, measured.chord);
  for (const Face face : {Face::port, Face::starboard}) {
    for (int k = 0; k <= between; ++k) {
      const double x = first + (last - first) * k * k / (between * between);
      out.push_back({x, measured.side(face).at(x), 0, face});
    }
  }
  return out;
}

EdgeCut deepest(const MeasuredSection& measured, const TargetSection& target, double from, double to, double beyond) {
  const auto places = places_in(measured, from, to);
  std::vector<std::pair<double, const section::SurfacePoint*>> outside;  // what may stand out furthest comes first
  for (const auto& point : places) {
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
    out.depth = depth;
    out.x = point->x;
    out.face = point->face;
    at = point;
  }
  return out;
}

// Ahead of 2 % of the chord, and aft of 92 %.
EdgeCut nose_cut(const MeasuredSection& measured, const TargetSection& target, double beyond) {
  return deepest(measured, target, -1, cut_from * measured.chord, beyond);
}

EdgeCut tail_cut(const MeasuredSection& measured, const TargetSection& target, double beyond) {
  return deepest(measured, target, cut_to * measured.chord, 2 * measured.chord, beyond);
}

bool nose_stays(const MeasuredSection& measured, const job::TargetRequest& request) {
  return measured.skeg > 0 || request.leading_edge == job::LeadingEdgeWork::leave;
}

/// What another wish or another request would be planned as, from what was planned.
class Replanned {
 public:
  Replanned(const MeasuredSection& measured, const job::TargetRequest& request, const Wish& wish, double thickness_ratio)
      : measured_(measured), request_(request), wish_(wish), ratio_(thickness_ratio) {
    if (least()) need_ = least_thickness(measured, wish, request);
  }

  bool least() const { return request_.thickness.kind == job::Thickness::Kind::least_fill; }
  double ratio(const Wish& wish, const job::TargetRequest& request) const {
    if (least()) return std::clamp(ratio_ + least_thickness(measured_, wish, request) - need_, thinnest, thickest);
    return request_.thickness.kind == job::Thickness::Kind::mm ? ratio_ * wish_.chord / wish.chord : ratio_;
  }
  /// None where no such section can be built.
  std::optional<TargetSection> target(const Wish& wish, const job::TargetRequest& request) const {
    const double ratio = this->ratio(wish, request);
    if (!buildable(curve_of(wish, ratio))) return std::nullopt;
    return target_of(wish, ratio);
  }

 private:
  const MeasuredSection& measured_;
  const job::TargetRequest& request_;
  Wish wish_;
  double ratio_, need_ = 0;
};

using CutOf = std::function<EdgeCut(const TargetSection&)>;
using CutAt = EdgeCut (*)(const MeasuredSection&, const TargetSection&, double);

/// One edge's cut, tried out.
class Tried {
 public:
  Tried(const MeasuredSection& measured, const job::TargetRequest& request, const Replanned& replanned, CutAt cut)
      : measured_(measured), request_(request), replanned_(replanned), cut_(cut) {}

  bool keeps(const Wish& wish) const { return keeps(wish, request_); }
  bool keeps(const Wish& wish, const job::TargetRequest& request) const {
    const auto target = replanned_.target(wish, request);
    return target && cut_(measured_, *target, request.max_removal).depth <= request.max_removal + 1e-9;
  }
  /// The least max_removal that nothing would pass then. A deeper one lets a least fill be thinner, and cut the edge deeper
  /// again.
  std::optional<double> allowed(const Wish& wish, double depth, LengthUnit unit) const {
    if (!replanned_.least()) return rounded_up(depth, unit);
    return least_tenth(request_.max_removal, 3 * depth, unit, [&](double mm) {
      job::TargetRequest changed = request_;
      changed.max_removal = mm;
      return keeps(wish, changed);
    });
  }

 private:
  const MeasuredSection& measured_;
  const job::TargetRequest& request_;
  const Replanned& replanned_;
  CutAt cut_;
};

/// Those deeper than the limit are the target's.
void take_cuts(const EdgeCut& nose, const EdgeCut& tail, double limit, TargetSection& target) {
  if (cuts_beyond(nose.depth, limit)) target.nose_cut = nose;
  if (cuts_beyond(tail.depth, limit)) target.tail_cut = tail;
}

Wish forward(Wish wish, double mm) {
  wish.leading_edge_x -= mm;
  wish.chord += mm;
  return wish;
}

Wish aft(Wish wish, double mm) {
  wish.chord += mm;
  return wish;
}

}  // namespace

bool nose_cut_too_deep(const MeasuredSection& measured, const job::TargetRequest& request, const TargetSection& target) {
  if (nose_stays(measured, request)) return false;
  return cuts_beyond(nose_cut(measured, target, request.max_removal).depth, request.max_removal);
}

bool tail_cut_too_deep(const MeasuredSection& measured, const job::TargetRequest& request, const TargetSection& target) {
  return cuts_beyond(tail_cut(measured, target, request.max_removal).depth, request.max_removal);
}

Wish with_room_at_edges(const MeasuredSection& measured, const job::TargetRequest& request, Wish wish, double thickness_ratio) {
  const Replanned replanned(measured, request, wish, thickness_ratio);
  const auto grown = [&](CutAt cut, double most, Wish (*grow)(Wish, double)) {
    const Tried tried(measured, request, replanned, cut);
    const auto works = [&](double mm) { return tried.keeps(grow(wish, mm)); };
    if (!(most > 0) || works(0)) return;
    if (const auto mm = nearest_that_works(0, most, works)) wish = grow(wish, *mm);
  };
  const auto &fore = request.extend_leading_edge, &rear = request.extend_trailing_edge;
  const double ahead = -wish.leading_edge_x - measured.skeg;
  if (fore.up_to && !nose_stays(measured, request)) grown(nose_cut, fore.mm - ahead, forward);
  if (rear.up_to) grown(tail_cut, rear.mm - (wish.leading_edge_x + wish.chord - measured.chord), aft);
  return wish;
}

void judge_edges(const job::Job& job, const MeasuredSection& measured, const job::TargetRequest& request, const Wish& wish,
                 double thickness_ratio, EdgesAsked asked, TargetSection& target) {
  const double limit = request.max_removal;
  take_cuts(nose_stays(measured, request) ? EdgeCut{} : nose_cut(measured, target, limit), tail_cut(measured, target, limit),
            limit, target);
  if ((!target.nose_cut && !target.tail_cut) || asked != EdgesAsked::ways_round) return;
  const Replanned replanned(measured, request, wish, thickness_ratio);
  if (target.nose_cut) {
    EdgeCut& nose = *target.nose_cut;
    const Tried tried(measured, request, replanned, nose_cut);
    const auto ahead = least_tenth(0, 0.2 * measured.chord, job.units, [&](double d) { return tried.keeps(forward(wish, d)); });
    if (ahead) nose.build_out = std::max(0.1, *ahead - wish.leading_edge_x);
    nose.allow = tried.allowed(wish, nose.depth, job.units);
  }
  if (!target.tail_cut) return;
  EdgeCut& tail = *target.tail_cut;
  const Tried tried(measured, request, replanned, tail_cut);
  const auto behind = least_tenth(0, 0.4 * measured.chord, job.units, [&](double d) { return tried.keeps(aft(wish, d)); });
  const double already = target.trailing_edge_x() - measured.chord;
  // An edge drawn in by fairing is at its old place again before it is extended.
  if (behind && already + *behind >= 0.05) tail.build_out = already + *behind;
  const double edge = target.trailing_edge_thickness;
  tail.thickness = least_tenth(edge, std::max(edge, 0.5 * thickness_ratio * wish.chord), job.units, [&](double e) {
    Wish changed = wish;
    changed.edge = {job::TrailingEdgeThickness::Kind::mm, e};
    return tried.keeps(changed);
  });
  tail.allow = tried.allowed(wish, tail.depth, job.units);
}

void judge_rebuilt_edges(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                         const form::FittedForm& fitted, EdgesAsked asked, TargetSection& target) {
  const job::TargetRequest& request = station.target;
  const double limit = request.max_removal;
  const EdgesWish wish = edges_wish(station, measured, fitted, -target.leading_edge_x, target.trailing_edge_x() - measured.chord);
  const CutOf nose_of = [&](const TargetSection& one) { return deepest(measured, one, -1, wish.keep_from, limit); };
  const CutOf tail_of = [&](const TargetSection& one) { return deepest(measured, one, wish.keep_to, 2 * measured.chord, limit); };
  const auto keeps = [&](const EdgesWish& other, const CutOf& cut_of) {
    auto tried = plan_edges_only(job, station, measured, fitted, other, false);
    if (!tried) return false;
    if (!request.no_cut.empty()) bend_round_patches(job, measured, request, *tried);
    return cut_of(*tried).depth <= limit + 1e-9;
  };
  const auto least = [&](double EdgesWish::*which, double more, const CutOf& cut_of) {
    return least_tenth(wish.*which, wish.*which + more, job.units, [&](double value) {
      EdgesWish other = wish;
      other.*which = value;
      return keeps(other, cut_of);
    });
  };
  take_cuts(wish.nose ? nose_of(target) : EdgeCut{}, wish.tail ? tail_of(target) : EdgeCut{}, limit, target);
  if (asked != EdgesAsked::ways_round) return;
  if (target.nose_cut) {
    EdgeCut& nose = *target.nose_cut;
    nose.build_out = least(&EdgesWish::extend_leading, 0.2 * measured.chord, nose_of);
    nose.radius = least(&EdgesWish::radius, 3 * wish.radius, nose_of);
    nose.allow = rounded_up(nose.depth, job.units);
  }
  if (target.tail_cut) {
    EdgeCut& tail = *target.tail_cut;
    tail.build_out = least(&EdgesWish::extend_trailing, 0.4 * measured.chord, tail_of);
    tail.thickness = least(&EdgesWish::edge, 0.5 * measured.figures.max_thickness, tail_of);
    tail.allow = rounded_up(tail.depth, job.units);
  }
}

}  // namespace fairblade::target
