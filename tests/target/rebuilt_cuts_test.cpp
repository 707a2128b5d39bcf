#include <functional>

#include "base/text.hpp"
#include "catch.hpp"
#include "has.hpp"
#include "line.hpp"
#include "target/settled_keep.hpp"

using namespace fairblade;

namespace {

// The form 12 % thick and its slope: Report 460's equation, differentiated by hand.
double half_breadth(double x) { return blade::naca(0.12, x); }
double slope(double x) { return 0.6 * (0.14845 / std::sqrt(x) - 0.1260 - 0.7032 * x + 0.8529 * x * x - 0.4060 * x * x * x); }

job::Job edges_only(std::vector<job::Station> stations, double edge) {
  for (job::Station& station : stations) {
    station.target.approach = job::Approach::edges_only;
    station.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, edge};
  }
  auto job = blade::job_of(std::move(stations));
  job.defaults.push_back({"target.keep", "0.2 to 0.75 of the chord"});
  return job;
}

void settle(job::Job& job) {
  std::vector<section::MeasuredSection> measured;
  std::vector<form::FittedForm> fitted;
  for (std::size_t k = 0; k < job.stations.size(); ++k) {
    measured.push_back(blade::measured(job, k));
    fitted.push_back(form::fit_form(measured.back(), job.reading_error));
  }
  target::settle_keep(job, measured, fitted);
}

}  // namespace

TEST_CASE("2026-11-27: the kept part that nobody asked for ends where the tail can still be fair") {
  // Not hollow while e <= 2 (y + y' L): the tangents' run-out, here of the station with the shorter chord.
  const std::vector<double> places{0, 0.0125, 0.025, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.0};
  const auto run_out = [](int percent) {
    const double x = percent / 100.0;
    return 2 * 330 * (half_breadth(x) + slope(x) * (1 - x));
  };
  for (const double edge : {4.0, 5.0, 6.0}) {
    CAPTURE(edge);
    int percent = 75;
    while (run_out(percent) < edge) --percent;
    REQUIRE(run_out(percent) > edge + 0.01);
    auto job = edges_only({blade::exact("A", 0, 420, 0.12, places), blade::exact("B", 600, 330, 0.12, places)}, edge);
    settle(job);
    for (const job::Station& station : job.stations) {
      CHECK_FALSE(station.target.keep_to.in_mm);
      CHECK(station.target.keep_to.value == Approx(percent / 100.0).margin(1e-9));
      CHECK(station.target.keep_from.value == 0.2);
    }
    CHECK(job.defaults.back().value ==
          "0.2 to " + trimmed(job.stations[0].target.keep_to.value, 2) + " of the chord (0.75 would leave the run aft hollow)");
    CHECK_NOTHROW(line::to_targets(job));
  }
  auto fair = edges_only({blade::exact("A", 0, 420, 0.12, places)}, 1.5);
  settle(fair);
  CHECK(fair.stations[0].target.keep_to.value == 0.75);
  CHECK(fair.defaults.back().value == "0.2 to 0.75 of the chord");
  auto asked = edges_only({blade::exact("A", 0, 420, 0.12, places)}, 6);
  asked.stations[0].target.places["keep"] = {"test.json", 3};
  settle(asked);
  CHECK(asked.stations[0].target.keep_to.value == 0.75);
  CHECK_THROWS(line::to_targets(asked));  // what was asked is not changed, but refused with what would help
}

TEST_CASE("2026-11-27: ways round a cut of rebuilt edges are tried") {
  const blade::Shape worn = [](double x) { return half_breadth(0.015 + 0.985 * x) + std::max(0.0, 0.006 * (x - 0.3) / 0.7); };
  auto job = edges_only({blade::station("A", 0, 420, worn, worn)}, 2);
  settle(job);
  const auto first = line::to_targets(job);
  using target::EdgeCut, target::TargetSection;
  struct Way {
    std::optional<EdgeCut> TargetSection::*cut;
    std::optional<double> EdgeCut::*length;
    std::function<void(job::TargetRequest&, double)> follow;
  };
  using Radius = job::LeadingEdgeRadius;
  using Edge = job::TrailingEdgeThickness;
  const auto allow = [](auto& target, double mm) { target.max_removal = mm; };
  const std::vector<Way> ways{
      {&TargetSection::nose_cut, &EdgeCut::build_out, [](auto& target, double mm) { target.extend_leading_edge.mm = mm; }},
      {&TargetSection::nose_cut, &EdgeCut::radius,
       [](auto& target, double mm) {
         target.leading_edge_radius = {Radius::Kind::mm, mm};
       }},
      {&TargetSection::nose_cut, &EdgeCut::allow, allow},
      {&TargetSection::tail_cut, &EdgeCut::build_out, [](auto& target, double mm) { target.extend_trailing_edge.mm = mm; }},
      {&TargetSection::tail_cut, &EdgeCut::thickness,
       [](auto& target, double mm) {
         target.trailing_edge_thickness = {Edge::Kind::mm, mm};
       }},
      {&TargetSection::tail_cut, &EdgeCut::allow, allow},
  };
  int followed = 0;
  for (std::size_t k = 0; k < ways.size(); ++k) {
    CAPTURE(k);
    const auto& cut = first.targets[0].*ways[k].cut;
    REQUIRE(cut);
    const auto& length = (*cut).*ways[k].length;
    if (!length) continue;
    auto again = job;
    ways[k].follow(again.stations[0].target, *length);
    CHECK_FALSE(line::to_targets(again).targets[0].*ways[k].cut);
    ++followed;
  }
  CHECK(followed >= 4);
}
