#include "target/asymmetry.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "base/units.hpp"
#include "section/outline.hpp"

namespace fairblade::target {

using section::MeasuredSection;

namespace {

bool can_tell(const MeasuredSection& measured) { return !measured.thickness_only && !measured.one_side_only; }

struct Spread {
  double greatest = 0, at = 0, rms = 0, size = 0;  // size: integral of |d| dx
};

// Of straight pieces between places; a piece that changes sign is split where it does.
Spread spread_of(const std::vector<double>& x, const std::vector<double>& d) {
  Spread out;
  double square = 0;
  for (std::size_t k = 0; k < x.size(); ++k) {
    if (std::abs(d[k]) > std::abs(out.greatest)) {
      out.greatest = d[k];
      out.at = x[k];
    }
    if (k == 0) continue;
    const double a = d[k - 1], b = d[k], step = x[k] - x[k - 1];
    square += (a * a + a * b + b * b) / 3 * step;
    const bool crosses = a * b < 0;
    out.size += crosses ? (a * a + b * b) / (2 * (std::abs(a) + std::abs(b))) * step : (std::abs(a) + std::abs(b)) / 2 * step;
  }
  out.rms = std::sqrt(square / (x.back() - x.front()));
  return out;
}

}  // namespace

Asymmetry asymmetry_of(const MeasuredSection& measured, const form::FittedForm& fitted) {
  Asymmetry out;
  out.station = measured.station;
  out.known = can_tell(measured);
  if (!out.known) return out;
  const std::vector<double> x = section::sample_places(measured, 800);
  const double skew = std::tan(fitted.skew_degrees * std::numbers::pi / 180);
  const double middle = (measured.chord + measured.skeg) / 2 - measured.skeg;  // of skeg and rudder together
  std::vector<double> plane, own;
  auto port = measured.port.along(), starboard = measured.starboard.along();
  for (const double place : x) {
    const double d = port.at(place) - starboard.at(place);
    plane.push_back(d);
    own.push_back(d - 2 * (fitted.centre_shift + skew * (place - middle)));
  }
  const Spread about_plane = spread_of(x, plane);
  const Spread about_own = spread_of(x, own);
  out.greatest = about_plane.greatest;
  out.greatest_x = about_plane.at;
  out.rms = about_plane.rms;
  out.own_greatest = about_own.greatest;
  out.own_greatest_x = about_own.at;
  out.own_rms = about_own.rms;
  out.add_area = about_plane.size;
  out.halfway_area = out.add_area / 2;
  out.halfway_cut = std::abs(out.greatest) / 2;
  return out;
}

MakeOne make_one(const std::vector<MeasuredSection>& measured) {
  constexpr int panels = 8;  // Simpson's, exact where neither side changes place between stations
  MakeOne out;
  const std::vector<double> fractions = chord_fractions(400);
  std::vector<std::vector<double>> ratio;  // (port - starboard) / chord, per station
  for (const MeasuredSection& one : measured) {
    ratio.emplace_back();
    out.complete = out.complete && can_tell(one);
    for (const double f : fractions) {
      const double u = std::sqrt(f);
      ratio.back().push_back(can_tell(one) ? (one.port.at_u(u) - one.starboard.at_u(u)) / one.chord : 0.0);
    }
  }
  for (std::size_t k = 1; k < measured.size(); ++k) {
    const MeasuredSection &a = measured[k - 1], &b = measured[k];
    double sum = 0;
    std::vector<double> d(fractions.size());
    for (int j = 0; j <= 2 * panels; ++j) {
      const double w = j / (2.0 * panels);
      const double chord = a.chord + w * (b.chord - a.chord);
      for (std::size_t i = 0; i < d.size(); ++i) d[i] = ratio[k - 1][i] + w * (ratio[k][i] - ratio[k - 1][i]);
      const double weight = j == 0 || j == 2 * panels ? 1 : (j % 2 == 1 ? 4 : 2);
      sum += weight * chord * chord * spread_of(fractions, d).size;
    }
    out.add_litres += sum * (b.down - a.down) / (6.0 * panels) * 1e-6;  // mm³ to litres
  }
  return out;
}

std::string words_of(const job::Job& job, const Asymmetry& asymmetry) {
  // Three standard deviations of the difference of two readings, and of its mean square no less than one.
  const double tells = 3 * std::numbers::sqrt2 * job.reading_error;
  if (!asymmetry.known || std::abs(asymmetry.greatest) <= tells || asymmetry.rms <= job.reading_error) return {};
  const auto mm = [&](double v) { return both_units(std::abs(v), job.units); };
  const bool port = asymmetry.greatest > 0;
  std::string out = std::string(port ? "port" : "starboard") + " is " + mm(asymmetry.greatest) + " fuller than " +
                    (port ? "starboard " : "port ") + mm(asymmetry.greatest_x) + " aft of the leading edge, " +
                    mm(asymmetry.rms) + " over the whole chord; one shape for both takes " + fixed(asymmetry.add_area, 0) +
                    " mm² of filler here, or half of that and cuts up to " + mm(asymmetry.halfway_cut);
  if (asymmetry.own_rms < asymmetry.rms / 2) {
    out += "; most of it is the section standing off or askew of the centre plane, not its shape";
  }
  return out;
}

}  // namespace fairblade::target
