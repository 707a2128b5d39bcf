// Sections between stations: y/c at equal chord fraction, and c, straight between two stations. Verbs: rib_of, between, pair_of.
#pragma once
#include <vector>

#include "target/slice.hpp"

namespace fairblade::fill {

using target::Areas;
using target::Outline;
using target::Pair;

/// A station sampled at common chord fractions, half-breadths in chords of its own.
struct Rib {
  double down = 0;
  double chord = 0;                     ///< mm
  double leading_edge_x = 0;            ///< mm, in the measured frame (0 for the measured rib)
  std::vector<double> port, starboard;  ///< chords
  double left_to = 0;                   ///< of a target: as it is there
};

Rib rib_of(const section::MeasuredSection& measured, const std::vector<double>& fractions);
Rib rib_of(const target::TargetSection& target, const std::vector<double>& fractions);
/// The rib at fraction w of the way from a to b (w may lie outside 0..1: straight continuation).
Rib between(const Rib& a, const Rib& b, double w);
/// The same of a surface within another: a lies within outer_a and b within outer_b by mm, and so does what is between them.
Rib between(const Rib& outer_a, const Rib& outer_b, const Rib& a, const Rib& b, double w);
/// Both ribs on common places.
Pair pair_of(const Rib& measured, const Rib& target, const std::vector<double>& fractions);

}  // namespace fairblade::fill
