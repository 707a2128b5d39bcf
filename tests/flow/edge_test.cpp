#include "blade.hpp"
#include "catch.hpp"
#include "flow/edge_tone.hpp"

using namespace fairblade;

TEST_CASE("Strouhal numbers by equation 72") {
  // NASA RP-1218, recalled; worked from the equation.
  const double ratio[] = {0.1, 0.2, 0.5, 1, 2, 4, 10};
  const double flat[] = {0.1050, 0.1149, 0.1496, 0.1735, 0.1903, 0.2004, 0.2072};
  const double tapered[] = {0.0710, 0.0808, 0.1051, 0.1220, 0.1337, 0.1408, 0.1456};
  for (int k = 0; k < 7; ++k) {
    CHECK(flow::shedding_strouhal(ratio[k], 0) == Approx(flat[k]).margin(5.1e-5));  // all digits
    CHECK(flow::shedding_strouhal(ratio[k], 14) == Approx(tapered[k]).margin(5.1e-5));
  }
}

TEST_CASE("the band of a plain edge") {
  // By hand at 5 knots (2.572222 m/s), 0.4 m: Re 864612, d = 0.046 x 0.4 x Re^-0.2 = 1.19524 mm.
  CHECK(flow::displacement_thickness(0.4, 2.5722222) == Approx(1.19524e-3).epsilon(1e-4));
  const flow::Edge edge{4, 0, 400, false};
  const auto band = flow::shedding_band(edge, 5);
  REQUIRE(band);
  // d/h = 0.20917 and 0.44821: St 0.212/1.04858 and 0.212/1.10268.
  CHECK(band->high == Approx(0.212 / 1.04858 * 2.5722222 / 0.004).epsilon(1e-3));
  CHECK(band->low == Approx(0.212 / 1.10268 * 2.5722222 / 0.004).epsilon(1e-3));
  CHECK_FALSE(flow::shedding_band({0.05, 0, 400, false}, 5));
  CHECK_FALSE(flow::shedding_band(edge, 0));
}

TEST_CASE("speeds that hum hold the frequency heard") {
  const flow::Edge edge{2.5, 9, 380, false};
  const auto knots = flow::humming_speeds(edge, 180);
  REQUIRE(knots);
  CHECK(knots->low < knots->high);
  CHECK(flow::shedding_band(edge, knots->low)->high == Approx(180).epsilon(1e-6));
  CHECK(flow::shedding_band(edge, knots->high)->low == Approx(180).epsilon(1e-6));
  CHECK_FALSE(flow::humming_speeds(edge, 1e6));
  CHECK_FALSE(flow::humming_speeds(edge, 0.01));
  CHECK_FALSE(flow::humming_speeds({0, 9, 380, false}, 180));
}

TEST_CASE("thickness and angle of an edge") {
  // A board whose last tenth tapers from 10 to 2 mm a side over 40 mm: 2 atan(8/40).
  const blade::Shape taper = [](double x) { return x < 0.9 ? 0.025 : 0.025 - (x - 0.9) / 0.1 * 0.02; };
  auto station = blade::station("A", 0, 400, taper, taper, {0, 0.1, 0.5, 0.9, 0.92, 0.94, 0.95, 0.96, 0.98, 1.0});
  const auto job = blade::job_of({station});
  const auto edge = flow::edge_of(blade::measured(job));
  CHECK(edge.thickness == Approx(4).margin(1e-6));
  CHECK(edge.run == Approx(400));
  CHECK(edge.solid_angle == Approx(2 * 11.309932).epsilon(1e-3));
  CHECK(edge.angle_beyond_tried);
  const auto options = flow::edge_options(edge, 5);
  REQUIRE(options.size() == 3);
  CHECK(options[1].frequency->low > options[0].frequency->low);  // thinner is higher
  CHECK_FALSE(options[2].frequency);
}
