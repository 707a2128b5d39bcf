#include "drawing/outline.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::drawing {
namespace {

constexpr double tolerance = 0.004;  // mm, what thinning may drop

/// Square roots of chord fractions at which to sample: fine enough that the chords between them miss a section by a
/// few thousandths of a mm.
std::vector<double> roots_for(double chord) {
  const auto count = static_cast<int>(std::max(400.0, std::ceil(chord / 2)));
  std::vector<double> out(static_cast<std::size_t>(count) + 1);
  for (std::size_t k = 0; k < out.size(); ++k) out[k] = static_cast<double>(k) / count;
  return out;
}

/// The same for a measured section. Curvature jumps at the nodes of the interpolant, so they are corners too.
std::vector<double> measured_roots(const section::MeasuredSection& measured) {
  std::vector<double> roots = roots_for(measured.chord);
  for (const section::Side* side : {&measured.port, &measured.starboard}) {
    for (const section::Node& node : side->nodes()) {
      roots.push_back(std::sqrt(std::clamp(node.x / side->chord(), 0.0, 1.0)));
    }
  }
  std::sort(roots.begin(), roots.end());
  roots.erase(std::unique(roots.begin(), roots.end()), roots.end());
  return roots;
}

Polyline sampled_target(const target::TargetSection& target, Face face) {
  Polyline line;
  for (const double u : roots_for(target.chord)) {
    // Beyond the trailing edge by a rounding there is no half-breadth, so the last place is read a hair ahead of it.
    const double along = target.chord * u * u;
    const double inside = target.leading_edge_x + std::min(along, target.chord * (1 - 1e-12));
    line.emplace_back(target.leading_edge_x + along, target.half_breadth(face, inside));
  }
  return line;
}

Polygon closed(const Polyline& port, const Polyline& starboard) {
  std::vector<Point> corners(port.begin(), port.end());
  for (auto at = starboard.rbegin(); at != starboard.rend(); ++at) corners.emplace_back(at->x(), -at->y());
  return polygon_of(corners);
}

}  // namespace

Polyline measured_line(const section::MeasuredSection& measured, Face face) {
  const section::Side& side = measured.side(face);
  Polyline line;
  for (const double u : measured_roots(measured)) line.emplace_back(side.chord() * u * u, side.at_u(u));
  return thinned(line, tolerance);
}

Polyline target_line(const target::TargetSection& target, Face face) {
  return thinned(sampled_target(target, face), tolerance);
}

Polygon measured_outline(const section::MeasuredSection& measured) {
  constexpr double hair = 1e-3;  // mm, half of what a crossed edge is held thick
  Polyline port, starboard;
  for (const double u : measured_roots(measured)) {
    const double x = measured.chord * u * u;
    double to_port = measured.port.at_u(u), to_starboard = measured.starboard.at_u(u);
    if (to_port + to_starboard < 0) {
      const double middle = (to_port - to_starboard) / 2;
      to_port = hair + middle;
      to_starboard = hair - middle;
    }
    port.emplace_back(x, to_port);
    starboard.emplace_back(x, to_starboard);
  }
  return closed(port, starboard);
}

Polygon target_outline(const target::TargetSection& target) {
  return closed(sampled_target(target, Face::port), sampled_target(target, Face::starboard));
}

Point widest(const Polyline& line) {
  return *std::max_element(line.begin(), line.end(), [](const Point& a, const Point& b) { return a.y() < b.y(); });
}

}  // namespace fairblade::drawing
