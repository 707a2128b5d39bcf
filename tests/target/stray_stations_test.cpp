#include "target/stray_stations.hpp"

#include <random>

#include "blade.hpp"
#include "catch.hpp"

using namespace fairblade;
using target::SpanFigure;
using target::SpanReading;

namespace {

struct Read {
  job::Job job;
  std::vector<section::MeasuredSection> measured;
  std::vector<form::FittedForm> fitted;
};

Read read(job::Job job) {
  Read out{std::move(job), {}, {}};
  for (std::size_t k = 0; k < out.job.stations.size(); ++k) {
    out.measured.push_back(blade::measured(out.job, k));
    out.fitted.push_back(form::fit_form(out.measured.back(), out.job.reading_error));
  }
  return out;
}

// Tapering 420 to 300, 13 to 10 %; `full` mm on the thickness of station `which`.
job::Job tapered(std::size_t count, std::size_t which, double full, double noise = 0, unsigned seed = 1) {
  std::mt19937 random(seed);
  std::vector<job::Station> stations;
  for (std::size_t k = 0; k < count; ++k) {
    const double s = static_cast<double>(k) / static_cast<double>(count - 1);
    const double chord = 420 - 120 * s;
    const double t = 0.13 - 0.03 * s + (k == which ? full / chord : 0);
    stations.push_back(blade::exact(std::string(1, static_cast<char>('A' + k)), 1000 * s, chord, t));
    if (noise > 0) blade::add_noise(stations.back(), noise, random);
  }
  return blade::job_of(std::move(stations));
}

std::vector<SpanReading> readings(const std::vector<double>& values, double error) {
  std::vector<SpanReading> out;
  for (std::size_t k = 0; k < values.size(); ++k) out.push_back({k, 250.0 * static_cast<double>(k), values[k], error});
  return out;
}

}  // namespace

TEST_CASE("a full station is named, with how full it is") {
  const auto blade = read(tapered(5, 2, 2.3));
  const auto report = target::find_strays(blade.job, blade.measured, blade.fitted);
  REQUIRE(report.strays.size() == 1);
  CHECK(report.strays[0].station == 2);
  CHECK(report.strays[0].figure == SpanFigure::thickness);
  CHECK(report.strays[0].mm == Approx(2.3).epsilon(0.01));  // seen within 1e-3
  CHECK(target::words_of(blade.job, blade.measured, report.strays[0]) == "station C is 2.3 mm full");
  const auto warnings = target::name_strays(blade.job, blade.measured, report);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].where == "station C");
}

TEST_CASE("an end station that is thin is named by the whole of its error") {
  const auto blade = read(tapered(6, 5, -4.0));
  const auto report = target::find_strays(blade.job, blade.measured, blade.fitted);
  REQUIRE(report.strays.size() == 1);
  CHECK(report.strays[0].station == 5);
  CHECK(report.strays[0].mm == Approx(-4.0).epsilon(0.01));
  CHECK(target::words_of(blade.job, blade.measured, report.strays[0]).find("station F is 4.0 mm thin") == 0);
}

TEST_CASE("a fair blade has none, with or without noise") {
  const auto exact = read(tapered(5, 9, 0));
  CHECK(target::find_strays(exact.job, exact.measured, exact.fitted).strays.empty());
  int named = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    const auto noisy = read(tapered(6, 9, 0, 0.5, seed));
    named += static_cast<int>(target::find_strays(noisy.job, noisy.measured, noisy.fitted).strays.size());
  }
  // Chance of a normal reading beyond 3 sigma is 0.27 %: 240 stations, 0.65 expected, were the errors known exactly.
  CHECK(named <= 6);
}

