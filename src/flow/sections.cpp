#include "flow/sections.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

namespace fairblade::flow {
namespace {

using section::Face;
using std::numbers::pi;
using HalfBreadth = std::function<double(Face, double)>;  // mm, x from the frame's leading edge

constexpr double least_thickness = 0.0005;  // chords between the faces
constexpr double nose_share = 0.01;         // chords over which that grows from nothing
constexpr double flat_nose = 1e-4;          // chords: a face at the nose narrower than this is a point

struct Ordinates {
  double port = 0, starboard = 0;  // y
};

Ordinates parted_at(const HalfBreadth& half, double x, double chord, double& parted) {
  const double port = half(Face::port, x);
  const double starboard = half(Face::starboard, x);
  const double least = least_thickness * chord * std::min(1.0, x / (nose_share * chord));
  const double missing = least - (port + starboard);
  if (!(missing > 0)) return {port, -starboard};
  parted = std::max(parted, missing);
  return {port + missing / 2, -(starboard + missing / 2)};
}

// Nodes across a flat nose, from port to starboard without its corners, crowded to them as those behind are.
void add_flat(const Ordinates& nose, double chord, std::size_t half_count, std::vector<Point>& nodes) {
  const double width = nose.port - nose.starboard;
  const auto pieces =
      static_cast<std::size_t>(std::max(2.0, std::round(static_cast<double>(half_count) * std::sqrt(width / chord))));
  for (std::size_t k = 1; k < pieces; ++k) {
    const double part = (1 - std::cos(pi * static_cast<double>(k) / static_cast<double>(pieces))) / 2;
    nodes.emplace_back(0, nose.port - part * width);
  }
}

// Where on the chord the nodes of a face lie, fraction q of the way through them.
double place(double q, Crowd crowd) {
  if (crowd == Crowd::both_edges) return (1 - std::cos(pi * q)) / 2;
  constexpr double pull = 2;
  const double u = std::sinh(pull * q) / std::sinh(pull);
  return u * u;
}

SectionNodes build(const HalfBreadth& half, double chord, double leading_edge_x, double skeg, std::size_t panels,
                   Crowd crowd = Crowd::both_edges) {
  SectionNodes out;
  out.frame = {leading_edge_x, chord};
  out.skeg = skeg;
  const std::size_t count = std::max<std::size_t>(panels / 2, 5);
  std::vector<double> x(count + 1);
  std::vector<Ordinates> y(count + 1);
  for (std::size_t k = 0; k <= count; ++k) {
    x[k] = k == count ? chord : chord * place(static_cast<double>(k) / static_cast<double>(count), crowd);
    y[k] = parted_at(half, x[k], chord, out.parted);
  }
  const bool flat = y[0].port - y[0].starboard > flat_nose * chord;
  for (std::size_t k = count; k > 0; --k) out.nodes.emplace_back(x[k], y[k].port);
  if (flat) {
    out.nodes.emplace_back(0, y[0].port);
    add_flat(y[0], chord, count, out.nodes);
    out.nodes.emplace_back(0, y[0].starboard);
  } else {
    out.nodes.emplace_back(0, (y[0].port + y[0].starboard) / 2);
  }
  for (std::size_t k = 1; k <= count; ++k) out.nodes.emplace_back(x[k], y[k].starboard);
  for (Point& p : out.nodes) p.x(p.x() + leading_edge_x);
  return out;
}

// The skeg's half-breadth at x < 0 ahead of an edge of half-breadth `edge`, as the target's curve scaled to meet it.
double skeg_half_breadth(const target::TargetSection& target, double x, double edge) {
  const double whole = target.whole_chord();
  const double own = whole * target.curve.at(target.skeg / whole);
  const double at = whole * target.curve.at(std::clamp((x + target.skeg) / whole, 0.0, 1.0));
  return own > 0 ? at * std::max(edge, 0.05 * own) / own : at;
}

}  // namespace

SectionNodes nodes_of(const section::MeasuredSection& measured, const target::TargetSection& target, std::size_t panels,
                      Crowd crowd) {
  const double skeg = measured.skeg;
  const auto half = [&](Face face, double from_front) {
    const double x = from_front - skeg;
    if (x < 0) return skeg_half_breadth(target, x, measured.side(face).at(0));
    return measured.side(face).at(x);
  };
  return build(half, measured.chord + skeg, -skeg, skeg, panels, crowd);
}

SectionNodes nodes_of(const target::TargetSection& target, std::size_t panels) {
  const double start = target.leading_edge_x;
  const double end = target.trailing_edge_x();
  const auto half = [&](Face face, double from_front) {
    const double x = start + from_front - target.skeg;
    if (x < start) return skeg_half_breadth(target, x - start, target.half_breadth(face, start));
    return target.half_breadth(face, std::min(x, end));
  };
  return build(half, target.whole_chord(), start - target.skeg, target.skeg, panels);
}

SectionNodes nodes_of(const form::SectionCurve& curve, std::size_t panels) {
  return build([&](Face, double x) { return curve.at(x); }, 1, 0, 0, panels);
}

double helm_effect(const SectionNodes& nodes) {
  if (!(nodes.skeg > 0)) return 1;
  const double rudder = 1 - nodes.skeg / nodes.frame.chord;
  const double a = std::acos(2 * rudder - 1);
  return 1 - (a - std::sin(a)) / pi;
}

SectionWater section_in_water(const SectionNodes& nodes, bool sides_known) {
  SectionWater out;
  out.skeg = nodes.skeg;
  out.parted = nodes.parted;
  out.sides_known = sides_known;
  out.flow = PanelFlow::solve(nodes.nodes, nodes.frame);
  if (!out.flow) {
    out.why_not = "the outline cannot be resolved: its faces cross or touch over too much of the chord";
    return out;
  }
  out.known = true;
  out.helm_effect = helm_effect(nodes);
  out.lift_slope = out.flow->lift_slope();
  if (sides_known) {
    out.lift_at_zero_helm = out.flow->at(0).lift;
    out.helm_to_cancel = out.flow->zero_lift_degrees() / out.helm_effect;
  }
  for (int helm = 0; helm <= greatest_helm; ++helm) {
    out.to_port.push_back(out.flow->at(helm));
    out.to_starboard.push_back(out.flow->at(-helm));
  }
  return out;
}

double worse_suction(const PanelFlow& flow, double helm) { return std::max(flow.suction(helm), flow.suction(-helm)); }

CpCurve cp_curve(const PanelFlow& flow, double degrees) {
  const auto cp = flow.pressures(degrees);
  const auto& nodes = flow.nodes();
  const auto before = [](const Point& a, const Point& b) { return a.x() < b.x(); };
  const auto nose = static_cast<std::size_t>(std::min_element(nodes.begin(), nodes.end(), before) - nodes.begin());
  CpCurve out;
  const auto point = [&](std::size_t k) {
    return CpPoint{(nodes[k].x() - flow.frame().leading_edge_x) / flow.frame().chord, cp[k]};
  };
  for (std::size_t k = nose + 1; k-- > 0;) out.port.push_back(point(k));
  for (std::size_t k = nose; k < nodes.size(); ++k) out.starboard.push_back(point(k));
  return out;
}

}  // namespace fairblade::flow
