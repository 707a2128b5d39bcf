#include "flow/stall.hpp"

#include <algorithm>

#include "base/numerics.hpp"

namespace fairblade::flow {
namespace {

std::optional<double> helm_of(const PanelFlow& flow, double suction) {
  const auto miss = [&](double helm) { return worse_suction(flow, helm) - suction; };
  if (!(miss(0) < 0 && miss(searched_helm) > 0)) return std::nullopt;
  return root_between(miss, 0, searched_helm);
}

}  // namespace

NoseComparison compare_noses(const SectionWater& before, const SectionWater& after, const Feigned& feigned) {
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
  out.feigned = feigned;
  out.before = worse_suction(*before.flow, judged_helm);
  out.after = worse_suction(*after.flow, judged_helm);
  out.ratio = out.after / out.before;
  out.same_suction_helm = helm_of(*after.flow, out.before);
  if (feigned.known) out.sure_helm = helm_of(*after.flow, out.before - std::max(0.0, feigned.excess));
  return out;
}

}  // namespace fairblade::flow
