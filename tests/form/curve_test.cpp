#include "form/curve.hpp"

#include "blade.hpp"
#include "catch.hpp"

using namespace fairblade;
using form::Form;
using form::SectionCurve;

TEST_CASE("4-digit ordinates as published") {
  const auto rows = blade::truth("ordinates-4-digit.csv");
  for (std::size_t i = 1; i < rows.size(); ++i) {
    for (std::size_t j = 1; j + 1 < rows[i].size(); ++j) {
      const double t = std::stod(rows[0][j]) / 100;
      INFO(rows[0][j] << " at " << rows[i][0] << " %");
      CHECK(100 * SectionCurve(Form{t, 6, 0}).at(std::stod(rows[i][0]) / 100) ==
            Approx(std::stod(rows[i][j])).margin(0.001));  // % chord; the table has three decimals
    }
  }
}

TEST_CASE("modified ordinates as worked from NACA Report 492") {
  const auto rows = blade::truth("ordinates-modified.csv");
  for (std::size_t j = 1; j + 1 < rows[0].size(); ++j) {
    const std::string name = rows[0][j];  // "0012-64"
    const Form form{std::stod(name.substr(2, 2)) / 100, std::stod(name.substr(5, 1)), std::stod(name.substr(6, 1)) / 10};
    CHECK(form::name_of(form) == name);
    for (std::size_t i = 1; i < rows.size(); ++i) {
      INFO(name << " at " << rows[i][0] << " %");
      CHECK(100 * SectionCurve(form).at(std::stod(rows[i][0]) / 100) == Approx(std::stod(rows[i][j])).margin(0.001));
    }
  }
}

TEST_CASE("modified coefficients as recalled from the printed table") {
  const auto rows = blade::truth("coefficients-modified.csv");
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const SectionCurve curve(Form{0.20, std::stod(rows[i][0].substr(0, 1)), std::stod(rows[i][0].substr(1, 1)) / 10});
    for (std::size_t k = 0; k < 4; ++k) CHECK(curve.nose()[k] == Approx(std::stod(rows[i][k + 1])).margin(6e-5));
  }
}

TEST_CASE("an index of 9 has three times the radius of 6") {
  const double six = SectionCurve(Form{0.12, 6, 0.4}).radius();
  CHECK(SectionCurve(Form{0.12, 9, 0.4}).radius() / six == Approx(3).epsilon(1e-4));
  CHECK(six == Approx(1.1019 * 0.12 * 0.12).epsilon(1e-4));
}

TEST_CASE("with its own radius and edge the target is the form itself") {
  for (const Form form : {Form{0.12, 6, 0}, Form{0.09, 5, 0.45}, Form{0.15, 3, 0.6}}) {
    const SectionCurve own(form);
    const SectionCurve asked(form, own.radius(), own.edge());
    for (int k = 0; k <= 200; ++k) CHECK(asked.at(k / 200.0) == Approx(own.at(k / 200.0)).margin(1e-15));
    CHECK(asked.at(0.01) == Approx(own.at(0.01)).margin(1e-12));
  }
}

TEST_CASE("the nose asked for is the nose drawn, and greatest thickness stays") {
  const double chord = 420;
  const SectionCurve curve(Form{0.12, 6, 0}, 8 / chord, 4 / chord);
  // Limit of y²/2x, extrapolated in sqrt(x) from three places by Richardson's rule.
  const auto apparent = [&](double x) {
    const double y = chord * curve.at(x / chord);
    return y * y / (2 * x);
  };
  const double a = apparent(0.0004), b = apparent(0.0001);
  CHECK(2 * b - a == Approx(8).margin(0.05));  // seen 2e-6
  CHECK(2 * chord * curve.at(1) == Approx(4).margin(1e-12));
  CHECK(curve.at(curve.max_thickness_at()) == Approx(SectionCurve(Form{0.12, 6, 0}).at(curve.max_thickness_at())).margin(1e-15));
  CHECK(curve.slope(curve.max_thickness_at()) == Approx(0).margin(1e-12));
  // Curvature is continuous at the joint of nose and tail deformations.
  const double m = curve.max_thickness_at();
  CHECK(curve.second(m - 1e-9) == Approx(curve.second(m + 1e-9)).epsilon(1e-6));
}

TEST_CASE("slopes and second derivatives agree with differences") {
  for (const Form form : {Form{0.12, 6, 0}, Form{0.10, 4, 0.5}}) {
    const SectionCurve curve(form, 0.03, 0.012);
    for (const double x : {0.02, 0.15, 0.28, 0.35, 0.52, 0.8, 0.97}) {
      const double h = 1e-5;
      CHECK(curve.slope(x) == Approx((curve.at(x + h) - curve.at(x - h)) / (2 * h)).margin(1e-6));
      CHECK(curve.second(x) == Approx((curve.slope(x + h) - curve.slope(x - h)) / (2 * h)).margin(1e-5).epsilon(1e-5));
      const double u = std::sqrt(x);
      CHECK(curve.slope_u(u) == Approx((curve.at_u(u + h) - curve.at_u(u - h)) / (2 * h)).margin(1e-6));
      CHECK(curve.second_u(u) == Approx((curve.slope_u(u + h) - curve.slope_u(u - h)) / (2 * h)).margin(1e-5).epsilon(1e-5));
    }
  }
}

TEST_CASE("limits of fairness as found by trial") {
  // Nose convex up to these multiples of 1.1019 t², tail hollow and flaring from these e/t; found by trial on the
  // equations, +-2 %.
  struct Row {
    double m, convex, overshoots, hollow, flares;
  };
  const Row rows[] = {{0, 5.0, 7.4, 0.25, 0.57},   {0.2, 7.3, 8.3, 0.11, 0.55}, {0.3, 5.1, 6.9, 0.13, 0.57},
                      {0.4, 3.7, 6.2, 0.30, 0.65}, {0.5, 2.7, 5.4, 0.59, 0.80}, {0.6, 2.5, 3.7, 0.91, 0.95}};
  for (const Row& row : rows) {
    const Form form{0.12, 6, row.m};
    const double r6 = 1.1019 * 0.12 * 0.12;
    INFO("m = " << row.m);
    CHECK(SectionCurve(form, 0.96 * row.convex * r6, {}).nose_convex());
    CHECK_FALSE(SectionCurve(form, 1.04 * row.convex * r6, {}).nose_convex());
    CHECK_FALSE(SectionCurve(form, 0.96 * row.overshoots * r6, {}).nose_overshoots());
    CHECK(SectionCurve(form, 1.04 * row.overshoots * r6, {}).nose_overshoots());
    CHECK(SectionCurve(form, {}, 0.95 * row.hollow * 0.12).tail_convex());
    CHECK_FALSE(SectionCurve(form, {}, 1.05 * row.hollow * 0.12).tail_convex());
    CHECK_FALSE(SectionCurve(form, {}, 0.97 * row.flares * 0.12).tail_flares());
    CHECK(SectionCurve(form, {}, 1.03 * row.flares * 0.12).tail_flares());
  }
}
