#include "catch.hpp"
#include "report/hand_made.hpp"
#include "report/report.hpp"

using namespace fairblade;

TEST_CASE("a cut deeper than allowed is named with station, side, place and depth") {
  report::Plan plan = hand_made::plan();
  CHECK(report::gather_warnings(plan).empty());  // 0.75 mm against the usual 1 mm
  plan.changes[1].removal.depth = 2.25;
  const auto warnings = report::gather_warnings(plan);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].code == "max-removal");
  CHECK(warnings[0].where == "station B");
  CHECK(warnings[0].text.find("2.2 mm would come off at x 25.4 mm, starboard; max_removal is 1.0 mm") == 0);
  plan.changes[1].removal.depth = 1.06;
  CHECK(report::gather_warnings(plan)[0].text.find("1.1 mm would come off") == 0);
  plan.changes[1].removal.depth = 1.04;  // less than a page can tell, or anyone sand
  CHECK(report::gather_warnings(plan).empty());
}

TEST_CASE("a cut where nothing may come off is named, at the readings of that patch only") {
  report::Plan plan = hand_made::plan();
  plan.job.stations[0].target.no_cut = {{0, 100, 20, 60}};  // the cut of 0.3456 mm is at x 10.5
  CHECK(report::gather_warnings(plan).empty());
  plan.job.stations[0].target.no_cut = {{0, 100, 0, 60}};
  const auto warnings = report::gather_warnings(plan);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].code == "no-cut");
  CHECK(warnings[0].text.find("0.3 mm would come off at x 10.5 mm, starboard") == 0);
}

TEST_CASE("a reading that the fit set aside is named with its file and line") {
  report::Plan plan = hand_made::plan();
  plan.measured[0].readings_from = "readings.csv";
  plan.fitted[0].suspects = {{6.1, 40, section::Face::port, 7}};
  const auto warnings = report::gather_warnings(plan);
  REQUIRE(warnings.size() == 1);
  CHECK(warnings[0].code == "reading-suspect");
  CHECK(warnings[0].text.find("x 40.0 mm, port (readings.csv:7), stands 6.1 mm outside") != std::string::npos);
}

TEST_CASE("calipers cannot tell one side from the other, so no side is named") {
  report::Plan plan = hand_made::plan();
  plan.measured[1].thickness_only = true;
  plan.changes[1].removal.depth = 2.25;
  CHECK(report::gather_warnings(plan)[0].text.find("both sides") != std::string::npos);
}

TEST_CASE("what is said of several stations in the same words is said once to people") {
  const std::vector<Warning> all{{"strip", "station A", "0.5 mm was taken off"}, {"strip", "job", "0.5 mm was taken off"},
                                 {"strip", "station B", "0.5 mm was taken off"}, {"cut", "station C", "too deep"},
                                 {"strip", "station C", "0.6 mm was taken off"}, {"strip", "station D", "0.5 mm was taken off"}};
  const auto once = report::told_once(all);
  REQUIRE(once.size() == 4);
  CHECK(once[0].where == "stations A, B and D");
  CHECK(once[1].where == "job");
  CHECK(once[2].where == "station C");
  CHECK(once[3].text == "0.6 mm was taken off");
}
