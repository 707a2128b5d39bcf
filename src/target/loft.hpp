// A section at any height between the first and the last station, for people to draw and cut. Verbs: measured_at,
// target_at, screed_miss. mm.
//
// The loft: y/c at equal chord fraction, and c, `ahead` and the target's leading edge, straight between
// neighbouring stations. Where both targets are of one family (same place of greatest thickness and nose index) the
// lofted target is itself a curve of that family, exactly: the forms are linear in t, sqrt(r) and e.
#pragma once
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::target {

/// What a height between stations is called: "at 250".
std::string name_at(double down, LengthUnit unit);

/// The measured section at that height, marked as interpolated, without readings. `name` is what it will be called.
/// Its sides run through about 240 places even in sqrt(x) and both stations' own (seen: within 0.008 mm of the loft, on
/// stations read with 1.5 mm of noise).
/// Refused above the first station and below the last.
Outcome<section::MeasuredSection> measured_at(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                              double down, const std::string& name);

/// The target at that height; exact, for it keeps its own copies of both neighbours where it needs them.
Outcome<TargetSection> target_at(const job::Job& job, const std::vector<TargetSection>& targets, double down,
                                 const std::string& name);

/// How far a straight screed laid from one station to the next, along a line of equal chord fraction, misses the lofted
/// surface: y = c·(y/c) is quadratic in height, so the miss is (c2 - c1)(n2 - n1)/4 with n = y/c, half-way down.
struct ScreedMiss {
  double mm = 0;  ///< greatest by size; positive: the screed stands off outside the loft and leaves filler standing
  double down = 0, chord_fraction = 0;
  Face face = Face::port;
};
ScreedMiss screed_miss(const TargetSection& above, const TargetSection& below);

}  // namespace fairblade::target
