#include "flow/blade.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "fill/blade.hpp"

namespace fairblade::flow {
namespace {

using std::numbers::pi;
using Cut = BladeOutline::Cut;

// A blade begins at its top, from which `down` is counted, and ends at `bottom` where that is given.
BladeOutline closed(const job::Job& job, std::vector<Cut> cuts) {
  std::stable_sort(cuts.begin(), cuts.end(), [](const Cut& a, const Cut& b) { return a.down < b.down; });
  if (cuts.empty()) return {};
  fill::carry_to_ends(job, cuts);
  return {std::move(cuts)};
}

struct Sums {
  double span = 0, area = 0, chord_square = 0;
  double ahead_area = 0;   // of what lies ahead of the stock
  double edge_moment = 0;  // integral of chord x (leading edge aft of the stock)
  double quarter_run = 0;  // quarter-chord line: aft from the top to the bottom
  bool stock_known = true;
};

Sums sums_of(const BladeOutline& outline) {
  Sums out;
  const auto& cuts = outline.cuts;
  for (const Cut& cut : cuts) out.stock_known = out.stock_known && cut.ahead.has_value();
  for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
    const Cut& a = cuts[k];
    const Cut& b = cuts[k + 1];
    const double h = b.down - a.down;
    out.span += h;
    out.area += h * (a.chord + b.chord) / 2;
    out.chord_square += h * (a.chord * a.chord + a.chord * b.chord + b.chord * b.chord) / 3;
    if (!out.stock_known) continue;
    out.ahead_area += fill::area_ahead({a.down, a.chord, *a.ahead}, {b.down, b.chord, *b.ahead});
    // Simpson's rule, exact on the product of two straight lines.
    const double middle = (a.chord + b.chord) / 2 * (*a.ahead + *b.ahead) / 2;
    out.edge_moment -= h / 6 * (a.chord * *a.ahead + 4 * middle + b.chord * *b.ahead);
  }
  if (out.stock_known && !cuts.empty()) {
    const auto quarter = [](const Cut& cut) { return cut.chord / 4 - *cut.ahead; };
    out.quarter_run = quarter(cuts.back()) - quarter(cuts.front());
  }
  return out;
}

}  // namespace

const char* name_of(EndPlate choice) { return choice == EndPlate::none ? "none" : choice == EndPlate::half ? "half" : "full"; }

double aspect_factor(EndPlate choice) { return choice == EndPlate::none ? 1.0 : choice == EndPlate::half ? 1.5 : 2.0; }

double whicker_fehlner_slope(double a, double sweep_degrees) {
  const double cosine = std::cos(sweep_degrees * pi / 180);
  return 1.8 * pi * a / (1.8 + cosine * std::sqrt(a * a / std::pow(cosine, 4) + 4));
}

double whicker_fehlner_centre(double a) { return 0.5 - (1.11 * std::sqrt(a * a + 4) + 2) / (4 * (a + 2)); }

BladeOutline outline_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured) {
  std::vector<Cut> cuts;
  for (const auto& section : measured) cuts.push_back({section.down, section.chord, section.ahead});
  return closed(job, std::move(cuts));
}

BladeOutline outline_of(const job::Job& job, const std::vector<target::TargetSection>& targets) {
  std::vector<Cut> cuts;
  for (const auto& target : targets) cuts.push_back({target.down, target.chord, target.ahead});
  return closed(job, std::move(cuts));
}

BladeWater blade_in_water(const BladeOutline& outline, bool behind_skeg, EndPlate end_plate, double knots, double helm) {
  BladeWater out;
  const Sums sums = sums_of(outline);
  if (!(sums.span > 0 && sums.area > 0)) {
    out.why_not = "one height alone has no span: measure a second station, or give the blade's bottom";
    return out;
  }
  out.area = sums.area;
  out.span = sums.span;
  out.mean_chord = sums.chord_square / sums.area;
  if (sums.stock_known) out.balance_percent = 100 * sums.ahead_area / sums.area;
  if (behind_skeg) {
    out.why_not = "the rudder turns behind a fixed skeg: the formulas for a blade that turns as a whole do not apply";
    return out;
  }
  out.known = true;
  out.geometric_aspect = sums.span * sums.span / sums.area;
  out.effective_aspect = aspect_factor(end_plate) * out.geometric_aspect;
  out.sweep_degrees = std::atan2(sums.quarter_run, sums.span) * 180 / pi;
  out.lift_slope = whicker_fehlner_slope(out.effective_aspect, out.sweep_degrees);
  out.centre_of_pressure = whicker_fehlner_centre(out.effective_aspect);
  const double metres_per_second = knots * metres_per_second_in_knot;
  const double pressure = sea_water_density / 2 * metres_per_second * metres_per_second;
  out.load.knots = knots;
  out.load.helm = helm;
  out.load.force = pressure * out.area * 1e-6 * out.lift_slope * helm * pi / 180;
  if (sums.stock_known) {
    out.lever = sums.edge_moment / sums.area + out.centre_of_pressure * out.mean_chord;
    const double breadth = sums.area / sums.span;
    out.class_lever_ahead = breadth * (0.33 - *out.balance_percent / 100);
    out.class_lever_astern = breadth * (0.66 - *out.balance_percent / 100);
    out.load.torque = out.load.force * *out.lever / 1000;
  }
  return out;
}

}  // namespace fairblade::flow
