#include <algorithm>
#include <cmath>

#include "base/geometry.hpp"
#include "base/numerics.hpp"
#include "target/face_shapes.hpp"
#include "target/fairness.hpp"
#include "target/least_fill.hpp"
#include "target/target.hpp"

namespace fairblade::target {

using form::FittedForm;
using form::Form;
using job::TargetRequest;
using section::MeasuredSection;

void fill_in_figures(TargetSection& target) {
  target.leading_edge_radius = target.skeg > 0 ? 0 : target.chord * target.curve.radius();
  target.trailing_edge_thickness = target.whole_chord() * target.curve.edge();
  target.max_thickness_at = target.curve.max_thickness_at();
  target.thickness_ratio = target.curve.form().thickness_ratio;
  if (target.port_shape || target.starboard_shape) {
    const auto thickness = [&](double x) {
      return target.half_breadth(Face::port, x) + target.half_breadth(Face::starboard, x);
    };
    target.trailing_edge_thickness = thickness(target.trailing_edge_x());
    double greatest = 0;
    for (const double f : chord_fractions(400)) {
      const double here = thickness(std::min(target.leading_edge_x + f * target.chord, target.trailing_edge_x()));
      if (here <= greatest) continue;
      greatest = here;
      target.max_thickness_at = (f * target.chord + target.skeg) / target.whole_chord();
    }
    target.thickness_ratio = greatest / target.whole_chord();
  }
  const Polygon polygon = polygon_of(target.outline());
  target.area = area(polygon);
  target.girth = perimeter(polygon);
}

namespace {

Form family_of(const TargetRequest& request, const FittedForm& fitted) {
  switch (request.max_thickness_at.kind) {
    case job::MaxThicknessAt::Kind::form: return Form{fitted.form.thickness_ratio, 6, 0};
    case job::MaxThicknessAt::Kind::closest: return fitted.modified;
    case job::MaxThicknessAt::Kind::fraction: break;
  }
  return Form{fitted.form.thickness_ratio, 6, request.max_thickness_at.value};
}

// What a station's target is to be, before the span is looked along.
struct Draft {
  Wish wish;
  double thickness_ratio = 0;
  std::optional<Need> need;  // least-fill
};

Draft draft_of(const job::Station& station, const MeasuredSection& measured, const FittedForm& fitted) {
  const TargetRequest& request = station.target;
  Draft out;
  if (request.thickness.kind == job::Thickness::Kind::least_fill) {
    const LeastFill least = least_fill(measured, fitted, request);
    return {least.wish, least.need.thickness_ratio, least.need};
  }
  const auto fixed = [](const job::Extension& e) { return e.up_to ? 0.0 : e.mm; };
  const Form family = family_of(request, fitted);
  out.wish = wish_of(measured, family, request, fixed(request.extend_leading_edge), fixed(request.extend_trailing_edge));
  switch (request.thickness.kind) {
    case job::Thickness::Kind::ratio: out.thickness_ratio = request.thickness.value; break;
    case job::Thickness::Kind::mm: out.thickness_ratio = request.thickness.value / out.wish.chord; break;
    default: out.thickness_ratio = family.thickness_ratio;
  }
  return out;
}

Place thickness_place(const job::Station& station) {
  const auto found = station.target.places.find("thickness");
  return found == station.target.places.end() ? station.place : found->second;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += (out.empty() ? "" : ", or ") + word;
  return out.empty() ? "this blade is too far from any foil: take edges-only" : out;
}

Fault impossible(const job::Job& job, const job::Station& station, const MeasuredSection& measured, const Draft& draft) {
  std::string reading;
  if (draft.need && draft.need->governing) {
    const auto& point = measured.points[*draft.need->governing];
    reading = "; the " + std::string(section::name_of(point.face)) + " reading at x " + in_unit(point.x, job.units) +
              " (" + measured.readings_from + ":" + std::to_string(point.line) + ") governs";
  }
  return {thickness_place(station),
          "station " + station.name + ": no section up to 30 % thick keeps every cut within " +
              in_unit(station.target.max_removal, job.units) + reading,
          joined(ways_out(job, measured, draft.wish, station.target))};
}

Outcome<TargetSection> finish(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                              const Draft& draft) {
  TargetSection out;
  out.station = measured.station;
  out.down = measured.down;
  out.skeg = draft.wish.skeg;
  out.leading_edge_x = draft.wish.leading_edge_x + out.skeg;
  out.chord = draft.wish.chord - out.skeg;
  if (measured.ahead) out.ahead = *measured.ahead - out.leading_edge_x;
  out.curve = curve_of(draft.wish, draft.thickness_ratio);
  if (auto fault = judge_curve(job, station, out.curve, out.whole_chord(), out.warnings)) return *fault;
  if (draft.need && draft.need->governing) {
    const auto& point = measured.points[*draft.need->governing];
    out.governing = Governing{point.face, point.x, point.line, draft.need->without_governing};
  }
  fill_in_figures(out);
  if (station.target.leading_edge == job::LeadingEdgeWork::leave) leave_leading_edge(job, measured, station.target, out);
  if (!station.target.no_cut.empty()) bend_round_patches(job, measured, station.target, out);
  if (out.port_shape || out.starboard_shape) fill_in_figures(out);
  if (station.target.leading_edge == job::LeadingEdgeWork::leave) out.leading_edge_radius = measured.figures.leading_edge_radius;
  return out;
}

}  // namespace

Outcome<std::vector<TargetSection>> plan_targets(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                                 const std::vector<FittedForm>& fitted) {
  std::vector<TargetSection> out;
  std::vector<Fault> faults;
  for (std::size_t k = 0; k < measured.size(); ++k) {
    const Draft draft = draft_of(job.stations[k], measured[k], fitted[k]);
    if (draft.need && !draft.need->possible) {
      faults.push_back(impossible(job, job.stations[k], measured[k], draft));
      continue;
    }
    auto one = finish(job, job.stations[k], measured[k], draft);
    if (one) out.push_back(std::move(*one));
    else faults.insert(faults.end(), one.faults().begin(), one.faults().end());
  }
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace fairblade::target
