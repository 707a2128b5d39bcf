#include "target/face_shapes.hpp"

#include <cmath>

#include "catch.hpp"
#include "form/form.hpp"
#include "line.hpp"

using namespace fairblade;
using section::Face;

namespace {

target::TargetSection planned(const job::Job& job) { return line::to_targets(job).targets.front(); }

bool warned(const target::TargetSection& target, const std::string& code) {
  for (const auto& w : target.warnings)
    if (w.code == code) return true;
  return false;
}

}  // namespace

TEST_CASE("nothing comes off inside a no-cut patch, and nothing changes far from it") {
  auto station = blade::exact("A", 300, 420, 0.14);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.12};
  const auto plain = planned(blade::job_of({station}));
  station.target.no_cut.push_back({250, 350, 120, 200});
  const auto job = blade::job_of({station});
  const auto bent = planned(job);
  const auto measured = blade::measured(job);
  for (double x = 120; x <= 200; x += 1) CHECK(bent.half_breadth(Face::port, x) >= measured.port.at(x) - 1e-9);
  CHECK(bent.half_breadth(Face::port, 0) == Approx(0).margin(1e-12));
  CHECK(bent.half_breadth(Face::starboard, 420) == Approx(plain.half_breadth(Face::starboard, 420)).margin(1e-9));
  CHECK(bent.area > plain.area);
  CHECK(warned(bent, "bent-round-patch"));
  for (double x = 10; x < 420; x += 7.3) {
    const double h = 1e-4;
    CHECK(bent.slope(Face::port, x) ==
          Approx((bent.half_breadth(Face::port, x + h) - bent.half_breadth(Face::port, x - h)) / (2 * h)).margin(1e-5));
  }
  station.down = 400;  // a patch at other heights does nothing here
  CHECK_FALSE(warned(planned(blade::job_of({station})), "bent-round-patch"));
}

TEST_CASE("2026-11-27: coats that go over a no-cut patch have room under the target there") {
  auto station = blade::exact("A", 300, 420, 0.12);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.12};
  station.target.no_cut.push_back({250, 350, 10, 200});
  auto job = blade::job_of({station});
  const auto uncoated = planned(job);  // the blade is its target, to rounding: nothing to bend, nothing to tell
  CHECK_FALSE(warned(uncoated, "bent-round-patch"));
  job::Coat glass;
  glass.name = glass.stage = "glass";
  glass.thickness = 0.3;
  glass.layers = 2;
  job.coats = {glass};
  const auto bent = planned(job);
  CHECK(warned(bent, "bent-round-patch"));
  for (double x = 10; x <= 200; x += 1) {  // steep ahead: 0.5, where a coat of 0.6 takes 0.67 across
    const double slope = (blade::naca(0.12, (x + 0.01) / 420) - blade::naca(0.12, (x - 0.01) / 420)) * 420 / 0.02;
    CHECK(bent.half_breadth(Face::starboard, x) >= 420 * blade::naca(0.12, x / 420) + 0.6 * std::hypot(1, slope) - 0.02);
  }
  job.coats[0].on = job::CoatedPart::filled;  // nothing goes over what is not filled
  CHECK_FALSE(warned(planned(job), "bent-round-patch"));
}

TEST_CASE(
    "2026-11-27: a patch over a leading edge that is left does not move it, and one over a flat nose does not swell the "
    "section") {
  // New today, and a plateau as high as the flat's half-breadth ran to the trailing edge: 48.6 mm became 64.9.
  const auto flat = [](double x) { return std::max(x < 0.015 ? 0.015 : 0.0, blade::naca(0.12, x)); };
  auto station = blade::station("A", 300, 420, flat, flat);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.12};
  station.target.no_cut.push_back({250, 350, 0, 60});
  auto job = blade::job_of({station});
  job::Coat glass;
  glass.name = glass.stage = "glass";
  glass.thickness = 1.1;
  job.coats = {glass};
  const auto measured = blade::measured(job);
  const auto bent = planned(job);
  CHECK(bent.half_breadth(Face::port, 0) == Approx(0).margin(1e-9));
  CHECK(bent.half_breadth(Face::port, 126) < 420 * blade::naca(0.12, 0.3) + 1.5);
  station.target.leading_edge = job::LeadingEdgeWork::leave;
  job.stations = {station};
  const auto left = planned(job);
  const double to = station.target.keep_from.in_mm ? station.target.keep_from.value : station.target.keep_from.value * 420;
  for (double x = 0; x <= to / 2; x += 1) CHECK(left.half_breadth(Face::port, x) == Approx(measured.port.at(x)).margin(1e-9));
}

