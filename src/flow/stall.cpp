#include "flow/stall.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"

namespace fairblade::flow {
namespace {

constexpr std::size_t rough_panels = 120;  // differences of suctions need no more (seen: 1 % of an error)

std::optional<double> suction_of_form(double thickness_ratio, double radius) {
  form::Form base;
  base.thickness_ratio = thickness_ratio;
  const auto nodes = nodes_of(form::SectionCurve(base, radius, std::nullopt), rough_panels);
  const auto flow = PanelFlow::solve(nodes.nodes, nodes.frame);
  if (!flow) return std::nullopt;
  return flow->at(judged_helm).suction;
}

}  // namespace

NoseComparison compare_noses(const SectionWater& before, const SectionWater& after, double relative_error) {
  NoseComparison out;
  if (!before.known || !after.known) {
    out.why_not = before.known ? after.why_not : before.why_not;
    return out;
  }
  if (before.skeg > 0) {
    out.why_not = "the nose is the fixed skeg's, which is not touched";
    return out;
  }
  out.known = true;
  out.before = worse_suction(*before.flow, judged_helm);
  out.after = worse_suction(*after.flow, judged_helm);
  out.ratio = out.after / out.before;
  out.error = relative_error * out.ratio;
  out.error_known = relative_error > 0;
  const auto miss = [&](double helm) { return worse_suction(*after.flow, helm) - out.before; };
  if (miss(0) < 0 && miss(searched_helm) > 0) out.same_suction_helm = root_between(miss, 0, searched_helm);
  return out;
}

std::optional<double> suction_error(const section::MeasuredSection& measured, double reading_error) {
  const auto& figures = measured.figures;
  if (!(figures.leading_edge_radius > 0) || !(figures.max_thickness > 0)) return std::nullopt;
  const double t = std::clamp(figures.max_thickness / measured.chord, 0.02, 0.4);
  const double own = 1.1019 * t * t;  // the form's radius; a fit far from it says no more than "much blunter", "much sharper"
  const double r = std::clamp(figures.leading_edge_radius / measured.chord, 0.2 * own, 4 * own);
  const double dr = std::min(figures.leading_edge_radius_error / measured.chord, 0.8 * r);
  const double dt = std::min(reading_error * std::sqrt(2.0) / measured.chord, 0.5 * t);
  const auto middle = suction_of_form(t, r);
  const auto sharper = suction_of_form(t, r - dr), blunter = suction_of_form(t, r + dr);
  const auto thinner = suction_of_form(t - dt, r), thicker = suction_of_form(t + dt, r);
  if (!middle || !sharper || !blunter || !thinner || !thicker || !(*middle > 0)) return std::nullopt;
  return std::hypot((*sharper - *blunter) / 2, (*thinner - *thicker) / 2) / *middle;
}

}  // namespace fairblade::flow
