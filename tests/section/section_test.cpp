#include "section/section.hpp"

#include <algorithm>

#include "blade.hpp"
#include "catch.hpp"
#include "section/outline.hpp"

using namespace fairblade;
using section::Face;

TEST_CASE("exact readings of a form give its area and its curve") {
  // Closed form: area = 8221/12000 t c² (integral of the Report 460 equation, both sides).
  for (const double t : {0.06, 0.09, 0.12, 0.15, 0.18}) {
    for (const double chord : {150.0, 420.0, 900.0}) {
      const auto job = blade::job_of({blade::exact("A", 0, chord, t)});
      const auto m = blade::measured(job);
      const double area = 8221.0 / 12000 * t * chord * chord;
      CHECK(m.figures.area == Approx(area).epsilon(5e-4));  // seen 7e-6
      CHECK(m.figures.area == Approx(area).epsilon(2e-5));
      for (const double x : {0.003, 0.03, 0.25, 0.62, 0.97}) {
        CHECK(m.port.at(x * chord) == Approx(chord * blade::naca(t, x)).margin(1e-9 * chord));
      }
      // Radius (5 x 0.2969)²/2 t² c, printed as 1.1019 t² c.
      CHECK(m.figures.leading_edge_radius == Approx(std::pow(5 * 0.2969, 2) / 2 * t * t * chord).epsilon(1e-9));
      CHECK(m.figures.max_thickness == Approx(1.00029 * t * chord).epsilon(2e-5));
      CHECK(m.figures.max_thickness_at == Approx(0.2998).margin(0.003));
      CHECK(m.figures.lopsided == Approx(0).margin(1e-9));
    }
  }
}

TEST_CASE("port and starboard are never averaged away") {
  const auto fuller = [](double x) { return blade::naca(0.12, x) + 0.005 * std::sqrt(x) * (1 - x); };
  const auto flatter = [](double x) { return blade::naca(0.12, x); };
  const auto job = blade::job_of({blade::station("A", 0, 400, fuller, flatter)});
  const auto m = blade::measured(job);
  CHECK(m.port.at(160) - m.starboard.at(160) == Approx(400 * 0.005 * std::sqrt(0.4) * 0.6).margin(0.02));
  CHECK(m.figures.lopsided > 0.3);
}

TEST_CASE("a leading edge without a reading is implied, and said; a square one is kept") {
  auto places = blade::places14();
  places.erase(places.begin());
  const auto job = blade::job_of({blade::exact("A", 0, 400, 0.12, places)});
  const auto m = blade::measured(job);
  CHECK(m.port.at(0) == 0);
  REQUIRE(m.warnings.size() == 1);
  CHECK(m.warnings[0].code == "leading-edge-assumed");
  const auto plate = [](double) { return 0.04; };
  const auto square = blade::measured(blade::job_of({blade::station("A", 0, 400, plate, plate)}));
  CHECK(square.port.at(0) == Approx(16));
  CHECK(square.warnings.empty());
  CHECK(square.figures.area == Approx(400 * 32).epsilon(2e-3));  // the rectangle; seen 0
}

TEST_CASE("a missing reading at the trailing edge is carried on straight and listed") {
  std::vector<double> places{0, 0.05, 0.1, 0.3, 0.5, 0.7, 0.8, 0.9};
  const auto wedge = [](double x) { return 0.05 - 0.04 * x; };
  const auto m = blade::measured(blade::job_of({blade::station("A", 0, 500, wedge, wedge, places)}));
  CHECK(m.figures.trailing_edge_thickness == Approx(10).margin(1e-9));  // 2 (0.05 - 0.04) 500
  REQUIRE(m.warnings.size() == 1);
  CHECK(m.warnings[0].code == "trailing-edge-assumed");
}

