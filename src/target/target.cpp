#include "target/target.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"

namespace fairblade::target {

double TargetSection::half_breadth(Face, double x) const {
  const double fraction = (x - leading_edge_x) / chord;
  if (fraction < 0 || fraction > 1) return 0;
  return chord * curve.at(fraction);
}

double TargetSection::slope(Face, double x) const { return curve.slope((x - leading_edge_x) / chord); }

std::vector<Point> TargetSection::outline() const {
  // 500 steps even in sqrt(x): on a chord of 1200 mm the chords of the polyline miss the curve by 0.002 mm.
  const auto fractions = chord_fractions(500);
  std::vector<Point> corners;
  corners.reserve(2 * fractions.size());
  for (const double f : fractions) corners.emplace_back(leading_edge_x + f * chord, chord * curve.at(f));
  for (auto f = fractions.rbegin(); f != fractions.rend(); ++f) {
    corners.emplace_back(leading_edge_x + *f * chord, -chord * curve.at(*f));
  }
  return corners;
}

}  // namespace fairblade::target
