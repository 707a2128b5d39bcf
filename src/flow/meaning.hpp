// Product: what the before-and-after page means, in plain sentences with their numbers. Verbs: meaning_of.
//
// A change counts when it is beyond twice its error from the readings (one standard deviation), of the suction thrice and of
// the pull two and a half times:
// nose suction and pull: against what reading errors alone would show of a blade already on its target (feigned.hpp). Seen on
// 150 blades of three exact stations with 0.5 mm of noise: a suction gain was claimed of 6, a pull of 7;
// edge: a reading's error times sqrt(2) (two faces) over the root of the number of stations; balance: a reading's error
// over the mean chord, likewise.
#pragma once
#include "flow/water.hpp"

namespace fairblade::flow {

constexpr double twitchy_balance =
    20;  ///< per cent of the area ahead of the stock, above which helms turn twitchy; common practice, no source

/// From a Water of which all else is filled in.
Meaning meaning_of(const job::Job& job, const Water& water);

}  // namespace fairblade::flow
