#include "blade.hpp"
#include "catch.hpp"
#include "form/curve.hpp"
#include "form/form.hpp"

using namespace fairblade;

TEST_CASE("exact samples return their thickness") {
  for (const double t : {0.06, 0.09, 0.12, 0.15, 0.18}) {
    for (const double chord : {150.0, 300.0, 420.0, 900.0}) {
      const auto fit = form::fit_form(blade::measured(blade::job_of({blade::exact("A", 0, chord, t)})), 0.5);
      CHECK(fit.form.thickness_ratio == Approx(t).margin(1e-6));  // seen 3e-17
      CHECK(fit.rms == Approx(0).margin(1e-6));
      CHECK(fit.centre_shift == Approx(0).margin(1e-6));
      CHECK(fit.suspects.empty());
    }
  }
}

TEST_CASE("shift and skew of the board are found") {
  const auto line = [](double x) { return 0.003 + 0.004 * (x - 0.5); };
  const auto port = [&](double x) { return blade::naca(0.12, x) + line(x); };
  const auto starboard = [&](double x) { return blade::naca(0.12, x) - line(x); };
  const auto fit = form::fit_form(blade::measured(blade::job_of({blade::station("A", 0, 400, port, starboard)})), 0.5);
  // The form was sheared rather than turned: second order in a skew of 0.004.
  CHECK(fit.form.thickness_ratio == Approx(0.12).margin(2e-5));
  CHECK(fit.centre_shift == Approx(1.2).margin(0.01));
  CHECK(fit.skew_degrees == Approx(0.2292).margin(0.003));  // atan 0.004
}

TEST_CASE("with few readings the error is larger, and still told") {
  // Five a side: a reading pulls the fit towards itself, so that what is left of its error is too small by its leverage.
  std::mt19937 random(20261126);
  double sum = 0, square = 0, reported = 0;
  constexpr int trials = 2000;
  const blade::Shape form = [](double x) { return blade::naca(0.12, x); };
  for (int k = 0; k < trials; ++k) {
    auto station = blade::station("A", 0, 420, form, form, {0.05, 0.2, 0.4, 0.6, 0.85});
    blade::add_noise(station, 0.5, random);
    const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.5);
    sum += fit.form.thickness_ratio;
    square += fit.form.thickness_ratio * fit.form.thickness_ratio;
    reported += fit.thickness_ratio_error;
  }
  const double mean = sum / trials, scatter = std::sqrt(square / trials - mean * mean);
  INFO("scatter " << scatter << " reported " << reported / trials);
  // On the safe side, and not far: seen 1.14. Without the leverage's correction it would be too small.
  CHECK(reported / trials > scatter);
  CHECK(reported / trials < 1.2 * scatter);
}

TEST_CASE("noise: unbiased, with an honest standard error") {
  std::mt19937 random(20260911);
  double sum = 0, square = 0, reported = 0;
  constexpr int trials = 400;
  for (int k = 0; k < trials; ++k) {
    auto station = blade::exact("A", 0, 420, 0.12);
    blade::add_noise(station, 0.5, random);
    const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.5);
    const double t = fit.form.thickness_ratio;
    sum += t;
    square += t * t;
    reported += fit.thickness_ratio_error;
  }
  const double mean = sum / trials;
  const double scatter = std::sqrt(square / trials - mean * mean);
  INFO("mean " << mean << " scatter " << scatter << " reported " << reported / trials);
  CHECK(mean == Approx(0.12).margin(1e-4));
  CHECK(reported / trials == Approx(scatter).epsilon(0.15));
  // Least squares on 28 readings cannot do better than 0.00066: 0.5/(420 sqrt(sum (form cosine)²)), worked by hand.
  CHECK(scatter < 0.00072);  // seen 0.00069
}

