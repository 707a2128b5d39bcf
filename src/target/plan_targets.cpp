#include <algorithm>
#include <cmath>

#include "base/geometry.hpp"
#include "target/fairness.hpp"
#include "target/target.hpp"

namespace fairblade::target {
namespace {

using form::FittedForm;
using form::Form;
using form::SectionCurve;
using job::TargetRequest;
using section::MeasuredSection;

Form form_of(const TargetRequest& request, const FittedForm& fitted) {
  switch (request.max_thickness_at.kind) {
    case job::MaxThicknessAt::Kind::form: return Form{fitted.form.thickness_ratio, 6, 0};
    case job::MaxThicknessAt::Kind::closest: return fitted.modified;
    case job::MaxThicknessAt::Kind::fraction: break;
  }
  return Form{fitted.form.thickness_ratio, 6, request.max_thickness_at.value};
}

double thickness_of(const TargetRequest& request, const Form& closest, const TargetSection& target) {
  switch (request.thickness.kind) {
    case job::Thickness::Kind::ratio: return request.thickness.value;
    case job::Thickness::Kind::mm: return request.thickness.value / target.chord;
    case job::Thickness::Kind::least_fill:
    case job::Thickness::Kind::closest: break;
  }
  return closest.thickness_ratio;
}

std::optional<double> radius_of(const TargetRequest& request, double chord) {
  switch (request.leading_edge_radius.kind) {
    case job::LeadingEdgeRadius::Kind::mm: return request.leading_edge_radius.value / chord;
    case job::LeadingEdgeRadius::Kind::percent_chord: return request.leading_edge_radius.value / 100;
    case job::LeadingEdgeRadius::Kind::form: break;
  }
  return std::nullopt;
}

std::optional<double> edge_of(const TargetRequest& request, double chord) {
  if (request.trailing_edge_thickness.kind == job::TrailingEdgeThickness::Kind::form) return std::nullopt;
  return request.trailing_edge_thickness.value / chord;
}

void fill_in_figures(TargetSection& target) {
  target.leading_edge_radius = target.chord * target.curve.radius();
  target.trailing_edge_thickness = target.chord * target.curve.edge();
  target.max_thickness_at = target.curve.max_thickness_at();
  target.thickness_ratio = target.curve.form().thickness_ratio;
  const Polygon polygon = polygon_of(target.outline());
  target.area = area(polygon);
  target.girth = perimeter(polygon);
}

Outcome<TargetSection> plan_one(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                                const FittedForm& fitted) {
  const TargetRequest& request = station.target;
  TargetSection out;
  out.station = measured.station;
  out.down = measured.down;
  out.leading_edge_x = -request.extend_leading_edge.mm;
  out.chord = measured.chord + request.extend_leading_edge.mm + request.extend_trailing_edge.mm;
  if (measured.ahead) out.ahead = *measured.ahead + request.extend_leading_edge.mm;
  Form form = form_of(request, fitted);
  form.thickness_ratio = thickness_of(request, form, out);
  out.curve = SectionCurve(form, radius_of(request, out.chord), edge_of(request, out.chord));
  if (auto fault = judge_curve(job, station, out.curve, out.chord, out.warnings)) return *fault;
  fill_in_figures(out);
  return out;
}

}  // namespace

Outcome<std::vector<TargetSection>> plan_targets(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                                 const std::vector<FittedForm>& fitted) {
  std::vector<TargetSection> out;
  std::vector<Fault> faults;
  for (std::size_t k = 0; k < measured.size(); ++k) {
    auto one = plan_one(job, job.stations[k], measured[k], fitted[k]);
    if (one) out.push_back(std::move(*one));
    else faults.insert(faults.end(), one.faults().begin(), one.faults().end());
  }
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace fairblade::target