TEST_CASE("three stations tell nothing; four tell that one strays, and who else it may be") {
  bool unfair = false;
  CHECK(target::strays_of(readings({0, 9, 0}, 0.1), SpanFigure::chord, unfair).empty());
  const auto strays = target::strays_of(readings({0, 0, 2.3, 0}, 0.1), SpanFigure::thickness, unfair);
  REQUIRE(strays.size() == 1);
  // Residuals of four even stations on a quadratic go as (1, -3, 3, -1)/20 of a third difference of 3·2.3; divided by
  // 1 - h = 1/20, 9/20, 9/20, 1/20: 6.9, -2.3, 2.3, -6.9.
  CHECK(strays[0].station == 2);
  CHECK(strays[0].mm == Approx(2.3).epsilon(1e-9));
  REQUIRE(strays[0].rivals.size() == 3);
  CHECK(strays[0].rivals[0].station == 1);
  CHECK(strays[0].rivals[0].mm == Approx(-2.3).epsilon(1e-9));
  CHECK(std::abs(strays[0].rivals[1].mm) == Approx(6.9).epsilon(1e-9));
  CHECK(strays[0].error == Approx(0.1 / std::sqrt(9.0 / 20)).epsilon(1e-9));
}

TEST_CASE("named just beyond three times its error, not before") {
  // Five even stations: a middle station's own error shows as 1/sqrt(18/35) of sigma.
  const double sd = 0.4 / std::sqrt(18.0 / 35);
  bool unfair = false;
  CHECK(target::strays_of(readings({0, 0, 2.99 * sd, 0, 0}, 0.4), SpanFigure::chord, unfair).empty());
  CHECK(target::strays_of(readings({0, 0, 3.01 * sd, 0, 0}, 0.4), SpanFigure::chord, unfair).size() == 1);
}

TEST_CASE("two strays of seven are both named; a kinked outline is called that") {
  bool unfair = false;
  const auto two = target::strays_of(readings({0, 0, 5, 0, 0, -4, 0, 0, 0}, 0.3), SpanFigure::chord, unfair);
  REQUIRE(two.size() == 2);
  CHECK(two[0].station == 2);
  CHECK(two[0].mm == Approx(5).epsilon(1e-9));
  CHECK(two[1].station == 5);
  CHECK(two[1].mm == Approx(-4).epsilon(1e-9));
  CHECK_FALSE(unfair);
  CHECK(target::strays_of(readings({0, 0, 0, 0, 40, 80, 120, 160}, 0.3), SpanFigure::chord, unfair).empty());
  CHECK(unfair);
}

TEST_CASE("chord and leading edge are judged too, interpolated stations are not") {
  auto job = tapered(5, 9, 0);
  auto blade = read(job);
  blade.measured[1].chord += 9;
  blade.measured[3].ahead = *blade.measured[3].ahead - 7;
  auto report = target::find_strays(blade.job, blade.measured, blade.fitted);
  std::string all;
  for (const auto& stray : report.strays) all += target::words_of(blade.job, blade.measured, stray) + "\n";
  INFO(all);
  CHECK(all.find("station B's chord is 9.0 mm long") != std::string::npos);
  CHECK(all.find("station D's leading edge is 7.0 mm aft") != std::string::npos);

  auto more = read(tapered(6, 3, 8));
  more.measured[3].interpolated = true;
  CHECK(target::find_strays(more.job, more.measured, more.fitted).strays.empty());
}

TEST_CASE("a thickness error is never less than the readings allow") {
  auto blade = read(tapered(4, 9, 0));
  // Fourteen readings a side; sum of the unit form's squares by hand from the published equation.
  double square = 0;
  for (const double x : blade::places14()) square += 2 * std::pow(blade::naca(1, x), 2);
  CHECK(target::thickness_error(blade.measured[0], blade.fitted[0], 0.5) == Approx(0.8 * 0.5 / std::sqrt(square)).epsilon(1e-9));
  blade.fitted[0].thickness_ratio_error = -1;
  CHECK(target::thickness_error(blade.measured[0], blade.fitted[0], 0.5) > 0.1);
  blade.fitted[0].thickness_ratio_error = 0.01;
  CHECK(target::thickness_error(blade.measured[0], blade.fitted[0], 0.5) == Approx(4.2));
}
