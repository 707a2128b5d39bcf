// Product: what the before-and-after page means, in plain sentences with their numbers. Verbs: meaning_of.
//
// A change counts when it is beyond twice its error from the readings (one standard deviation each):
// nose suctions: suction_error, each station on its own; edge: a reading's error times sqrt(2) over the root of the
// number of stations; balance: a reading's error over the mean chord, likewise; pull: Water::cancel_error.
#pragma once
#include "flow/water.hpp"

namespace fairblade::flow {

/// From a Water of which all else is filled in.
Meaning meaning_of(const job::Job& job, const Water& water);

}  // namespace fairblade::flow
