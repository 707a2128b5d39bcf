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

TEST_CASE("an edge cut at several stations is told once to people, with how far each way round it goes, and by station else") {
  report::Plan plan = hand_made::plan();
  plan.targets[0].nose_cut = {2.25, 0.5, section::Face::port, 3.75, std::nullopt, std::nullopt, 2.5};
  plan.targets[1].nose_cut = {1.5, 0, section::Face::starboard, 1.25, std::nullopt, 6.0, 1.5};
  const auto each = report::gather_warnings(plan);
  REQUIRE(each.size() == 2);
  CHECK(each[0].code == "nose-cut");
  CHECK(each[0].where == "station A");
  CHECK(each[0].text ==
        "port: the leading edge would be cut 2.2 mm deep at x 0.5 mm: build the leading edge forward by 3.8 mm, or allow 2.5 mm "
        "off there (max_removal, which the faces may lose then as well)");
  CHECK(each[1].where == "station B");
  CHECK(each[1].text.find("ask for a leading-edge radius of 6.0 mm") != std::string::npos);
  const auto once = report::warnings_for_people(plan);
  REQUIRE(once.size() == 1);
  CHECK(once[0].code == "nose-cut");
  CHECK(once[0].where == "stations A and B");
  CHECK(once[0].text ==
        "the leading edge would be cut, deepest at station A: 2.2 mm at x 0.5 mm, port: build the leading edge forward by 1.2 to "
        "3.8 mm, or ask for a leading-edge radius of 6.0 mm (no help at station A), or allow 1.5 to 2.5 mm off there "
        "(max_removal, which the faces may lose then as well)");
  plan.edges_uncut.leading = 4.1;  // what serves all of them, tried on the whole blade
  CHECK(report::warnings_for_people(plan)[0].text.find(
            "build the leading edge forward by 4.1 mm all the way down (--extend-leading-edge 4.1), or ask for") !=
        std::string::npos);
  CHECK(report::gather_warnings(plan)[0].text == each[0].text);
  plan.edges_uncut.leading.reset();
  plan.targets[0].nose_cut.reset();
  CHECK(report::warnings_for_people(plan)[0].text == report::gather_warnings(plan)[0].text);
  plan.targets[1].nose_cut.reset();
  plan.targets[1].tail_cut = {1.5, 398, section::Face::starboard, 1.25, 4.5, std::nullopt, std::nullopt};
  CHECK(report::gather_warnings(plan)[0].text ==
        "starboard: the run aft would be cut 1.5 mm deep at x 398.0 mm: extend the trailing edge by 1.2 mm, or leave it 4.5 mm "
        "thick");
}

TEST_CASE("a step beside the kept body is told where it is more than readings stray by") {
  report::Plan plan = hand_made::plan();  // readings within 0.5 mm
  const auto step = [&](std::size_t k, double port, double starboard) {
    plan.targets[k].joints.emplace();
    plan.targets[k].joints->nose = {{{84, 20, 0, 0, port}, {84, 20, 0, 0, starboard}}};
  };
  step(0, 0.95, -0.2);
  CHECK(report::gather_warnings(plan).empty());
  step(0, 1.05, -1.3);
  step(1, 1.1, 0);
  const auto each = report::gather_warnings(plan);
  REQUIRE(each.size() == 2);
  CHECK(each[0].code == "edge-step");
  CHECK(each[0].text.find("the rebuilt nose stands 1.3 mm below the kept body at x 84.0 mm starboard: ") == 0);
  CHECK(each[1].text.find("the rebuilt nose stands 1.1 mm proud of the kept body at x 84.0 mm port: ") == 0);
  const auto once = report::warnings_for_people(plan);
  REQUIRE(once.size() == 1);
  CHECK(once[0].where == "stations A and B");
  CHECK(once[0].text.find("the rebuilt nose, most at station A, stands 1.3 mm below") == 0);
}
