#include "target/least_fill.hpp"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <functional>

#include "base/numerics.hpp"
#include "base/side_by_side.hpp"
#include "target/face_shapes.hpp"
#include "target/fairness.hpp"
#include "target/remedies.hpp"
#include "target/slice.hpp"

namespace fairblade::target {

using form::Form;
using form::SectionCurve;
using job::TargetRequest;
using section::MeasuredSection;

namespace {

std::optional<double> radius_in_chords(const Wish& wish) {
  switch (wish.radius.kind) {
    case job::LeadingEdgeRadius::Kind::mm: return wish.radius.value / wish.chord;
    case job::LeadingEdgeRadius::Kind::percent_chord: return wish.radius.value / 100;
    case job::LeadingEdgeRadius::Kind::form: break;
  }
  return std::nullopt;
}

std::optional<double> edge_in_chords(const Wish& wish) {
  if (wish.edge.kind == job::TrailingEdgeThickness::Kind::form) return std::nullopt;
  return wish.edge.value / wish.chord;
}

// Buildable is monotone in thickness (it depends on r/t² and e/t): the least ratio that passes.
double least_buildable(const Wish& wish) {
  if (buildable(curve_of(wish, thinnest))) return thinnest;
  if (!buildable(curve_of(wish, thickest))) return 2 * thickest;
  double low = thinnest;
  double high = thickest;
  for (int k = 0; k < 40; ++k) {
    const double middle = (low + high) / 2;
    (buildable(curve_of(wish, middle)) ? high : low) = middle;
  }
  return high;
}

// The ratio that a reading needs: y(x) = y0(x) + t y1(x), from two thicknesses; y1 > 0 ahead of the edge.
double needed_at(const section::SurfacePoint& point, const Wish& wish, double limit, const SectionCurve& low,
                 const SectionCurve& high) {
  constexpr double t_low = 0.1, t_high = 0.2;
  const double fraction = std::clamp((point.x - wish.leading_edge_x) / wish.chord, 0.0, 1.0);
  const double at_low = wish.chord * low.at(fraction);
  const double gain = (wish.chord * high.at(fraction) - at_low) / (t_high - t_low);
  const double wanted = point.half_breadth - limit;
  if (gain <= 1e-9 * wish.chord) return wanted > at_low ? 2 * thickest : 0;
  return t_low + (wanted - at_low) / gain;
}

}  // namespace

bool buildable(const SectionCurve& curve) {
  return curve.edge() < 2 * curve.at(curve.max_thickness_at()) && !curve.tail_flares() && !nose_dips(curve) &&
         !curve.nose_overshoots();
}

SectionCurve curve_of(const Wish& wish, double thickness_ratio) {
  Form form = wish.family;
  form.thickness_ratio = thickness_ratio;
  return SectionCurve(form, radius_in_chords(wish), edge_in_chords(wish));
}

TargetSection target_of(const Wish& wish, double thickness_ratio) {
  TargetSection out;
  out.skeg = wish.skeg;
  out.leading_edge_x = wish.leading_edge_x + wish.skeg;
  out.chord = wish.chord - wish.skeg;
  out.curve = curve_of(wish, thickness_ratio);
  return out;
}

Wish wish_of(const MeasuredSection& measured, const Form& family, const TargetRequest& request, double extend_leading,
             double extend_trailing) {
  const double ahead = extend_leading + measured.skeg;
  return {family,
          -ahead,
          measured.chord + ahead + extend_trailing,
          measured.skeg,
          request.leading_edge_radius,
          request.trailing_edge_thickness};
}

double cut_limit(const TargetRequest& request, double down, double x) {
  return request.spares(down, x) ? 0 : request.max_removal;
}

bool cuts_beyond(double depth, double limit) { return depth > limit + std::max(0.05, 0.02 * limit); }

namespace {

constexpr std::size_t area_places = 160;

/// Where a leading edge is left as it is nothing comes off, whatever stands ahead of the target.
bool counts(const MeasuredSection& measured, const TargetRequest& request, const section::SurfacePoint& point) {
  constexpr double to_speak_of = 0.01;  // of the target: it takes off what is printed as nothing
  return point.x >= cut_from * measured.chord && point.x <= cut_to * measured.chord &&
         share_of_target(measured, request, point.x) > to_speak_of;
}

/// How far inside a reading that counts the section may run: where the blade blends into it only a share of that comes off.
double limit_at(const MeasuredSection& measured, const TargetRequest& request, const section::SurfacePoint& point) {
  return cut_limit(request, measured.down, point.x) / share_of_target(measured, request, point.x);
}

/// The target as it will be shaped: of a leading edge that is left as it is nothing is filled or cut.
TargetSection shaped(const MeasuredSection& measured, const TargetRequest& request, const Wish& wish, double thickness_ratio) {
  TargetSection out = target_of(wish, thickness_ratio);
  blend_leading_edge(measured, request, out);
  return out;
}

/// What each reading needs; 0 where it does not count.
struct Needs {
  std::vector<double> of;
  double greatest = 0;
  std::optional<std::size_t> governing;
};

Needs needs_of(const MeasuredSection& measured, const std::vector<section::SurfacePoint>& points, const Wish& wish,
               const TargetRequest& request) {
  const SectionCurve low = curve_of(wish, 0.1);
  const SectionCurve high = curve_of(wish, 0.2);
  Needs out;
  out.of.assign(points.size(), 0.0);
  for (std::size_t k = 0; k < points.size(); ++k) {
    const auto& point = points[k];
    if (!counts(measured, request, point)) continue;
    out.of[k] = needed_at(point, wish, limit_at(measured, request, point), low, high);
    if (out.of[k] > out.greatest) {
      out.greatest = out.of[k];
      out.governing = k;
    }
  }
  return out;
}

/// The greater of a ratio and the least that can be built: no search for this where that can.
double at_least_buildable(const Wish& wish, double ratio) {
  if (ratio >= thinnest && ratio <= thickest && buildable(curve_of(wish, ratio))) return ratio;
  return std::max(ratio, least_buildable(wish));
}

/// Of a scan's readings those that may govern, of both faces together: none that a straight line between two others covers, as a
/// convex curve covers all below its chords; and, for curves that are hollow aft, in each stretch of the chord the outermost.
std::vector<section::SurfacePoint> outermost(const MeasuredSection& measured, const TargetRequest& request) {
  constexpr std::size_t many = 1000, stretches = 400;
  if (measured.points.size() <= many) return measured.points;
  std::vector<section::SurfacePoint> all;
  for (const auto& point : measured.points) {
    if (counts(measured, request, point)) all.push_back(point);
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
  const auto out_by = [&](const section::SurfacePoint& p) { return p.half_breadth - limit_at(measured, request, p); };
  std::vector<section::SurfacePoint> hull, out;
  for (const auto& point : all) {
    const auto covered = [&](const section::SurfacePoint& a, const section::SurfacePoint& b) {
      return (out_by(b) - out_by(a)) * (point.x - a.x) <= (out_by(point) - out_by(a)) * (b.x - a.x);
    };
    while (hull.size() >= 2 && covered(hull[hull.size() - 2], hull.back())) hull.pop_back();
    hull.push_back(point);
    const auto stretch = [&](double x) { return static_cast<std::size_t>(x / measured.chord * stretches); };
    if (out.empty() || stretch(out.back().x) != stretch(point.x)) out.push_back(point);
    else if (out_by(point) > out_by(out.back())) out.back() = point;
  }
  out.insert(out.end(), hull.begin(), hull.end());
  return out;
}

/// Up to where no reading that counts gets filler which got none. What the edges then take more of (a nose made rounder, a tail
/// made thicker by what was asked for want filler at any thickness) is little beside what stays on: else a limit that lets much
/// come off would be read as a wish that it should.
double as_little_filler(const MeasuredSection& measured, const TargetRequest& request, const Wish& wish, double ratio) {
  constexpr double to_speak_of = 1e-3;  // mm of filler, all round
  constexpr double worth = 20;          // litres left on for each litre of filler more
  Wish plain = wish;                    // without what was asked for at the edges
  plain.radius.kind = job::LeadingEdgeRadius::Kind::form;
  plain.edge.kind = job::TrailingEdgeThickness::Kind::form;
  const SectionCurve low = curve_of(plain, 0.1), high = curve_of(plain, 0.2);
  double touched = thickest;
  for (const auto& point : measured.points) {
    if (counts(measured, request, point)) touched = std::min(touched, needed_at(point, plain, 0, low, high));
  }
  if (!(touched > ratio) || !buildable(curve_of(wish, touched))) return ratio;
  const auto areas = [&](double t) {
    return areas_between(common_outlines(measured, shaped(measured, request, wish, t), area_places));
  };
  const auto least = areas(ratio);
  const auto pays = [&](double t) {
    const auto then = areas(t);
    return then.add - least.add <= to_speak_of * 2 * wish.chord + std::max(0.0, least.remove - then.remove) / worth;
  };
  if (pays(touched)) return touched;
  constexpr int halvings = 20;
  for (int k = 0; k < halvings; ++k) {
    const double middle = (ratio + touched) / 2;
    (pays(middle) ? ratio : touched) = middle;
  }
  return ratio;
}

}  // namespace

Need needed_thickness(const MeasuredSection& measured, const Wish& wish, const TargetRequest& request) {
  const auto [needs, greatest, governing] = needs_of(measured, measured.points, wish, request);
  Need out;
  out.thickness_ratio = at_least_buildable(wish, greatest);
  if (greatest >= out.thickness_ratio) out.governing = governing;
  out.without_governing = out.thickness_ratio;
  if (out.governing) {
    // A caliper reading stands on both faces: without it both go.
    const auto& away = measured.points[*out.governing];
    const bool both = measured.thickness_only || measured.one_side_only;
    double rest = 0;
    for (std::size_t k = 0; k < needs.size(); ++k) {
      const bool same = k == *out.governing || (both && measured.points[k].x == away.x);
      if (!same) rest = std::max(rest, needs[k]);
    }
    out.without_governing = at_least_buildable(wish, rest);
  }
  out.possible = out.thickness_ratio <= thickest;
  out.no_more_filler = out.possible ? as_little_filler(measured, request, wish, out.thickness_ratio) : out.thickness_ratio;
  if (out.no_more_filler > out.thickness_ratio) out.governing.reset();  // nor does any, but the lowest ones together
  return out;
}

double least_thickness(const MeasuredSection& measured, const Wish& wish, const TargetRequest& request) {
  return at_least_buildable(wish, needs_of(measured, measured.points, wish, request).greatest);
}

double added_area(const MeasuredSection& measured, const Wish& wish, double thickness_ratio) {
  return areas_between(common_outlines(measured, target_of(wish, thickness_ratio), area_places)).add;
}

namespace {

// An extension to a ten-thousandth of its reach: searches within searches need no more, and cost the square of it.
double dip_between(const std::function<double(double)>& f, double low, double high) {
  constexpr int bits = 13;
  std::uintmax_t steps = 100;
  return boost::math::tools::brent_find_minima(f, low, high, bits, steps).first;
}

// Searches what the request leaves open; each level is one-dimensional with one dip (the family's is scanned first).
class Search {
 public:
  Search(const MeasuredSection& measured, const form::FittedForm& fitted, const TargetRequest& request)
      : measured_(measured),
        fitted_(fitted),
        request_(request),
        outermost_(outermost(measured, request)),
        sampled_(sampled(measured, area_places)) {}

