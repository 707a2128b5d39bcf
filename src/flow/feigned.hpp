// Product: what reading errors alone would show of a blade that already is its target. Verbs: feigned_by. Degrees.
//
// The target, read at the places where the station was read, each reading strayed by the job's reading error, put through the
// same outline and the same panel method, a few times over with fixed draws. Noise makes a nose look worse than it is
// (14 readings a side, 0.5 mm on a 420 mm 0012: seen: 0.52 on top of 4.4, give or take 0.48), so a ragged old outline must beat
// this, not merely the target, before its suction means anything.
#pragma once
#include <cstdint>

#include "flow/sections.hpp"

namespace fairblade::flow {

struct Feigned {
  bool known = false;
  double excess = 0;         ///< mean of suction at judged_helm, the worse side, above the clean target's
  double suction_error = 0;  ///< one standard deviation of that suction
  double cancel_error = 0;   ///< one standard deviation of helm_to_cancel, degrees
};

constexpr int feigned_draws = 24;           ///< so that the deviations above are known to some 15 %
constexpr std::size_t feigned_panels = 96;  ///< crowded to the nose: see Crowd

Feigned feigned_by(const section::MeasuredSection& measured, const target::TargetSection& target, double reading_error,
                   std::uint32_t seed, int draws = feigned_draws);

}  // namespace fairblade::flow
