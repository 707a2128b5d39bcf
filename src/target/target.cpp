#include "target/target.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"

namespace fairblade::target {

double TargetSection::half_breadth(Face face, double x) const {
  constexpr double rounding = 1e-6;  // mm: a reading at the edge itself stays on the section
  if (x < leading_edge_x - rounding || x > trailing_edge_x() + rounding) return 0;
  x = std::clamp(x, leading_edge_x, trailing_edge_x());
  if (const FaceShape* own = shape(face)) return own->at(x);
  return whole_chord() * curve.at((x - leading_edge_x + skeg) / whole_chord());
}

double TargetSection::slope(Face face, double x) const {
  if (const FaceShape* own = shape(face)) return own->slope(x);
  return curve.slope((x - leading_edge_x + skeg) / whole_chord());
}

std::vector<Point> TargetSection::outline() const {
  // 500 steps even in sqrt(x): worked from the second derivative, a chord of 1200 mm is missed by about 0.002 mm.
  const auto fractions = chord_fractions(500);
  const auto place = [&](double fraction) { return fraction >= 1 ? trailing_edge_x() : leading_edge_x + fraction * chord; };
  std::vector<Point> corners;
  corners.reserve(2 * fractions.size());
  for (const double f : fractions) corners.emplace_back(place(f), half_breadth(Face::port, place(f)));
  for (auto f = fractions.rbegin(); f != fractions.rend(); ++f) {
    corners.emplace_back(place(*f), -half_breadth(Face::starboard, place(*f)));
  }
  return corners;
}

}  // namespace fairblade::target
