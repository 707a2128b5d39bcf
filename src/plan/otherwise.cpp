#include "plan/otherwise.hpp"

#include <algorithm>
#include <array>

#include "target/remedies.hpp"

namespace fairblade::plan {

std::optional<Otherwise> asked_otherwise(const Plan& plan, const std::function<void(job::TargetRequest&)>& change) {
  if (is_scan(plan.job)) return std::nullopt;
  job::Job job = plan.job;
  for (job::Station& station : job.stations) change(station.target);
  change(job.target);
  const auto targets = target::plan_targets(job, plan.measured, plan.fitted, target::EdgesAsked::cuts);
  if (!targets) return std::nullopt;
  Otherwise out;
  out.add = fill::litres_to_add(plan.measured, *targets);
  for (std::size_t k = 0; k < targets->size(); ++k) {
    out.forward = std::max(out.forward, -(*targets)[k].leading_edge_x - plan.measured[k].skeg);
    out.nose_cut = out.nose_cut || (*targets)[k].nose_cut;
    out.tail_cut = out.tail_cut || (*targets)[k].tail_cut;
  }
  return out;
}

BuiltOut edges_uncut(const Plan& plan) {
  constexpr std::array<double, 5> more{1, 1.05, 1.1, 1.2, 1.4};  // of what the stations need, each for itself
  const auto found = [&](std::optional<target::EdgeCut> target::TargetSection::*cut,
                         job::Extension job::TargetRequest::*extension, bool Otherwise::*still) -> std::optional<double> {
    double most = 0;
    for (const target::TargetSection& one : plan.targets) {
      if (one.*cut) most = std::max(most, (one.*cut)->build_out.value_or(0));
    }
    if (!(most > 0)) return std::nullopt;
    for (const double times : more) {
      const double mm = target::rounded_up(times * most, plan.job.units);
      const auto then = asked_otherwise(plan, [&](job::TargetRequest& target) { target.*extension = {false, mm}; });
      if (then && !((*then).*still)) return mm;
    }
    return std::nullopt;
  };
  return {found(&target::TargetSection::nose_cut, &job::TargetRequest::extend_leading_edge, &Otherwise::nose_cut),
          found(&target::TargetSection::tail_cut, &job::TargetRequest::extend_trailing_edge, &Otherwise::tail_cut)};
}

}  // namespace fairblade::plan