TEST_CASE("one slip of 6 mm hardly moves the thickness and is named") {
  std::mt19937 random(7);
  int named = 0, wrong = 0, trials = 0;
  for (int k = 1; k < 14; ++k) {
    for (int round = 0; round < 8; ++round) {
      auto station = blade::exact("A", 0, 420, 0.12);
      blade::add_noise(station, 0.5, random);
      const double before = form::fit_form(blade::measured(blade::job_of({station})), 0.5).form.thickness_ratio;
      *station.readings[k].port += round % 2 == 0 || k == 13 ? 6 : -6;
      const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.5);
      ++trials;
      if (std::abs(fit.form.thickness_ratio - before) >= 5e-4) ++wrong;
      for (const auto& suspect : fit.suspects) {
        if (suspect.line == k + 1 && suspect.face == section::Face::port) {
          ++named;
          break;
        }
      }
    }
  }
  INFO("named " << named << " moved " << wrong << " of " << trials);
  CHECK(named == trials);
  CHECK(wrong == 0);
}

TEST_CASE("2026-11-27: a squared trailing edge is no row of slips, and a slip on it is one") {
  // The form's edge made e thick as the half-breadths of a target are: form + (e/2 - form(1)) ((x - 0.3)/0.7)³ aft of 0.3. Told
  // had been ten readings to measure again of a blade with an edge of 4 mm.
  std::mt19937 random(11);
  const std::vector<double> places{0, 0.0125, 0.025, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0};
  int trials = 0, told = 0, named = 0;
  for (const double edge : {3.0, 4.0, 5.0, 8.0}) {
    const blade::Shape thick = [&](double x) {
      const double run = std::max(0.0, (x - 0.3) / 0.7);
      return blade::naca(0.12, x) + (edge / 2 / 420 - blade::naca(0.12, 1)) * run * run * run;
    };
    for (int round = 0; round < 25; ++round) {
      auto station = blade::station("A", 0, 420, thick, thick, places);
      blade::add_noise(station, 0.3, random);
      const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.3);
      CHECK(fit.form.thickness_ratio == Approx(0.12).margin(0.003));
      ++trials;
      if (!fit.suspects.empty()) ++told;
      const std::size_t at = 13 + round % 3;  // 0.9, 0.95 or the edge itself
      *station.readings[at].port += 6;
      const auto again = form::fit_form(blade::measured(blade::job_of({station})), 0.3);
      named += std::any_of(again.suspects.begin(), again.suspects.end(), [&](const form::Residual& one) {
        return one.line == static_cast<int>(at) + 1 && one.face == section::Face::port;
      });
    }
  }
  CHECK(told <= trials / 25);  // by noise alone; seen 2 of 100
  CHECK(named >= trials - 2);  // seen 99: one stands on an edge of 8 mm, beside what it looks like
}

TEST_CASE("2026-11-27: a nose worn flat and a bump on one face are the blade, and do not lean the fit over") {
  // Told had been 1.7 readings a station to measure again of the first and 0.8 of the second; skew strayed by twice as much.
  std::mt19937 random(12);
  const std::vector<double> places{0, 0.0125, 0.025, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0};
  const blade::Shape form = [](double x) { return blade::naca(0.12, x); };
  const blade::Shape worn = [&](double x) { return form(0.012 + 0.988 * x); };
  const blade::Shape bump = [&](double x) { return form(x) + 0.006 * std::exp(-std::pow((x - 0.45) / 0.08, 2)); };
  for (const auto& [port, starboard] : {std::pair(worn, worn), std::pair(bump, form)}) {
    int told = 0;
    double skew = 0;
    for (int round = 0; round < 50; ++round) {
      auto station = blade::station("A", 0, 420, port, starboard, places);
      blade::add_noise(station, 0.3, random);
      const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.3);
      told += fit.suspects.empty() ? 0 : 1;
      skew += fit.skew_degrees * fit.skew_degrees;
    }
    CHECK(told <= 3);
    CHECK(std::sqrt(skew / 50) < 0.04);  // degrees; of the bare form 0.02
  }
}

TEST_CASE("the modified family is found again from exact samples") {
  for (const form::Form asked : {form::Form{0.12, 6, 0.45}, form::Form{0.10, 4, 0.5}, form::Form{0.15, 7, 0.3}}) {
    const form::SectionCurve curve(asked);
    const auto shape = [&](double x) { return curve.at(x); };
    const auto fit = form::fit_form(blade::measured(blade::job_of({blade::station("A", 0, 500, shape, shape)})), 0.1);
    CHECK(fit.modified.thickness_ratio == Approx(asked.thickness_ratio).margin(1e-4));
    CHECK(fit.modified.leading_edge_index == Approx(asked.leading_edge_index).margin(0.02));
    CHECK(fit.modified.max_thickness_at == Approx(asked.max_thickness_at).margin(0.002));
    CHECK(fit.modified_rms <= fit.rms + 1e-9);
  }
}

