// Product: how hard the nose works before and after. Verbs: compare_noses. Degrees.
//
// Only a comparison: at one helm, the nose with the lesser suction has the lesser pressure rise to climb behind it. No
// stall angle is given, for no published boundary between kinds of stall was at hand.
#pragma once
#include <optional>
#include <string>

#include "flow/feigned.hpp"
#include "flow/sections.hpp"

namespace fairblade::flow {

constexpr double judged_helm = 8;     ///< degrees
constexpr double searched_helm = 25;  ///< degrees: how far a helm is sought

struct NoseComparison {
  bool known = false;
  std::string why_not;
  double before = 0, after = 0;  ///< greatest mean -Cp over a stretch (AtAngle::suction), the worse side, at judged_helm
  double ratio = 1;              ///< after / before: below 1 the new nose works less hard
  std::optional<double> same_suction_helm;  ///< where the new nose reaches what the old one shows at judged_helm
  /// From the readings' errors: what of `before` a blade already on its target would show (mean above `after`), and one
  /// standard deviation. `sure_helm`: as same_suction_helm, with that excess taken off `before`.
  Feigned feigned;
  std::optional<double> sure_helm;
};

NoseComparison compare_noses(const SectionWater& before, const SectionWater& after, const Feigned& feigned);

}  // namespace fairblade::flow
