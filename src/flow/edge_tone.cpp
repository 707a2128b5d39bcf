#include "flow/edge_tone.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/numerics.hpp"
#include "flow/blade.hpp"

namespace fairblade::flow {
namespace {

using section::Face;

constexpr double tail_share = 0.05;  // chords over which the taper is taken

template <class Section>
Edge edge_from(const Section& at, double end, double chord, double skeg) {
  Edge out;
  out.run = chord + skeg;
  out.thickness = std::max(0.0, at(Face::port, end) + at(Face::starboard, end));
  const double back = tail_share * chord;
  for (const Face face : {Face::port, Face::starboard}) {
    const double taper = (at(face, end - back) - at(face, end)) / back;
    out.solid_angle += std::atan(taper) * 180 / std::numbers::pi;
  }
  out.angle_beyond_tried = out.solid_angle > widest_tried || out.solid_angle < 0;
  return out;
}

double frequency(const Edge& edge, double knots, double factor) {
  const double speed = knots * metres_per_second_in_knot;
  const double displacement = factor * displacement_thickness(edge.run / 1000, speed);
  const double h = edge.thickness / 1000;
  return shedding_strouhal(h / displacement, std::clamp(edge.solid_angle, 0.0, widest_tried)) * speed / h;
}

}  // namespace

double shedding_strouhal(double ratio, double solid_angle) {
  if (ratio < 0.2) return 0.1 * ratio + 0.095 - 0.00243 * solid_angle;
  const double d = 1 / ratio;
  return (0.212 - 0.0045 * solid_angle) / (1 + 0.235 * d - 0.0132 * d * d);
}

double displacement_thickness(double metres, double metres_per_second) {
  return 0.046 * metres * std::pow(metres_per_second * metres / sea_water_viscosity, -0.2);
}

Edge edge_of(const section::MeasuredSection& measured) {
  const auto at = [&](Face face, double x) { return measured.side(face).at(x); };
  return edge_from(at, measured.chord, measured.chord, measured.skeg);
}

Edge edge_of(const target::TargetSection& target) {
  const double end = target.trailing_edge_x();
  const auto at = [&](Face face, double x) { return target.half_breadth(face, std::min(x, end)); };
  return edge_from(at, end, target.chord, target.skeg);
}

std::optional<Band> shedding_band(const Edge& edge, double knots) {
  if (!(edge.thickness >= least_edge) || !(knots > 0) || !(edge.run > 0)) return std::nullopt;
  return Band{frequency(edge, knots, thick_layer), frequency(edge, knots, thin_layer)};
}

std::optional<Band> humming_speeds(const Edge& edge, double hertz) {
  if (!(edge.thickness >= least_edge) || !(hertz > 0) || !(edge.run > 0)) return std::nullopt;
  // Frequencies rise with speed, so each end of the band has one speed.
  const auto speed_of = [&](double factor) {
    if (frequency(edge, slowest_knots, factor) >= hertz) return slowest_knots;
    if (frequency(edge, fastest_knots, factor) <= hertz) return fastest_knots;
    const auto miss = [&](double knots) { return frequency(edge, knots, factor) - hertz; };
    return root_between(miss, slowest_knots, fastest_knots).value_or(fastest_knots);
  };
  const Band out{speed_of(thin_layer), speed_of(thick_layer)};
  if (!(out.high > out.low)) return std::nullopt;  // all of it beyond one end
  return out;
}

std::vector<EdgeOption> edge_options(const Edge& target, double knots) {
  Edge square = target;
  square.solid_angle = 0;
  square.angle_beyond_tried = false;
  Edge thinner = target;
  thinner.thickness = target.thickness / 2;
  return {
      {"square",
       "the last few centimetres parallel and cut off square, as thick as planned: sheds quicker than a taper that "
       "ends as thick",
       shedding_band(square, knots)},
      {"thinner", "half as thick with the same taper: a higher and usually fainter tone; a very sharp edge chips, and can sing",
       shedding_band(thinner, knots)},
      {"unequal bevel",
       "one face bevelled at some 45 degrees, or the two unequally, so that the two sides shed out of step: "
       "often enough, not always; no equation here covers it",
       std::nullopt}};
}

}  // namespace fairblade::flow
