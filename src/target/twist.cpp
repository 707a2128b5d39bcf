#include "target/twist.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "base/units.hpp"
#include "target/span_line.hpp"

namespace fairblade::target {

using form::FittedForm;
using section::MeasuredSection;

namespace {

constexpr double warn_beyond = 1;  // degree
constexpr double degrees = 180 / std::numbers::pi;

// Both ends of the section's centre line, mm to port; nothing where it cannot be told.
struct CentreEnds {
  double leading = 0, trailing = 0;
};

std::optional<CentreEnds> centre_ends(const job::Station& station, const MeasuredSection& measured, const FittedForm& fitted) {
  const double chord = measured.chord;
  if (measured.thickness_only || measured.one_side_only) {
    if (!station.trailing_edge_off_centre) return std::nullopt;
    const double ahead = std::clamp(measured.ahead.value_or(0), 0.0, chord / 2);
    const double off = *station.trailing_edge_off_centre;
    return CentreEnds{-off * ahead / (chord - ahead), off};
  }
  if (fitted.thickness_ratio_error >= 0) {
    const double slope = std::tan(fitted.skew_degrees / degrees);
    const double middle = (chord + measured.skeg) / 2 - measured.skeg;  // the fit's, of skeg and rudder together
    return CentreEnds{fitted.centre_shift - slope * middle, fitted.centre_shift + slope * (chord - middle)};
  }
  return CentreEnds{(measured.port.at(0) - measured.starboard.at(0)) / 2,
                    (measured.port.at(chord) - measured.starboard.at(chord)) / 2};
}

// Least squares of a slope through readings with this error: sigma / sqrt(sum (x - mean)²).
double skew_error(const MeasuredSection& measured, double reading_error) {
  double sum = 0, square = 0;
  const auto n = static_cast<double>(measured.points.size());
  for (const auto& point : measured.points) {
    sum += point.x;
    square += point.x * point.x;
  }
  const double about_mean = n > 0 ? square - sum * sum / n : 0;
  const double share = about_mean > 0 && !measured.thickness_only && !measured.one_side_only
                           ? 1 / std::sqrt(about_mean)
                           : 1 / measured.chord;  // one reading of the edge
  return std::atan(reading_error * share) * degrees;
}

StationTwist twist_of(const job::Station& station, const MeasuredSection& measured, const FittedForm& fitted,
                      double reading_error) {
  StationTwist out;
  out.station = measured.station;
  const auto ends = centre_ends(station, measured, fitted);
  if (!ends) return out;
  out.known = true;
  out.leading_edge_off = ends->leading;
  out.trailing_edge_off = ends->trailing;
  out.skew_degrees = std::atan2(ends->trailing - ends->leading, measured.chord) * degrees;
  out.error_degrees = skew_error(measured, reading_error);
  return out;
}

// Where the section's centre line crosses the stock, mm to port; of its middle where the stock's place is not known. (A blade
// that is only twisted turns about its stock.)
double at_stock(const MeasuredSection& measured, const StationTwist& one) {
  const double share = std::clamp(measured.ahead.value_or(measured.chord / 2) / measured.chord, 0.0, 1.0);
  return std::lerp(one.leading_edge_off, one.trailing_edge_off, share);
}

// Slope of that down the blade, stations without readings left out.
std::optional<double> lean_of(const std::vector<MeasuredSection>& measured, const std::vector<StationTwist>& stations) {
  SpanQuantity lies;
  for (std::size_t k = 0; k < stations.size(); ++k) {
    if (!stations[k].known || measured[k].interpolated) continue;
    lies.down.push_back(measured[k].down);
    lies.value.push_back(at_stock(measured[k], stations[k]));
  }
  if (lies.down.size() < 2) return std::nullopt;
  const SpanLine line = fair_along(lies, job::Spanwise::straight);
  return std::atan(line.coefficients[1] / line.half_span) * degrees;
}

void warn(const job::Job& job, const std::vector<MeasuredSection>& measured, BladeTwist& out) {
  for (std::size_t k = 0; k < out.stations.size(); ++k) {
    const StationTwist& one = out.stations[k];
    if (!one.known || measured[k].interpolated || std::abs(one.twist_degrees) <= warn_beyond) continue;
    out.warnings.push_back({"twist", "station " + one.station,
                            "the section is twisted by " + fixed(std::abs(one.twist_degrees), 1) + " degrees (give or take " +
                                fixed(one.error_degrees, 1) + ") against station " + out.centre_station +
                                ": its trailing edge stands " + to_side(one.twist_mm, job.units) +
                                " of a line through its leading edge, and " + to_side(one.trailing_edge_off, job.units) +
                                " of the plane through the stock. " +
                                (measured[k].thickness_only || measured[k].one_side_only
                                     ? "Both faces are planned alike, about the section's own middle, so that the twist stays"
                                     : "A target on the centre plane fills one face and cuts the other") +
                                ". Sight down the trailing edge, and measure again before filling"});
  }
  if (out.lean_degrees && std::abs(*out.lean_degrees) > warn_beyond) {
    out.warnings.push_back({"lean", "job",
                            "going down, the blade leans " + fixed(std::abs(*out.lean_degrees), 1) + " degrees to " +
                                (*out.lean_degrees > 0 ? "port" : "starboard") +
                                " of the stock: either the boards stood askew or the blade is bent; check the stock "
                                "against a straightedge"});
  }
}

}  // namespace

BladeTwist find_twist(const job::Job& job, const std::vector<MeasuredSection>& measured, const std::vector<FittedForm>& fitted) {
  BladeTwist out;
  if (measured.empty()) return out;
  out.centre_station = job.centre_station.empty() ? measured.front().station : job.centre_station;
  double datum = 0;
  for (std::size_t k = 0; k < measured.size(); ++k) {
    out.stations.push_back(twist_of(job.stations[k], measured[k], fitted[k], job.reading_error));
    if (out.stations[k].known && out.stations[k].station == out.centre_station) datum = out.stations[k].skew_degrees;
  }
  double most_port = -360, most_starboard = 360;
  for (std::size_t k = 0; k < measured.size(); ++k) {
    StationTwist& one = out.stations[k];
    if (!one.known) continue;
    one.twist_degrees = one.skew_degrees - datum;
    one.twist_mm = measured[k].chord * (std::tan(one.skew_degrees / degrees) - std::tan(datum / degrees));
    if (measured[k].interpolated) continue;
    most_port = std::max(most_port, one.skew_degrees);
    most_starboard = std::min(most_starboard, one.skew_degrees);
  }
  out.total_degrees = std::max(0.0, most_port - most_starboard);
  out.lean_degrees = lean_of(measured, out.stations);
  warn(job, measured, out);
  return out;
}

}  // namespace fairblade::target
