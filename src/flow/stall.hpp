// Product: how hard the nose works before and after. Verbs: compare_noses, suction_error. Degrees.
//
// Only a comparison: at one helm, the nose with the lesser suction has the lesser pressure rise to climb behind it. No
// stall angle is given, for no published boundary between kinds of stall was at hand.
#pragma once
#include <optional>
#include <string>

#include "flow/sections.hpp"

namespace fairblade::flow {

constexpr double judged_helm = 8;      ///< degrees
constexpr double searched_helm = 25;   ///< degrees: how far a helm is sought

struct NoseComparison {
  bool known = false;
  std::string why_not;
  double before = 0, after = 0;        ///< greatest -Cp over a stretch, the worse side, at judged_helm
  double ratio = 1;                    ///< after / before: below 1 the new nose works less hard
  double error = 0;                    ///< of the ratio, one standard deviation, from the readings of the old nose
  bool error_known = false;
  std::optional<double> same_suction_helm;  ///< where the new nose reaches what the old one had at judged_helm
};

NoseComparison compare_noses(const SectionWater& before, const SectionWater& after, double relative_error);

/// Relative error of a measured section's suction at judged_helm, one standard deviation. Simple: the plain form as thick as
/// the section and with its nose radius r, worked again with r and thickness each moved by its error up and down; half of each
/// difference, added as squares. The thickness's error is one reading's times sqrt(2) (two faces). Nothing without a radius.
std::optional<double> suction_error(const section::MeasuredSection& measured, double reading_error);

}  // namespace fairblade::flow