TEST_CASE("repeated readings are averaged, and told of past 4.5 sigma root 2") {
  auto one = blade::exact("A", 0, 400, 0.12);
  auto again = one.readings[7];
  *again.port += 2;
  one.readings.insert(one.readings.begin() + 8, again);
  auto job = blade::job_of({one});
  auto m = blade::measured(job);
  CHECK(m.warnings.empty());  // 2 < 4.5 x 0.5 x 1.414 = 3.18
  CHECK(m.port.at(80) == Approx(400 * blade::naca(0.12, 0.2) + 1).margin(1e-9));
  *job.stations[0].readings[8].port += 3;
  m = blade::measured(job);
  REQUIRE(m.warnings.size() == 1);
  CHECK(m.warnings[0].code == "repeats-disagree");
  CHECK(m.warnings[0].text.find(": one of the two, or its x, is a slip; their mean is used") != std::string::npos);
}

TEST_CASE("2026-11-27: with a coat off, a mark on the blade is told at one x on both sides") {
  // 260 became 259.4 to port and 259.5 to starboard. By hand: the leading edge that x is counted from goes back by the coat.
  const auto port = [](double x) { return blade::naca(0.14, x); };
  const auto starboard = [](double x) { return blade::naca(0.10, x); };
  auto job = blade::job_of({blade::station("A", 0, 400, port, starboard)});
  job.coating_to_strip = 0.5;
  const auto m = blade::measured(job);
  for (const auto& reading : job.stations[0].readings) {
    if (reading.x < 1 || reading.x > 399) continue;
    for (const auto face : {section::Face::port, section::Face::starboard}) {
      INFO(reading.x);
      CHECK(std::any_of(m.points.begin(), m.points.end(), [&](const section::SurfacePoint& point) {
        return point.face == face && std::abs(point.x - (reading.x - 0.5)) < 1e-9;
      }));
    }
  }
}

TEST_CASE("a twisted blade may have a negative half-breadth, but no negative thickness") {
  const auto port = [](double x) { return blade::naca(0.12, x) + 0.02 * x; };
  const auto starboard = [](double x) { return blade::naca(0.12, x) - 0.02 * x; };
  const auto job = blade::job_of({blade::station("A", 0, 400, port, starboard)});
  const auto m = blade::measured(job);
  CHECK(m.starboard.at(400) < 0);
  CHECK(m.figures.area == Approx(8221.0 / 12000 * 0.12 * 400 * 400).epsilon(1e-3));  // shear keeps area
  auto bad = job;
  *bad.stations[0].readings[9].starboard -= 60;
  const auto refused = section::measure_section(bad, bad.stations[0]);
  REQUIRE_FALSE(refused);
  CHECK(one_line(refused.faults().front()).find("test.json:10: ") == 0);
}

TEST_CASE("an old coat comes off along the normal") {
  // A circle-nosed plate: stripping d from a plate of half-breadth b leaves b - d, and the edges each go back by d.
  const auto plate = [](double) { return 0.05; };
  auto job = blade::job_of({blade::station("A", 0, 400, plate, plate)});
  job.coating_to_strip = 1.5;
  const auto m = blade::measured(job);
  CHECK(m.chord == Approx(397));
  CHECK(*m.ahead == Approx(0.17 * 400 - 1.5));
  CHECK(m.port.at(0) == Approx(18.5));
  CHECK(m.port.at(0.55 * 397) == Approx(18.5).margin(0.05));  // between readings; seen 0
  CHECK(m.figures.area == Approx(397.0 * 37).epsilon(2e-3));  // seen 0
  // A form loses perimeter x depth to first order: 0012 of chord 400 has a half-girth of 2.03927 c / 2 (closed
  // perimeter of the 0012, both faces, without the edge face).
  auto round = blade::job_of({blade::exact("A", 0, 400, 0.12)});
  const double before = blade::measured(round).figures.area;
  round.coating_to_strip = 0.2;
  const double after = blade::measured(round).figures.area;
  CHECK(before - after == Approx(0.2 * 2.03927 * 400).epsilon(0.02));  // second order in the depth; seen 0.09 %
}