TEST_CASE("a narrow strap that stands far out cannot be covered fairly, and that is said") {
  const auto strapped = [](double x) { return blade::naca(0.12, x) + (x > 0.55 && x < 0.65 ? 0.02 : 0.0); };
  std::vector<double> places{0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.549, 0.551, 0.6, 0.649, 0.651, 0.75, 0.85, 1};
  auto station = blade::station("A", 300, 420, strapped, strapped, places);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.12};
  station.target.no_cut.push_back({250, 350, 0.55 * 420, 0.65 * 420});
  CHECK(warned(planned(blade::job_of({station})), "patch-not-fair"));
}

TEST_CASE("a hinge edge stays as it is") {
  const auto plate = [](double x) { return x < 0.3 ? 0.03 : 0.03 - 0.025 * (x - 0.3); };
  auto station = blade::station("A", 0, 400, plate, plate);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.08};
  station.target.leading_edge = job::LeadingEdgeWork::leave;
  const auto job = blade::job_of({station});
  const auto target = planned(job);
  const auto measured = blade::measured(job);
  for (double x = 0; x <= 40; x += 2) CHECK(target.half_breadth(Face::port, x) == Approx(measured.port.at(x)).margin(1e-12));
  // From keep_from (0.20) on it is the form.
  for (double x = 81; x <= 400; x += 20)
    CHECK(target.half_breadth(Face::port, x) == Approx(400 * blade::naca(0.08, x / 400)).margin(1e-9));
}

TEST_CASE("a patch between stations is told, and edges-only keeps off patches too") {
  auto station = blade::exact("A", 300, 420, 0.14);
  station.target.thickness = {job::Thickness::Kind::ratio, 0.12};
  auto job = blade::job_of({station});
  job.target.no_cut.push_back({400, 450, 100, 200});
  const auto measured = blade::measured(job);
  std::vector<Warning> warnings;
  REQUIRE(target::plan_targets(job, {measured}, {form::fit_form(measured, 0.5)}, warnings));
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].code == "patch-between-stations");
  // Edges only, the edge thinned where nothing may come off.
  auto edges = blade::exact("A", 300, 420, 0.14);
  edges.target.approach = job::Approach::edges_only;
  edges.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 0.2};
  edges.target.no_cut.push_back({250, 350, 360, 400});
  const auto other = blade::job_of({edges});
  const auto body = blade::measured(other);
  const auto kept = planned(other);
  for (double x = 360; x <= 400; x += 1) CHECK(kept.half_breadth(Face::port, x) >= body.port.at(x) - 1e-6);
  // 2026-11-26: the figures were of the section before it was bent. By the trapezoid rule over what it became:
  double by_rule = 0;
  for (double x = 0; x < 420; x += 0.01) {
    for (const Face face : {Face::port, Face::starboard}) {
      by_rule += 0.01 * (kept.half_breadth(face, x) + kept.half_breadth(face, std::min(x + 0.01, 420 - 1e-9))) / 2;
    }
  }
  CHECK(kept.area == Approx(by_rule).epsilon(1e-4));
}

TEST_CASE("2026-11-27: a leading edge that is left is not brought to a line down the blade") {
  std::vector<job::Station> stations;
  const double ahead[] = {60, 58.5, 59.5, 57};  // no straight line: by more than a reading's error
  for (int k = 0; k < 4; ++k) {
    auto station = blade::exact(std::string(1, static_cast<char>('A' + k)), 250.0 * k, 400, 0.12);
    station.ahead = ahead[k];
    station.target.leading_edge = job::LeadingEdgeWork::leave;
    stations.push_back(station);
  }
  auto job = blade::job_of(stations);
  job.reading_error = 0.3;
  job.target.spanwise = job::Spanwise::straight;
  const auto blade = line::to_targets(job);
  bool tail = false;
  for (const auto& target : blade.targets) {
    CHECK(target.leading_edge_x == 0);
    CHECK(target.pull.leading_edge == 0);
    tail = tail || target.pull.trailing_edge != 0;
  }
  CHECK(tail);  // the other edge is
}
