// Edges built out by as much as the tool chooses ("up_to"): enough, no more, and in one line down the blade.
#include <random>

#include "catch.hpp"
#include "line.hpp"
#include "target/least_fill.hpp"

using namespace fairblade;
using job::Thickness;

TEST_CASE("2026-11-27: what may be built out is, where an edge would be cut deeper than it may be, whatever the thickness") {
  // A 0012 whose foremost 1.5 % are gone: a flat 17 mm wide that no section has room for where it stands.
  const auto worn = [](double x) { return blade::naca(0.12, 0.015 + 0.985 * x); };
  auto station = blade::station("A", 0, 400, worn, worn);
  station.target.max_removal = 1;
  const auto cut = [](const target::TargetSection& target) { return target.nose_cut.has_value(); };
  using Kind = job::Thickness::Kind;
  for (const auto& thickness : {job::Thickness{Kind::closest, 0}, {Kind::ratio, 0.12}, {Kind::mm, 48}, {Kind::least_fill, 0}}) {
    CAPTURE(static_cast<int>(thickness.kind));
    station.target.thickness = thickness;
    station.target.extend_leading_edge = {};
    CHECK(cut(line::to_targets(blade::job_of({station})).targets.front()));
    station.target.extend_leading_edge = {true, 10};
    const auto target = line::to_targets(blade::job_of({station})).targets.front();
    CHECK_FALSE(cut(target));
    CHECK(target.leading_edge_x < -0.5);
    CHECK(target.leading_edge_x > -8);  // about the 6.09 mm that are gone, less what may come off
    if (thickness.kind == Kind::mm) CHECK(target.thickness_ratio * target.chord == Approx(48));
  }
  station.target.approach = job::Approach::edges_only;
  station.target.extend_leading_edge = {true, 10};
  const auto rebuilt = line::to_targets(blade::job_of({station})).targets.front();
  CHECK(rebuilt.leading_edge_x < -0.5);
  // By the corner itself: 8.4 mm off the centre plane at x = 0, which had been cut 2 mm deep.
  CHECK(rebuilt.half_breadth(section::Face::port, 0) > 400 * worn(0) - 1.5);
}

TEST_CASE("2026-11-27: what the tool builds out at one station stands in no spike out of the edge's line") {
  // Straight edges; one station's trailing edge is 8 mm thick, the others' 3. Built out alone it stood 16 to 20 mm proud.
  for (const bool edges_only : {false, true}) {
    for (const bool stock_known : {true, false}) {
      CAPTURE(edges_only, stock_known);
      std::vector<job::Station> stations;
      for (int k = 0; k < 5; ++k) {
        const double edge = k != 2 ? 3 : edges_only ? 5 : 8;
        const auto shape = [edge](double x) { return std::max(blade::naca(0.12, x), x > 0.9 ? edge / 800 : 0.0); };
        auto station = blade::station(std::string(1, char('A' + k)), 250.0 * k, 400, shape, shape);
        if (!stock_known) station.ahead.reset();
        station.target.approach = edges_only ? job::Approach::edges_only : job::Approach::full_section;
        station.target.thickness = {Thickness::Kind::ratio, 0.12};
        station.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 3};
        station.target.max_removal = 0.5;
        station.target.extend_trailing_edge = {true, 30};
        station.target.spanwise = job::Spanwise::fair;
        stations.push_back(station);
      }
      auto job = blade::job_of(stations);
      job.target.spanwise = job::Spanwise::fair;
      const auto targets = line::to_targets(job).targets;
      REQUIRE(targets.size() == 5);
      CHECK(targets[2].trailing_edge_x() > 402);
      for (const auto& one : targets) CHECK(one.trailing_edge_x() == Approx(targets[2].trailing_edge_x()).margin(0.5));
    }
  }
}

TEST_CASE("2026-11-27: what may be built out is enough when the span has been faired as well") {
  // Worn noses with reading errors: fairing drew an edge in or a section thinner again, and at 13 of 60 blades a nose was cut
  // 0.1 to 0.3 mm deeper than it may be, though there was room ahead.
  std::mt19937 random(14);
  const std::vector<double> places{0, 0.0125, 0.025, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0};
  for (int round = 0; round < 12; ++round) {
    CAPTURE(round);
    const blade::Shape port = [](double x) { return blade::naca(0.125, 0.01 + 0.99 * x); };
    const blade::Shape starboard = [](double x) { return blade::naca(0.115, 0.01 + 0.99 * x); };
    std::vector<job::Station> stations;
    for (int k = 0; k < 5; ++k) {
      auto station = blade::station(std::string(1, char('A' + k)), 250.0 * k, 420 - 25.0 * k, port, starboard, places);
      blade::add_noise(station, 0.4, random);
      station.target.extend_leading_edge = {true, 20};
      station.target.max_removal = 1;
      station.target.spanwise = job::Spanwise::fair;
      stations.push_back(station);
    }
    auto job = blade::job_of(stations);
    job.reading_error = 0.4;
    job.target.spanwise = job::Spanwise::fair;
    const auto line = line::to_targets(job);
    for (const auto& target : line.targets) {
      CAPTURE(target.station);
      CHECK_FALSE(target.nose_cut);
      CHECK(target.leading_edge_x > -15);  // some 4 mm are gone
      CHECK(target.leading_edge_x < -1);
    }
  }
}

TEST_CASE("how far forward to build is told for the thickness that was asked for in mm, over the new chord") {
  // A 0012 whose foremost 3 % are gone: some 12 mm to build, over which 48 mm are another share of the chord by a thirtieth.
  const auto worn = [](double x) { return blade::naca(0.12, 0.03 + 0.97 * x); };
  auto station = blade::station("A", 0, 400, worn, worn);
  station.target.thickness = {Thickness::Kind::mm, 48};
  const auto planned = [&](double forward) {
    station.target.extend_leading_edge = {false, forward};
    return line::to_targets(blade::job_of({station})).targets.front();
  };
  const auto first = planned(0);
  REQUIRE(first.nose_cut);
  REQUIRE(first.nose_cut->build_out);
  const double told = *first.nose_cut->build_out;
  CHECK_FALSE(planned(told).nose_cut);
  CHECK(planned(told - 0.5).nose_cut);  // and that it is the least: 0.05 mm more than max_removal is told
}