TEST_CASE("a scan of thousands is fitted by all of them") {
  // The fit begins from some of the samples; what it ends at must be what all of them say.
  std::vector<double> places;
  for (int k = 0; k < 3000; ++k) places.push_back((1 - std::cos(3.14159265358979 * k / 2999)) / 2);
  const auto scan = [&](double t, double noise, std::mt19937& random) {
    auto station = blade::exact("A", 0, 420, t, places);
    if (noise > 0) blade::add_noise(station, noise, random);
    return form::fit_form(blade::measured(blade::job_of({station})), 0.5);
  };
  std::mt19937 random(20261126);
  CHECK(scan(0.137, 0, random).form.thickness_ratio == Approx(0.137).margin(1e-9));
  double square = 0, reported = 0;
  constexpr int trials = 40;
  for (int k = 0; k < trials; ++k) {
    const auto fit = scan(0.12, 0.5, random);
    square += std::pow(fit.form.thickness_ratio - 0.12, 2);
    reported += fit.thickness_ratio_error / trials;
  }
  // Least squares of t over both sides: sigma / sqrt(sum of squares of the half-breadths of t = 1). By some 400 of the 6000
  // readings alone it would scatter four times as much.
  double squares = 0;
  for (const double x : places) squares += 2 * std::pow(420 * blade::naca(1, x), 2);
  const double least = 0.5 / std::sqrt(squares), scatter = std::sqrt(square / trials);
  INFO("scatter " << scatter << " reported " << reported << " least " << least);
  CHECK(reported == Approx(least).epsilon(0.1));
  CHECK(scatter < 1.4 * least);  // of 40 trials it is known to 11 %

  const form::Form asked{0.13, 5, 0.42};
  const form::SectionCurve curve(asked);
  const auto shape = [&](double x) { return curve.at(x); };
  const auto fit = form::fit_form(blade::measured(blade::job_of({blade::station("A", 0, 500, shape, shape, places)})), 0.1);
  CHECK(fit.modified.leading_edge_index == Approx(5).margin(1e-3));
  CHECK(fit.modified.max_thickness_at == Approx(0.42).margin(1e-4));
}

TEST_CASE("2026-11-26: behind a skeg that no reading reaches past, the nose's index is the plain forms'") {
  // It was whatever the search had passed through: 1, 6 or 9 on three stations of one demo.
  const form::SectionCurve curve(form::Form{0.12, 6, 0.3});
  for (const double skeg : {200.0, 300.0, 400.0}) {
    const double whole = skeg + 300;
    const auto shape = [&](double x) { return whole * curve.at((skeg + 300 * x) / whole) / 300; };
    auto station = blade::station("A", 0, 300, shape, shape);
    station.skeg = skeg;
    std::mt19937 random(7);
    blade::add_noise(station, 0.5, random);
    const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.5);
    INFO("skeg " << skeg << " place " << fit.modified.max_thickness_at);
    if (fit.modified.max_thickness_at * whole < skeg) CHECK(fit.modified.leading_edge_index == 6);
  }
}

TEST_CASE("too few readings give no standard error") {
  const auto fit = form::fit_form(blade::measured(blade::job_of({blade::exact("A", 0, 400, 0.12, {0.1, 0.3, 1.0})})), 0.5);
  CHECK(fit.thickness_ratio_error < 0);
  CHECK(fit.form.thickness_ratio == Approx(0.12).margin(1e-6));
}

TEST_CASE("skeg and rudder are fitted together") {
  std::vector<double> places{0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.55, 0.7, 0.85, 1};
  const auto shape = [](double x) { return 500 * blade::naca(0.14, (140 + 360 * x) / 500) / 360; };
  auto station = blade::station("A", 0, 360, shape, shape, places);
  station.skeg = 140;
  const auto fit = form::fit_form(blade::measured(blade::job_of({station})), 0.5);
  CHECK(fit.form.thickness_ratio == Approx(0.14).margin(1e-6));
  CHECK(fit.rms == Approx(0).margin(1e-6));
}

