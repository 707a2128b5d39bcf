// The target as it comes back from 200 points a face. Expected: NACA Report 460's equation, in tests/blade.hpp.
#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;

namespace {

recheck::Frozen frozen(const job::FrozenPlan& from, const std::string& stage = "") {
  const auto out = recheck::freeze(from, stage);
  REQUIRE(out);
  return *out;
}

}  // namespace

TEST_CASE("the target between its points is the published curve") {
  const auto target = frozen(plan());
  double worst = 0;
  for (int k = 0; k <= 4000; ++k) {
    const double u = k / 4000.0, x = 420 * u * u;
    worst = std::max(worst, std::abs(target.targets[0].half_breadth(section::Face::port, x) - blades::wanted(0, x)));
  }
  CHECK(worst < 1e-4);  // mm; seen 0.000017, next to the sharp edge's last points
}

TEST_CASE("a height between stations is lofted: the same form on the chord between") {
  const auto surface = recheck::surface_at(frozen(plan()), 150, "AB", {"x.csv", 3});
  REQUIRE(surface);
  CHECK(surface->between == "A and B");
  CHECK(surface->section.trailing_edge_x == Approx(405).margin(1e-6));  // half-way from 420 to 390
  CHECK(*surface->origin_ahead == Approx(60));
  const auto& line = surface->section.port;
  for (std::size_t k = 0; k < line.size(); ++k)
    CHECK(line[k].y() == Approx(blades::wanted(150, line[k].x())).margin(1e-4));  // seen 0.0000012
}

TEST_CASE("the stage that the filler is shaped at comes first; one that the coats do not make is refused") {
  CHECK(frozen(plan(0.8)).stage.kind == fill::StageKind::bare);
  CHECK(frozen(plan(0.8), "final").stage.to_come == 0);
  CHECK(frozen(plan()).stage.kind == fill::StageKind::final);
  const auto refused = recheck::freeze(plan(0.8), "glassed");
  REQUIRE_FALSE(refused);
  CHECK(one_line(refused.faults().front()) == "--stage: the plan's coats make no stage \"glassed\": choose from bare, final");
}

TEST_CASE("a target cut ahead of the old leading edge keeps its place by the stock") {
  auto built = plan();
  for (auto& station : built.stations) {
    for (double& x : station.x) x -= 12;  // built 12 mm forward
    *station.target_ahead += 12;
  }
  const auto surface = recheck::surface_at(frozen(built), 300, "B", {"x.csv", 3});
  REQUIRE(surface);
  CHECK(surface->section.leading_edge_x == Approx(-12).margin(0.01));
  CHECK(*surface->origin_ahead == Approx(60));
}
