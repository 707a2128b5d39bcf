// Product: Spot, readings that hang together: a hump, a hollow, a flat, a face that is low or high as a whole. Verbs:
// mark_alone, find_spots. mm.
//
// Told from reading noise by a scan: of all runs of neighbouring readings of one face at one height, the one whose
// weighted mean stands out most, |sum d/s²| / sqrt(sum 1/s²), is a spot where that passes what chance gives once in two
// hundred whole rounds (Bonferroni over all runs of the round, so the threshold rises with the number of readings: 4.5
// on five heights of 24). It must also mean something: its mean at least half the tolerance, and not one reading's
// doing, for without its greatest the rest still stands out by 2. A reading that stands out alone by 4 while its
// neighbours do not is marked to be read again. Measured (tests/recheck): of 200 rounds of noise alone, 84 readings of
// 0.3 mm, one shows a spot; of 50 with a hump of 1.2 mm over 60 mm in that noise, read every 15 mm, 40 show it.
//
// A low run is a flat where the surface itself, by a parabola through its readings, is less than 0.4 as round as the
// target there and not hollow, and the readings are good enough to tell; hollow where it curves the other way.
#pragma once
#include <string>
#include <vector>

#include "recheck/placed.hpp"

namespace fairblade::recheck {

enum class SpotKind { hump, low, flat, hollow, face_high, face_low };
/// "hump", "low place", "flat", "hollow", "whole face high", "whole face low".
const char* name_of(SpotKind kind);

/// A spot at one height: its first and its last reading there, by HeightRead::readings.
struct Reach {
  std::size_t height = 0, first = 0, last = 0;
};

struct Spot {
  SpotKind kind = SpotKind::hump;
  Face face = Face::port;
  bool both = false;         ///< calipers
  std::vector<Reach> reach;  ///< one, or neighbouring heights that show it too, from the top down
  Reach worst_at;
  double mean = 0, worst = 0;  ///< depth, + to add; of the readings at the worst height
  double chance = 0;           ///< standard deviations that its mean stands out by
};

/// A reading that stood out alone in an earlier round.
struct Doubted {
  double down = 0;
  Judged reading;
};
/// Marks the readings that stand out alone, to be read again: until then they count neither as work nor as litres. One that was
/// read more than once and alike, in this round or in an earlier one, is none, nor is one that stands out at the same share of
/// the girth at the next height too, as an edge does that was not built up. Those of this round are added to `doubted`.
void mark_alone(std::vector<HeightRead>& heights, std::vector<Doubted>& doubted);
/// Worst first, once those are marked.
std::vector<Spot> find_spots(const std::vector<HeightRead>& heights, double tolerance);

}  // namespace fairblade::recheck