TEST_CASE("with index and place at their bounds the other parameters still come to rest") {
  // 2026-11-27: a flat plate's fit ended where the step of a parameter at its bound was cut off, its thickness a fortieth short.
  const std::vector<std::pair<double, double>> read{{0, 14},   {2, 25.5},   {5, 30.5}, {9, 32},     {15, 32.5}, {40, 32.5},
                                                    {110, 32}, {190, 32.5}, {332, 32}, {388, 32.5}, {398, 26},  {402, 9.5}};
  std::vector<double> places;
  for (const auto& [x, thickness] : read) places.push_back(x / 402);
  const auto plate = [&](double x) {
    const auto at =
        std::find_if(read.begin(), read.end(), [&](const auto& one) { return std::abs(one.first / 402 - x) < 1e-12; });
    return at->second / 2 / 402;
  };
  const auto measured = blade::measured(blade::job_of({blade::station("A", 0, 402, plate, plate, places)}));
  const auto fit = form::fit_form(measured, 0.5);
  REQUIRE(fit.modified.leading_edge_index == Approx(9));
  REQUIRE(fit.modified.max_thickness_at == Approx(0.6));
  // The loss as the fit has it (Tukey's, at the scale of its own misses), by the nearest of many points of the curve.
  const auto misses = [&](double t) {
    const form::SectionCurve curve(form::Form{t, 9, 0.6});
    std::vector<double> out;
    for (const double x : places) {
      double least = 1;
      for (int k = 0; k <= 4000; ++k) {
        const double u = k / 4000.0, away = std::hypot(u * u - x, curve.at(u * u) - plate(x));
        least = std::min(least, away);
      }
      out.push_back(least);
    }
    return out;
  };
  std::vector<double> sizes = misses(fit.modified.thickness_ratio);
  std::sort(sizes.begin(), sizes.end());
  const double scale = std::max(1.4826 * sizes[sizes.size() / 2], 0.5 / 402);
  const auto loss = [&](double t) {
    double sum = 0;
    for (const double miss : misses(t)) {
      const double z = std::min(1.0, miss / (4.685 * scale));
      sum += 1 - std::pow(1 - z * z, 3);
    }
    return sum;
  };
  double best = 0, least = 1e9;
  for (double t = 0.9; t < 1.1; t += 0.002) {
    const double here = loss(t * fit.modified.thickness_ratio);
    if (here < least) least = here, best = t;
  }
  CHECK(best == Approx(1).margin(0.006));
}

TEST_CASE("2026-11-27: a lopsided blade's flat nose is no reading to measure again, and a slip there is") {
  // One face a fifth fuller, the foremost 0.4 % gone: the centre line runs past the flat to one side, and the thinner face's
  // corner, 6 mm out against the other's 3, was told at nine stations of ten.
  std::mt19937 random(13);
  const std::vector<double> places{0, 0.0125, 0.025, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0};
  const auto worn = [](double t) { return blade::Shape([t](double x) { return blade::naca(t, 0.004 + 0.996 * x); }); };
  int told = 0, named = 0;
  for (int round = 0; round < 50; ++round) {
    auto station = blade::station("A", 0, 490, worn(0.108), worn(0.088), places);
    blade::add_noise(station, 0.3, random);
    told += form::fit_form(blade::measured(blade::job_of({station})), 0.3).suspects.empty() ? 0 : 1;
    auto whole = blade::exact("A", 0, 490, 0.098, places);
    blade::add_noise(whole, 0.3, random);
    whole.readings.front().port = 6, whole.readings.front().starboard = 0.2;
    const auto slipped = form::fit_form(blade::measured(blade::job_of({whole})), 0.3);
    named += std::any_of(slipped.suspects.begin(), slipped.suspects.end(),
                         [](const form::Residual& one) { return one.line == 1 && one.face == section::Face::port; });
  }
  CHECK(told <= 3);
  CHECK(named == 50);
}
