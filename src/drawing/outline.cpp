#include "drawing/outline.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "target/face_lines.hpp"

namespace fairblade::drawing {
namespace {

constexpr double tolerance = 0.004;     // mm, what thinning may drop
constexpr double scan_tolerance = 0.1;  // mm, the same of a scanned section: a third of the pen that draws it
constexpr std::size_t scanned = 400;    // readings a side

bool is_scan(const section::MeasuredSection& measured) {
  return std::max(measured.port.nodes().size(), measured.starboard.nodes().size()) > scanned;
}

/// Where a measured section is sampled: as a target, and at the nodes of the interpolant, where curvature
/// jumps.
std::vector<double> measured_roots(const section::MeasuredSection& measured) {
  std::vector<double> roots = target::face_roots(measured.chord);
  for (const section::Side* side : {&measured.port, &measured.starboard}) {
    std::vector<double> nodes;
    nodes.reserve(side->nodes().size());
    for (const section::Node& node : side->nodes()) nodes.push_back(std::sqrt(std::clamp(node.x / side->chord(), 0.0, 1.0)));
    roots = merged(roots, nodes);
  }
  roots.erase(std::unique(roots.begin(), roots.end()), roots.end());
  return roots;
}

}  // namespace

Polyline measured_line(const section::MeasuredSection& measured, Face face) {
  const section::Side& side = measured.side(face);
  Polyline line;
  auto half_breadth = side.along();
  for (const double u : measured_roots(measured)) line.emplace_back(side.chord() * u * u, half_breadth.at_u(u));
  return thinned(line, is_scan(measured) ? scan_tolerance : tolerance);
}

Polyline target_line(const target::TargetSection& target, Face face) {
  return thinned(target::face_line(target, face), tolerance);
}

Polygon measured_outline(const section::MeasuredSection& measured) {
  constexpr double hair = 1e-3;  // mm, half of what a crossed edge is held thick
  Polyline port, starboard;
  auto along_port = measured.port.along(), along_starboard = measured.starboard.along();
  for (const double u : measured_roots(measured)) {
    const double x = measured.chord * u * u;
    double to_port = along_port.at_u(u), to_starboard = along_starboard.at_u(u);
    if (to_port + to_starboard < 0) {
      const double middle = (to_port - to_starboard) / 2;
      to_port = hair + middle;
      to_starboard = hair - middle;
    }
    port.emplace_back(x, to_port);
    starboard.emplace_back(x, to_starboard);
  }
  if (is_scan(measured)) return target::outline_of(thinned(port, scan_tolerance), thinned(starboard, scan_tolerance));
  return target::outline_of(port, starboard);
}

Polygon target_outline(const target::TargetSection& target) {
  return target::outline_of(target::face_line(target, Face::port), target::face_line(target, Face::starboard));
}

Point widest(const Polyline& line) {
  return *std::max_element(line.begin(), line.end(), [](const Point& a, const Point& b) { return a.y() < b.y(); });
}

}  // namespace fairblade::drawing
