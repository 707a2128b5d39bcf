#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "worksheet/worksheet.hpp"

namespace fairblade::worksheet {
namespace {

/// Fractions of the chord. The first six lie in the first tenth; past it they stand where a section turns.
constexpr std::array<double, places_a_side> fractions{0, 0.007, 0.015, 0.03, 0.055, 0.09, 0.16, 0.28, 0.43, 0.62, 0.82, 1};
/// Behind a skeg the edge is square, and lies where the whole section is nearly thickest: even steps, one place near it.
constexpr std::array<double, places_a_side> behind_skeg{0, 0.03, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1};
static_assert(fractions[5] < 0.1 && fractions[6] > 0.1, "half of the places lie in the first tenth");

/// What may be read off: one unit of `least`, doubled and so on as the place moves aft, a twentieth of x at the most.
double step_at(double x, LengthUnit units, double least) {
  constexpr double coarsest = 20;  // a step is no coarser than this part of x
  if (units == LengthUnit::inch) {
    double step = least;
    while (2 * step <= x / coarsest && step < 12.7) step *= 2;
    return step;
  }
  double ten = 1, out = least;
  while (true) {
    for (const double part : {1.0, 2.0, 5.0}) {
      const double step = part * ten * least;
      if (step > x / coarsest || step > 20) return out;
      out = step;
    }
    ten *= 10;
  }
}

/// Where x is counted from, aft of the leading edge; and whether it is counted forwards.
struct Origin {
  double at = 0;
  bool forwards = false;
};
Origin origin_of(const job::StationToMeasure& station) {
  if (station.x_from == job::XFrom::trailing_edge) return {station.chord, true};
  if (station.x_from == job::XFrom::stock) return {station.ahead.value_or(0), false};
  return {};
}

std::vector<double> rounded(const job::StationToMeasure& station, LengthUnit units, double least) {
  const Origin origin = origin_of(station);
  const double sign = origin.forwards ? -1 : 1;
  std::vector<double> out;
  for (const double fraction : station.skeg > 0 ? behind_skeg : fractions) {
    const double x = fraction * station.chord, from = sign * (x - origin.at);
    if (fraction == 0 || fraction == 1) {
      out.push_back(from + 0.0);  // the edges are where they are
      continue;
    }
    const double step = step_at(x, units, least);
    out.push_back(std::round(from / step) * step + 0.0);
  }
  return out;
}

bool runs_aft(const std::vector<double>& places, bool forwards) {
  for (std::size_t k = 1; k < places.size(); ++k) {
    if ((forwards ? places[k - 1] - places[k] : places[k] - places[k - 1]) <= 1e-9) return false;
  }
  return true;
}

}  // namespace

std::vector<double> suggested_places(const job::StationToMeasure& station, LengthUnit units) {
  const bool inches = units == LengthUnit::inch;
  double least = inches ? mm_per_inch / 16 : 1;
  std::vector<double> out = rounded(station, units, least);
  // A chord so short that a millimetre is too coarse.
  while (!runs_aft(out, origin_of(station).forwards) && least > 1e-3) out = rounded(station, units, least /= inches ? 2 : 10);
  return out;
}

std::string on_rule(double mm, LengthUnit units) {
  if (units != LengthUnit::inch) return trimmed(mm / millimetres_in(units), units == LengthUnit::mm ? 1 : 2);
  constexpr int finest = 64;  // parts of an inch
  const double inches = std::abs(mm) / mm_per_inch, parts = inches * finest;
  const double whole = std::round(parts);
  if (std::abs(parts - whole) > 0.02 || whole > 1e9) return trimmed(mm / mm_per_inch, 3);
  auto over = static_cast<long long>(whole);
  const std::string sign = mm < 0 && over > 0 ? "-" : "";
  const long long units_of = over / finest;
  over %= finest;
  int under = finest;
  for (; over > 0 && over % 2 == 0; over /= 2) under /= 2;
  if (over == 0) return sign + std::to_string(units_of);
  const std::string part = std::to_string(over) + "/" + std::to_string(under);
  return sign + (units_of > 0 ? std::to_string(units_of) + " " : "") + part;
}

std::string on_rule_with_unit(double mm, LengthUnit units) { return on_rule(mm, units) + " " + std::string(name_of(units)); }

}  // namespace fairblade::worksheet