  LeastFill best() const {
    if (request_.max_thickness_at.kind != job::MaxThicknessAt::Kind::closest) return over_leading(family(0));
    LeastFill best;
    double at = 0;
    constexpr double from = 0.2, to = 0.6, step = 0.025;
    std::vector<LeastFill> tried(static_cast<std::size_t>(std::lround((to - from) / step)) + 1);
    const auto place = [&](std::size_t k) { return from + static_cast<double>(k) * step; };
    side_by_side(tried.size(), [&](std::size_t k) { tried[k] = over_leading(family(place(k))); });
    for (std::size_t k = 0; k < tried.size(); ++k) take_better(best, tried[k], at, place(k));
    const auto area = [&](double m) { return score(over_leading(family(m))); };
    const double refined = dip_between(area, std::max(from, at - step), std::min(to, at + step));
    take_better(best, over_leading(family(refined)), at, refined);
    return best;
  }

 private:
  static double score(const LeastFill& one) {  // impossible ones rank behind by how impossible they are
    return one.need.possible ? one.add_area : 1e9 * (1 + one.need.thickness_ratio);
  }
  static void take_better(LeastFill& best, const LeastFill& one, double& at, double place) {
    if (best.wish.chord > 0 && score(one) >= score(best) - 1e-3) return;
    best = one;
    at = place;
  }