TEST_CASE("calipers halve, one side alone is mirrored and said") {
  auto calipers = blade::exact("A", 0, 400, 0.12);
  calipers.measured_by = job::MeasuredBy::thickness;
  for (auto& r : calipers.readings) {
    r.caliper = *r.port + *r.starboard;
    r.port.reset();
    r.starboard.reset();
  }
  const auto m = blade::measured(blade::job_of({calipers}));
  CHECK(m.thickness_only);
  CHECK(m.starboard.at(120) == Approx(400 * blade::naca(0.12, 0.3)).margin(1e-9));
  auto half = blade::exact("A", 0, 400, 0.12);
  for (auto& r : half.readings) r.starboard.reset();
  const auto one = blade::measured(blade::job_of({half}));
  CHECK(one.one_side_only);
  CHECK(one.warnings.front().code == "one-side-only");
}

TEST_CASE("behind a skeg the form begins at the skeg") {
  // A 0014 of 500 mm, its first 140 mm a fixed skeg: the rudder's 360 mm are read.
  std::vector<double> places{0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.55, 0.7, 0.85, 1};
  const auto shape = [](double x) { return 500 * blade::naca(0.14, (140 + 360 * x) / 500) / 360; };
  auto station = blade::station("A", 0, 360, shape, shape, places);
  station.skeg = 140;
  const auto m = blade::measured(blade::job_of({station}));
  for (const double x : {0.0, 7.0, 100.0, 333.0}) {
    CHECK(m.port.at(x) == Approx(500 * blade::naca(0.14, (140 + x) / 500)).margin(1e-9));
    const double h = 1e-4;
    if (x > 0) CHECK(m.port.slope(x) == Approx((m.port.at(x + h) - m.port.at(x - h)) / (2 * h)).margin(1e-6));
  }
  CHECK(m.figures.leading_edge_radius == 0);
  // Area of the form (closed) less that of its first 140 mm, by Simpson on the published equation.
  double ahead = 0;
  for (int k = 0; k < 2000; ++k) {
    const auto y = [](double u) {
      const double x = u * u * 0.28;
      return 2 * blade::naca(0.14, x) * 2 * u * 0.28;
    };
    const double a = k / 2000.0, b = (k + 1) / 2000.0;
    ahead += (b - a) / 6 * (y(a) + 4 * y((a + b) / 2) + y(b));
  }
  CHECK(m.figures.area == Approx(500.0 * 500 * (8221.0 / 12000 * 0.14 - ahead)).epsilon(1e-4));
}

TEST_CASE("2026-11-25: a plate shows no bulge that was not read") {
  // Caliper readings of a 32 mm plate with rounded edges, far apart near the tail: taking a form out of them left the
  // outline 2 mm thicker between two readings than at either.
  const auto plate = [](double x) {
    return x < 0.04   ? 16 / 390.0 * std::sqrt(x / 0.04)
           : x > 0.97 ? 16 / 390.0 * (1 - x) / 0.03 * 0.5 + 8 / 390.0 * 0.2
                      : 16 / 390.0;
  };
  const std::vector<double> places{0, 0.01, 0.02, 0.04, 0.08, 0.15, 0.3, 0.5, 0.7, 0.9, 0.98, 1.0};
  const auto m = blade::measured(blade::job_of({blade::station("A", 0, 390, plate, plate, places)}));
  double most = 0;
  for (const double x : places) most = std::max(most, 2 * 390 * plate(x));
  CHECK(m.figures.max_thickness == Approx(most).margin(1e-6));
}

TEST_CASE("2026-11-25: a twisted foil is still a foil") {
  // Turned 2 degrees: one side's half-breadths run below nothing, and judged by itself it looked like a plate.
  const double slope = std::tan(2 * 3.14159265358979 / 180);
  const auto port = [&](double x) { return blade::naca(0.12, x) + slope * x; };
  const auto starboard = [&](double x) { return blade::naca(0.12, x) - slope * x; };
  const auto m = blade::measured(blade::job_of({blade::station("A", 0, 420, port, starboard)}));
  CHECK(m.port.with_form());
  CHECK(m.starboard.at(290) == Approx(420 * starboard(290 / 420.0)).margin(0.2));
}

