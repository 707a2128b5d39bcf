// Private to the check room. Product: Sorted, a station's readings that agree, and those that do not. Verbs: sort_out.
//
// How smooth the blade is and which readings are slips are chosen together, for the greatest probability of all: a slip
// may be anything within a third of the chord, and is rare. So a smooth line with two slips is preferred to a lumpy one
// that runs through them.
#pragma once
#include <vector>

#include "check/fair_line.hpp"

namespace fairblade::check {

/// Of the log probability: what another way to read the sheet (sides, rows or a column moved) has to gain to be told.
constexpr double gain_needed = 12;
constexpr std::size_t most_rows = 40;  ///< of a station: every such way is tried

struct Suspect {
  Seen seen;
  Expected expected;  ///< by those that agree
  double off() const { return seen.value - expected.value; }
  double size() const { return (off() < 0 ? -off() : off()) / expected.error; }
};

struct Sorted {
  Frame frame;
  Smoothness smooth;
  std::vector<Seen> agreeing;
  std::vector<Suspect> suspects;
  double probability = 0;  ///< natural logarithm
  double scatter = 0;      ///< of those that agree about the fair line, in standard deviations: about 1
};

/// Too many suspects (over a sixth, where that is more than three) are none: the blade or the hand is rough, and the
/// smoothness says so.
Sorted sort_out(const std::vector<Seen>& seen, const Frame& frame);
/// The same where the smoothness is known from other readings of the station.
Sorted sort_out(const std::vector<Seen>& seen, const Frame& frame, const Smoothness& smooth);

}  // namespace fairblade::check