  Form family(double m) const {
    switch (request_.max_thickness_at.kind) {
      case job::MaxThicknessAt::Kind::form: return Form{0, 6, 0};
      case job::MaxThicknessAt::Kind::fraction: return Form{0, 6, request_.max_thickness_at.value};
      case job::MaxThicknessAt::Kind::closest: break;
    }
    return Form{0, fitted_.modified.leading_edge_index, m};
  }

  LeastFill at(const Form& family, double leading, double trailing) const {
    LeastFill out;
    out.wish = wish_of(measured_, family, request_, leading, trailing);
    out.need.thickness_ratio = at_least_buildable(out.wish, needs_of(measured_, outermost_, out.wish, request_).greatest);
    out.need.possible = out.need.thickness_ratio <= thickest;
    const auto target = shaped(measured_, request_, out.wish, std::min(out.need.thickness_ratio, thickest));
    out.add_area = areas_between(common_outlines(measured_, sampled_, target)).add;
    return out;
  }

  // Least over one extension: its ends and the dip between them. Nothing is built out that does not pay (1e-3 mm²).
  static LeastFill over(const job::Extension& extension, const std::function<LeastFill(double)>& at) {
    if (!extension.up_to) return at(extension.mm);
    LeastFill best = at(0);
    double place = 0;
    const double dip = dip_between([&](double mm) { return score(at(mm)); }, 0, extension.mm);
    take_better(best, at(dip), place, dip);
    take_better(best, at(extension.mm), place, extension.mm);
    return best;
  }