TEST_CASE("a side that was not read is used for what the rest of its row says") {
  auto half = blade::exact("A", 0, 400, 0.12);
  for (std::size_t i = 0; i < half.readings.size(); ++i) {
    auto& r = half.readings[i];
    if (i % 3 == 0) r.starboard.reset();  // port alone
    if (i % 3 == 1) {                     // port and the caliper
      r.caliper = *r.port + *r.starboard;
      r.starboard.reset();
    }
  }
  half.readings[5].caliper = 30;  // the caliper alone tells no side
  half.readings[5].port.reset();
  half.readings[5].starboard.reset();
  const auto m = blade::measured(blade::job_of({half}));
  const auto count = [&](Face face) {
    return std::count_if(m.points.begin(), m.points.end(), [&](const auto& p) { return p.face == face; });
  };
  CHECK(count(Face::port) == 13);      // 14 places, one with the caliper alone
  CHECK(count(Face::starboard) == 8);  // 14, less the five with port alone, less that one
  for (const auto& point : m.points) CHECK(point.half_breadth == Approx(400 * blade::naca(0.12, point.x / 400)).margin(1e-9));
  std::string codes;
  for (const auto& warning : m.warnings) codes += warning.code + " ";
  CHECK(codes.find("side-from-caliper") != std::string::npos);
  CHECK(codes.find("caliper-alone") != std::string::npos);
}

TEST_CASE("2026-11-26: a section is not guessed from its ends, nor over a tail that was not read") {
  // Half a sheet filled in, readings to x 60 of 400: straight on from the last two it became a trumpet 109 mm thick.
  const auto refusal = [](const job::Station& station) {
    const auto out = section::measure_section(blade::job_of({station}), station);
    return out ? std::string("taken") : one_line(out.faults().front());
  };
  const auto whole = blade::exact("A", 0, 400, 0.12);
  auto half = whole;
  half.readings.resize(7);
  CHECK(refusal(half) ==
        "test.json:7: station A: nothing was read to port aft of x 60.0 mm of its 400.0 mm chord: read on to the trailing edge, "
        "and "
        "at the edge itself");
  auto port = whole;
  for (std::size_t k = 7; k < port.readings.size(); ++k) port.readings[k].port.reset();
  CHECK(refusal(port).find("nothing was read to port aft of x 60.0 mm") != std::string::npos);
  auto edge = whole;
  edge.readings.pop_back();  // to 0.85 of the chord
  CHECK(refusal(edge) == "taken");
  edge.readings.pop_back();  // to 0.70
  CHECK(refusal(edge) != "taken");
  auto ends = whole;
  ends.readings = {whole.readings.front(), whole.readings.back()};
  CHECK(refusal(ends).ends_with(
      "station A was read at only two places to port: measure at least three places on each side, better eight to twelve"));
}

TEST_CASE("2026-11-27: where a thin edge goes with its paint, the faces still have the section's own chord") {
  // A wedge that ends 0.4 mm thick, under 0.8 mm of paint: it comes to nothing before its end. The faces that were made of what
  // is left were spread over the old chord, and all between the readings stood 1.6 mm in 400 too far forward.
  const auto wedge = [](double x) { return x < 0.05 ? std::sqrt(x) * 0.15 : 0.0336 - 0.0335 * (x - 0.05) / 0.95 + 0.0004; };
  auto job = blade::job_of({blade::station("A", 0, 400, wedge, wedge)});
  job.coating_to_strip = 0.8;
  const auto measured = blade::measured(job);
  bool told = false;
  for (const auto& warning : measured.warnings) told = told || warning.code == "edge-goes-with-coating";
  REQUIRE(told);
  CHECK(measured.chord == Approx(398.4));
  CHECK(measured.port.chord() == measured.chord);
  CHECK(measured.starboard.chord() == measured.chord);
  auto along = measured.port.along();
  for (double f = 0; f <= 1; f += 0.01) CHECK(along.at_u(std::sqrt(f)) == Approx(measured.port.at(f * 398.4)).margin(1e-9));
}
