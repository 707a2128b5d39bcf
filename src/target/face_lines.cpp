#include "target/face_lines.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::target {

std::vector<double> face_roots(double chord) {
  const auto steps = static_cast<std::size_t>(std::max(400.0, std::ceil(chord / 2)));
  std::vector<double> out(steps + 1);
  for (std::size_t k = 0; k <= steps; ++k) out[k] = static_cast<double>(k) / static_cast<double>(steps);
  return out;
}

Polyline face_line(const TargetSection& target, Face face) {
  Polyline line;
  for (const double u : face_roots(target.chord)) {
    // Beyond the trailing edge by a rounding there is no half-breadth, so the last place is read a hair ahead of it.
    const double along = target.chord * u * u;
    const double inside = target.leading_edge_x + std::min(along, target.chord * (1 - 1e-12));
    line.emplace_back(target.leading_edge_x + along, target.half_breadth(face, inside));
  }
  return line;
}

Polygon outline_of(const Polyline& port, const Polyline& starboard) {
  std::vector<Point> corners(port.begin(), port.end());
  for (auto at = starboard.rbegin(); at != starboard.rend(); ++at) corners.emplace_back(at->x(), -at->y());
  return polygon_of(corners);
}

}  // namespace fairblade::target
