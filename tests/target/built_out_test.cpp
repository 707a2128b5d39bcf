// Edges built out by as much as the tool chooses ("up_to"): enough, no more, and in one line down the blade.
#include <algorithm>

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
  const auto cut = [](const target::TargetSection& target) {
    return std::any_of(target.warnings.begin(), target.warnings.end(), [](const Warning& one) { return one.code == "nose-cut"; });
  };
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
