#include "flow/sections.hpp"

#include "blade.hpp"
#include "catch.hpp"
#include "shapes.hpp"
#include "target/target.hpp"

using namespace fairblade;

namespace {

flow::SectionWater water_of(const job::Station& station, double skeg_form = 0.12) {
  const auto job = blade::job_of({station});
  const auto measured = blade::measured(job);
  auto target = shapes::naca(measured.chord, skeg_form);
  target.skeg = measured.skeg;
  return flow::section_in_water(flow::nodes_of(measured, target), true);
}

bool finite(const flow::SectionWater& water) {
  if (!water.known) return !water.why_not.empty();
  for (const auto* side : {&water.to_port, &water.to_starboard}) {
    for (const auto& at : *side) {
      if (!std::isfinite(at.lift + at.normal + at.moment + at.suction + at.lowest_pressure)) return false;
    }
  }
  return std::isfinite(water.lift_slope + water.helm_to_cancel);
}

}  // namespace

TEST_CASE("a measured section and its target are one in the water") {
  // Exact readings of a form are that form; published slope of the 0012's panels 6.930.
  const auto measured = water_of(blade::exact("A", 0, 420, 0.12));
  const auto target = flow::section_in_water(flow::nodes_of(shapes::naca(420, 0.12)), true);
  REQUIRE(measured.known);
  REQUIRE(target.known);
  CHECK(measured.lift_slope == Approx(6.930).epsilon(5e-3));  // seen 1e-4
  for (std::size_t k = 0; k < 13; ++k) {
    CHECK(measured.to_port[k].suction == Approx(target.to_port[k].suction).epsilon(1e-6));
    CHECK(measured.to_port[k].lift == Approx(-measured.to_starboard[k].lift).margin(1e-9));
    CHECK(measured.to_port[k].degrees == Approx(static_cast<double>(k)));
  }
  CHECK(std::abs(measured.helm_to_cancel) < 1e-9);
  CHECK(measured.to_port[0].centre_of_pressure == std::nullopt);
  CHECK(*measured.to_port[8].centre_of_pressure == Approx(0.26).margin(0.02));
  CHECK(measured.parted == 0);
}

TEST_CASE("a skewed section wants its own skew as helm") {
  // Turned by 2 degrees about its nose, trailing edge to port: the water must come from 2 degrees to starboard less. A
  // shear is a turn to second order.
  const double slope = std::tan(2 * 3.14159265358979 / 180);
  const auto port = [&](double x) { return blade::naca(0.12, x) + slope * x; };
  const auto starboard = [&](double x) { return blade::naca(0.12, x) - slope * x; };
  const auto water = water_of(blade::station("A", 0, 420, port, starboard));
  REQUIRE(water.known);
  CHECK(water.helm_to_cancel == Approx(2).epsilon(0.03));  // seen 0.003 off
  CHECK(water.lift_at_zero_helm == Approx(-6.93 * std::sin(2 * 3.14159265358979 / 180)).epsilon(0.03));
}

TEST_CASE("a lopsided section pulls as thin-section theory says") {
  // Thin-section theory: a parabolic centre line of rise h turns the zero-lift angle by -2 h/chord radians; thickness adds
  // little. Rise 1 % to port.
  const auto port = [](double x) { return blade::naca(0.09, x) + 0.04 * x * (1 - x); };
  const auto starboard = [](double x) { return blade::naca(0.09, x) - 0.04 * x * (1 - x); };
  const auto water = water_of(blade::station("A", 0, 420, port, starboard));
  REQUIRE(water.known);
  CHECK(water.helm_to_cancel == Approx(-2 * 0.01 * 180 / 3.14159265358979).epsilon(0.1));
  CHECK(water.lift_at_zero_helm > 0);
  const auto mirrored = water_of(blade::station("A", 0, 420, starboard, port));
  CHECK(mirrored.helm_to_cancel == Approx(-water.helm_to_cancel).epsilon(1e-9));
  CHECK(mirrored.to_starboard[8].suction == Approx(water.to_port[8].suction).epsilon(1e-9));
}

TEST_CASE("pressures for a picture run from the nose aft on both faces") {
  const auto water = water_of(blade::exact("A", 0, 420, 0.12));
  const auto curve = flow::cp_curve(*water.flow, 8);
  REQUIRE(curve.port.size() == 161);
  REQUIRE(curve.starboard.size() == 161);
  CHECK(curve.port.front().x == 0);
  CHECK(curve.port.back().x == Approx(1));
  CHECK(curve.port[20].cp < curve.starboard[20].cp);  // suction to port
}

TEST_CASE("a skeg and its rudder are worked out together") {
  auto station = blade::station(
      "A", 0, 300, [](double x) { return blade::naca(0.12, 0.4 + 0.6 * x) / 0.6; },
      [](double x) { return blade::naca(0.12, 0.4 + 0.6 * x) / 0.6; });
  station.skeg = 200;
  const auto water = water_of(station);
  REQUIRE(water.known);
  CHECK(water.lift_slope == Approx(6.930).epsilon(5e-3));  // together they are a 0012 of 500 mm
  CHECK(water.flow->frame().chord == Approx(500));
  // Glauert (1927), by hand: rudder 0.6 of the chord: cos a = 0.2, a = 1.369438, sin a = 0.979796.
  CHECK(water.helm_effect == Approx(1 - (1.369438 - 0.979796) / 3.14159265).epsilon(1e-5));
}

TEST_CASE("square noses, plates and touching faces are worked out or refused in words") {
  const auto plate = [](double) { return 0.04; };
  CHECK(finite(water_of(blade::station("A", 0, 400, plate, plate))));
  CHECK(water_of(blade::station("A", 0, 400, plate, plate)).known);
  const auto sharp = [](double x) { return 0.06 * std::max(0.0, 1 - x / 0.9); };  // nothing aft of 0.9
  const auto water = water_of(blade::station("A", 0, 400, sharp, sharp, {0, 0.02, 0.1, 0.3, 0.6, 0.9, 0.95, 1.0}));
  CHECK(water.known);
  CHECK(water.parted > 0);
  const auto off = [](double x) { return 0.03 + blade::naca(0.1, x); };
  const auto near = [](double x) { return -0.03 + blade::naca(0.1, x); };
  CHECK(water_of(blade::station("A", 0, 400, off, near)).known);  // wholly to one side
}

TEST_CASE("ragged readings never give a number that is none") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> any(0, 1);
  int known = 0;
  for (int k = 0; k < 120; ++k) {
    auto station = blade::exact("A", 0, 100 + 700 * any(random), 0.03 + 0.25 * any(random));
    blade::add_noise(station, 6 * any(random), random);
    if (k % 3 == 0) station.readings.back().port = station.readings.back().starboard = 0;
    if (k % 4 == 0) station.skeg = 300 * any(random);
    auto job = blade::job_of({station});
    job.reading_error = 6;
    const auto measured = section::measure_section(job, station);
    if (!measured) continue;
    auto target = shapes::naca(measured->chord, 0.12);
    target.skeg = measured->skeg;
    const auto water = flow::section_in_water(flow::nodes_of(*measured, target, 120), true);
    CHECK(finite(water));
    known += water.known ? 1 : 0;
  }
  CHECK(known >= 100);
}
