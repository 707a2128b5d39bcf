#include "flow/blade.hpp"

#include "catch.hpp"

using namespace fairblade;
using flow::BladeOutline;
using flow::EndPlate;

TEST_CASE("lift slopes by Whicker and Fehlner") {
  // TMB Report 933's formula, recalled; worked from the equation, no sweep.
  const double aspect[] = {0.5, 1, 1.5, 2, 3, 4, 6};
  const double slope[] = {0.7322, 1.4011, 1.9726, 2.4435, 3.1384, 3.6063, 4.1761};
  for (int k = 0; k < 7; ++k) CHECK(flow::whicker_fehlner_slope(aspect[k]) == Approx(slope[k]).margin(5.1e-5));  // all digits
  // By hand: cos 30 = 0.8660254, a²/cos⁴ = 16, + 4 = 20: 5.4 pi/(1.8 + 0.8660254 x 4.4721360).
  CHECK(flow::whicker_fehlner_slope(3, 30) == Approx(16.96460033 / 5.67298333).epsilon(1e-8));
  // By hand at a = 4: 1/2 - (1.11 x 4.4721360 + 2)/24.
  CHECK(flow::whicker_fehlner_centre(4) == Approx(0.2098304).epsilon(1e-6));
}

TEST_CASE("a rectangular blade, by hand") {
  const BladeOutline board{{{0, 400, 60.0}, {800, 400, 60.0}}};
  const auto water = flow::blade_in_water(board, false, EndPlate::full, 5, 8);
  REQUIRE(water.known);
  CHECK(water.area == Approx(320000));
  CHECK(water.mean_chord == Approx(400));
  CHECK(*water.balance_percent == Approx(15));
  CHECK(water.geometric_aspect == Approx(2));
  CHECK(water.effective_aspect == Approx(4));
  CHECK(water.sweep_degrees == Approx(0).margin(1e-12));
  // 0.2098304 x 400 - 60
  CHECK(*water.lever == Approx(23.93216).epsilon(1e-5));
  // 1025/2 x 2.5722222² = 3390.8651 Pa, x 0.32 m² x 3.6063 x 0.13962634 rad
  CHECK(water.load.force == Approx(3390.8651 * 0.32 * 3.6063 * 0.13962634).epsilon(2e-5));
  CHECK(*water.load.torque == Approx(water.load.force * 0.02393216).epsilon(1e-5));
  CHECK(*water.class_lever_ahead == Approx(400 * (0.33 - 0.15)));
  CHECK(*water.class_lever_astern == Approx(400 * (0.66 - 0.15)));
  CHECK(flow::blade_in_water(board, false, EndPlate::none, 5, 8).effective_aspect == Approx(2));
  CHECK(flow::blade_in_water(board, false, EndPlate::half, 5, 8).effective_aspect == Approx(3));
}

TEST_CASE("a tapered blade whose edge crosses the stock, by hand") {
  // Chord 400 to 200 over 600; ahead 60 to -60, so 60 x 300/2 mm² stand ahead of the stock.
  const BladeOutline taper{{{0, 400, 60.0}, {600, 200, -60.0}}};
  const auto water = flow::blade_in_water(taper, false, EndPlate::none, 5, 8);
  CHECK(water.area == Approx(180000));
  CHECK(water.mean_chord == Approx((160000.0 + 80000 + 40000) / 3 * 600 / 180000));
  CHECK(*water.balance_percent == Approx(100 * 9000.0 / 180000));
  // Quarter chord from 100 - 60 to 50 + 60: 70 aft over 600.
  CHECK(water.sweep_degrees == Approx(6.6543).epsilon(1e-4));
  // Integral of chord x (leading edge aft of the stock) = 600/6 (-24000 + 0 + 12000).
  const double edge = -1200000.0 / 180000;
  CHECK(*water.lever == Approx(edge + water.centre_of_pressure * water.mean_chord));
}

TEST_CASE("what is not given is not made up") {
  const BladeOutline no_stock{{{0, 400, 60.0}, {600, 200, std::nullopt}}};
  const auto water = flow::blade_in_water(no_stock, false, EndPlate::full, 5, 8);
  CHECK(water.known);
  CHECK_FALSE(water.balance_percent);
  CHECK_FALSE(water.lever);
  CHECK_FALSE(water.load.torque);
  CHECK(water.load.force > 0);
  const auto one = flow::blade_in_water({{{0, 400, 60.0}}}, false, EndPlate::full, 5, 8);
  CHECK_FALSE(one.known);
  CHECK_FALSE(one.why_not.empty());
  CHECK_FALSE(flow::blade_in_water({}, false, EndPlate::full, 5, 8).known);
  const auto skeg = flow::blade_in_water({{{0, 400, 20.0}, {500, 400, 20.0}}}, true, EndPlate::full, 5, 8);
  CHECK_FALSE(skeg.known);
  CHECK(*skeg.balance_percent == Approx(5));
}
