// One cut through blade and target at any height, on common places along the chord; areas to add and to take off. Verbs:
// common_outlines, sampled, areas_between.
#pragma once
#include <vector>

#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::target {

/// An outline sampled at x, mm, sorted; port and starboard half-breadths there.
struct Outline {
  std::vector<double> x, port, starboard;
};

struct Areas {
  double add = 0, remove = 0;  ///< mm²
};

/// Both outlines at the same places wherever both exist, so that the difference of the polygons through them is exactly
/// the sum of differences between places. `count`: steps even in sqrt(x) on each; readings are places too.
struct Pair {
  Outline measured, target;
};
Pair common_outlines(const section::MeasuredSection& measured, const TargetSection& target, std::size_t count = 400);

/// The blade's own outline at its own places, kept where many targets are laid against it. mm, x in the measured frame.
struct Sampled {
  std::vector<double> x, port, starboard;
  std::size_t count = 0;
};
Sampled sampled(const section::MeasuredSection& measured, std::size_t count);
/// `own` is sampled of that `measured`.
Pair common_outlines(const section::MeasuredSection& measured, const Sampled& own, const TargetSection& target);

/// Areas of target without measured and of measured without target, by exact integration of the straight pieces between
/// common places (kinks where the outlines cross are found). The second of two routes; the first is polygon difference.
Areas areas_between(const Pair& pair);

}  // namespace fairblade::target