  LeastFill over_leading(const Form& family) const {
    return over(request_.extend_leading_edge, [&](double leading) {
      return over(request_.extend_trailing_edge, [&](double trailing) { return at(family, leading, trailing); });
    });
  }

  const MeasuredSection& measured_;
  const form::FittedForm& fitted_;
  const TargetRequest& request_;
  std::vector<section::SurfacePoint> outermost_;  // what is found with these is settled by all
  Sampled sampled_;
};

}  // namespace

LeastFill least_fill(const MeasuredSection& measured, const form::FittedForm& fitted, const TargetRequest& request) {
  LeastFill out = Search(measured, fitted, request).best();
  const double sought = out.need.thickness_ratio;
  out.need = needed_thickness(measured, out.wish, request);
  if (out.need.thickness_ratio > sought) {
    const auto target = shaped(measured, request, out.wish, std::min(out.need.thickness_ratio, thickest));
    out.add_area = areas_between(common_outlines(measured, target, area_places)).add;
  }
  return out;
}

std::vector<std::string> ways_out(const job::Job& job, const MeasuredSection& measured, const Wish& wish,
                                  const TargetRequest& request) {
  std::vector<std::string> out;
  const auto possible = [&](const Wish& w, const TargetRequest& r) { return needed_thickness(measured, w, r).possible; };
  const auto deeper = [&](double mm) {
    TargetRequest changed = request;
    changed.max_removal = mm;
    return possible(wish, changed);
  };
  const auto longer_aft = [&](double mm) {
    Wish changed = wish;
    changed.chord += mm;
    return possible(changed, request);
  };
  const auto thicker_edge = [&](double mm) {
    Wish changed = wish;
    changed.edge = {job::TrailingEdgeThickness::Kind::mm, mm};
    return possible(changed, request);
  };
  const double edge = curve_of(wish, thickest).edge() * wish.chord;
  const double thickest_edge = 0.5 * thickest * wish.chord;  // a form flares from e/t = 0.55 at the earliest
  if (const auto mm = least_tenth(request.max_removal, 0.2 * measured.chord, job.units, deeper)) {
    out.push_back("allow " + in_unit(*mm, job.units) + " off (max_removal)");
  }
  if (const auto mm = least_that_works(0, measured.chord, longer_aft); mm && longer_aft(rounded_up(*mm, job.units))) {
    const double already = wish.chord + wish.leading_edge_x - measured.chord;
    if (already + *mm >= 0.05)
      out.push_back("extend the trailing edge by " + in_unit(rounded_up(already + *mm, job.units), job.units));
  }
  if (const auto mm = least_tenth(edge, thickest_edge, job.units, thicker_edge)) {
    out.push_back("leave the trailing edge " + in_unit(*mm, job.units) + " thick");
  }
  return out;
}

}  // namespace fairblade::target
