#include "section/strip.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/numerics.hpp"
#include "section/outline.hpp"

namespace fairblade::section {
namespace {

struct Moved {
  double x = 0, y = 0;
};

// The place of u moved inward by depth along the side's normal, in the old frame. A blunt nose (half-breadth at
// x = 0) is a corner: it moves inward on both its faces.
Moved moved(const Side& side, double u, double depth) {
  const double x = side.chord() * u * u;
  const double y = side.at_u(u);
  if (u == 0) return {depth, std::max(0.0, y - depth)};
  // A secant over 2 % of the root-chord each way: crowded readings make the curve's own slope mostly noise.
  const double before = std::max(0.0, u - 0.02);
  const double after = std::min(1.0, u + 0.02);
  const double along_x = 2 * u * side.chord();
  const double along_y = (side.at_u(after) - side.at_u(before)) / (after - before);
  const double length = std::hypot(along_x, along_y);
  return {x + depth * along_y / length, y - depth * along_x / length};
}

// The stripped side: its moved nodes that still lie between the new edges, and the new edges themselves.
std::vector<Node> stripped(const Side& side, double depth, double new_chord) {
  std::vector<Node> dense;
  for (const double fraction : chord_fractions(800)) {
    const Moved place = moved(side, std::sqrt(fraction), depth);
    const double x = place.x - depth;
    if (dense.empty() || x > dense.back().x) dense.push_back({x, place.y});
  }
  const auto at = [&](double x) {
    auto above = std::lower_bound(dense.begin(), dense.end(), x, [](const Node& node, double v) { return node.x < v; });
    if (above == dense.begin()) return above->half_breadth;
    if (above == dense.end()) return dense.back().half_breadth;
    const Node& b = *above;
    const Node& a = *(above - 1);
    return a.half_breadth + (b.half_breadth - a.half_breadth) * (x - a.x) / (b.x - a.x);
  };
  std::vector<Node> out{{0, at(0)}};
  for (const Node& node : side.nodes()) {
    if (node.x == 0) continue;
    const Moved place = moved(side, std::sqrt(node.x / side.chord()), depth);
    const double x = place.x - depth;
    if (x > out.back().x + 1e-6 && x < new_chord - 1e-6) out.push_back({x, place.y});
  }
  out.push_back({new_chord, at(new_chord)});
  return out;
}

}  // namespace

std::optional<Fault> strip_coating(const job::Job& job, const job::Station& station, MeasuredSection& measured) {
  const double depth = job.coating_to_strip;
  const double new_chord = measured.chord - 2 * depth;
  const Fault nothing_left{
      station.place,
      "station " + station.name + ": taking " + in_unit(depth, job.units) + " of old coating off each face leaves no blade",
      "check coating_to_strip, or the readings of this station"};
  if (new_chord <= 0) return nothing_left;
  const Side old_port = measured.port;
  const Side old_starboard = measured.starboard;
  auto port = stripped(old_port, depth, new_chord);
  auto starboard = stripped(old_starboard, depth, new_chord);
  measured.port = Side(new_chord, port, measured.skeg, old_port.with_form());
  measured.starboard = Side(new_chord, starboard, measured.skeg, old_port.with_form());
  measured.chord = new_chord;  // before the faces meet: what is made of them has the section's chord
  double thickest = 0;
  for (const double fraction : chord_fractions(200)) {
    const double thickness = measured.port.at(fraction * new_chord) + measured.starboard.at(fraction * new_chord);
    thickest = std::max(thickest, thickness);
  }
  if (thickest <= 0) return nothing_left;
  if (meet_where_crossed(measured)) {  // a thin edge goes with its paint
    measured.warnings.push_back({"edge-goes-with-coating", "station " + station.name,
                                 "the blade is somewhere thinner than the old coating on both faces: stripped, it "
                                 "comes to nothing there"});
  }
  // A mark on the blade stays where it is, on both sides: only the leading edge that x is counted from has gone. Within the
  // nose's own coat there is no such place any more, and the point goes with the surface.
  std::array<double, 2> last{-1, -1};
  for (SurfacePoint& point : measured.points) {
    const bool port_side = point.face == Face::port;
    const Side& old_side = port_side ? old_port : old_starboard;
    double x = std::clamp(point.x - depth, 0.0, new_chord);
    if (x <= last[port_side ? 0 : 1]) {
      x = moved(old_side, std::sqrt(std::clamp(point.x / old_side.chord(), 0.0, 1.0)), depth).x - depth;
      x = std::clamp(x, 0.0, new_chord);
    }
    last[port_side ? 0 : 1] = point.x = x;
    point.half_breadth = measured.side(point.face).at(point.x);
  }
  std::stable_sort(measured.points.begin(), measured.points.end(),
                   [](const SurfacePoint& a, const SurfacePoint& b) { return a.x != b.x ? a.x < b.x : a.face < b.face; });
  if (measured.ahead) *measured.ahead -= depth;
  measured.warnings.push_back({"coating-stripped", "station " + station.name,
                               in_unit(depth, job.units) +
                                   " of old coating was taken off the measured outline all round; x is counted from "
                                   "the bare leading edge"});
  return std::nullopt;
}

}  // namespace fairblade::section
