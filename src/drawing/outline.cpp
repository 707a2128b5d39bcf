#include "drawing/outline.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <utility>

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

namespace {

struct Faces {
  Polyline port, starboard;
  std::size_t size() const { return port.size() + starboard.size(); }
  Polygon outline() const { return target::outline_of(port, starboard); }
};

Faces faces_of(const section::MeasuredSection& measured) {
  constexpr double hair = 1e-3;  // mm, half of what a crossed edge is held thick
  Faces out;
  auto along_port = measured.port.along(), along_starboard = measured.starboard.along();
  for (const double u : measured_roots(measured)) {
    const double x = measured.chord * u * u;
    double to_port = along_port.at_u(u), to_starboard = along_starboard.at_u(u);
    if (to_port + to_starboard < 0) {
      const double middle = (to_port - to_starboard) / 2;
      to_port = hair + middle;
      to_starboard = hair - middle;
    }
    out.port.emplace_back(x, to_port);
    out.starboard.emplace_back(x, to_starboard);
  }
  if (!is_scan(measured)) return out;
  return {thinned(out.port, scan_tolerance), thinned(out.starboard, scan_tolerance)};
}

Faces faces_of(const target::TargetSection& target) {
  return {target::face_line(target, Face::port), target::face_line(target, Face::starboard)};
}

Polyline part_of(const Polyline& line, double from, double to) {
  Polyline out;
  from = std::max(from, line.front().x());
  to = std::min(to, line.back().x());
  if (!(from < to)) return out;
  out.emplace_back(from, ordinate_at(line, from));
  const auto beyond = [](double x, const Point& p) { return x < p.x(); };
  for (auto p = std::upper_bound(line.begin(), line.end(), from, beyond); p != line.end() && p->x() < to; ++p) out.push_back(*p);
  // The end itself, not what follows it: an upright edge has two ordinates.
  out.emplace_back(to, to < line.back().x() ? ordinate_at(line, to) : line.back().y());
  return out;
}

}  // namespace

Polygon measured_outline(const section::MeasuredSection& measured) { return faces_of(measured).outline(); }

Polygon target_outline(const target::TargetSection& target) { return faces_of(target).outline(); }

// Where a scan's noise crosses the target at nearly every reading, the time that polygons take grows with the square of them.
Apart outlines_apart(const section::MeasuredSection& measured, const target::TargetSection& target) {
  constexpr std::size_t few = 3000, in_strip = 600;
  const Faces blade = faces_of(measured), wanted = faces_of(target);
  if (blade.size() + wanted.size() <= few) return apart(wanted.outline(), blade.outline());
  constexpr double all = std::numeric_limits<double>::infinity();
  std::vector<double> ends{-all};
  for (std::size_t k = in_strip / 2; k + in_strip / 2 < blade.port.size(); k += in_strip / 2) ends.push_back(blade.port[k].x());
  ends.push_back(all);
  Apart out;
  const auto take = [](MultiPolygon& whole, MultiPolygon&& part) {
    whole.insert(whole.end(), std::make_move_iterator(part.begin()), std::make_move_iterator(part.end()));
  };
  for (std::size_t k = 1; k < ends.size(); ++k) {
    const auto cut = [&](const Faces& faces) {
      return Faces{part_of(faces.port, ends[k - 1], ends[k]), part_of(faces.starboard, ends[k - 1], ends[k])};
    };
    const Faces old_part = cut(blade), new_part = cut(wanted);
    if (old_part.port.empty() || new_part.port.empty()) {
      if (!new_part.port.empty()) out.a.push_back(new_part.outline());
      if (!old_part.port.empty()) out.b.push_back(old_part.outline());
      continue;
    }
    Apart part = apart(new_part.outline(), old_part.outline());
    take(out.a, std::move(part.a));
    take(out.b, std::move(part.b));
  }
  return out;
}

Point widest(const Polyline& line) {
  return *std::max_element(line.begin(), line.end(), [](const Point& a, const Point& b) { return a.y() < b.y(); });
}

}  // namespace fairblade::drawing
