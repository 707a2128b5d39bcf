// From what was read to half-breadths against x aft of the leading edge, in mm. Expected values worked by hand.
#include "catch.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

/// A job of one station with these keys.
std::string one_station(const std::string& keys, const std::string& job_keys = "") {
  return "{ \"job\": \"J\", " + job_keys + "\n\"stations\": [ { \"name\": \"A\", \"down\": 0, " + keys + " } ] }";
}

}  // namespace

TEST_CASE("gaps are taken from the boards") {
  const Scratch scratch;
  const auto one = scratch.read(
      "j.json", one_station(R"("chord": 400, "measured_by": "gaps", "board": 60, "readings": [[0, 60, 61], [50, 40.5, null]])"));
  REQUIRE(faults_of(one) == "");
  const auto& r = one->stations[0].readings;
  CHECK(r[0].port == 0.0);
  CHECK(r[0].starboard == -1.0);  // 60 - 61: a twisted blade
  CHECK(r[1].port == 19.5);
  CHECK_FALSE(r[1].starboard);
  const auto two = scratch.read(
      "j.json",
      one_station(R"("chord": 400, "measured_by": "gaps", "board": [60, 62.5], "readings": [[0, 60, 61], [50, 40.5, 40]])"));
  REQUIRE(faults_of(two) == "");
  CHECK(two->stations[0].readings[1].starboard == 22.5);
}

TEST_CASE("x from the stock") {
  const Scratch scratch;
  const auto job = scratch.read(
      "j.json",
      one_station(R"("chord": 400, "ahead": 70, "x_from": "stock", "readings": [[330, 1, 1], [-70, 0, 0], [0, 20, 20]])"));
  REQUIRE(faults_of(job) == "");
  const auto& r = job->stations[0].readings;
  CHECK(r[0].x == 0);
  CHECK(r[1].x == 70);
  CHECK(r[2].x == 400);
  CHECK(job->warnings.empty());
}

TEST_CASE("2026-11-26: x at an edge, from the stock or the trailing edge, is the edge, whatever rounding leaves") {
  // 20.7 + 180.6 is 201.29999999999998, 20.1 + 201.2 is 221.29999999999998: a node was added a hair aft of the last reading,
  // with a warning that there was none; behind a skeg the curve could not be made.
  const Scratch scratch;
  for (const auto& [ahead, chord, aft] : {std::array{"20.7", "201.3", "180.6"}, {"20.1", "221.3", "201.2"}}) {
    const std::string at = aft, front = ahead;
    const auto job = scratch.read(
        "j.json", one_station("\"chord\": " + std::string(chord) + ", \"ahead\": " + front +
                              ", \"x_from\": \"stock\", \"readings\": [[-" + front + ", 0, 0], [0, 9, 9], [" + at + ", 1, 2]]"));
    REQUIRE(faults_of(job) == "");
    CHECK(job->stations[0].readings.back().x == job->stations[0].chord);
    CHECK(job->stations[0].readings.front().x == 0);
    CHECK(job->warnings.empty());
  }
}

TEST_CASE("2026-11-27: what rounding leaves between x and the chord as they were written down is no distance from the edge") {
  const Scratch scratch;
  const auto last = [&](const std::string& x) {
    const auto job =
        scratch.read("j.json", one_station("\"chord\": 335.455, \"readings\": [[0, 0, 0], [50, 9, 9], [" + x + ", 1, 1]]"));
    REQUIRE(faults_of(job) == "");
    CHECK(job->warnings.empty());
    return job->stations[0].readings.back().x;
  };
  CHECK(last("335.45455") == 335.455);
  CHECK(last("335.4555") == 335.455);
  CHECK(last("335.48") == 335.455);  // a thousandth of an inch beyond
  CHECK(last("335.40") == 335.40);   // but twice as much is a place of its own
  const auto nose =
      scratch.read("j.json", one_station(R"("chord": 400, "readings": [[0.01, 0.4, 0.4], [50, 9, 9], [400, 1, 1]])"));
  REQUIRE(faults_of(nose) == "");
  CHECK(nose->stations[0].readings.front().x == 0.01);  // just behind a round nose the blade is not as thin as the nose
}

TEST_CASE("2026-11-27: a raked or swept blade stands aft of its stock by more than its chord is long, and is told") {
  const Scratch scratch;
  const auto job =
      scratch.read("j.json", one_station(R"("chord": 198, "ahead": -220, "readings": [[0, 0, 0], [50, 9, 9], [198, 1, 1]])"));
  REQUIRE(faults_of(job) == "");
  REQUIRE(job->warnings.size() == 1);
  CHECK(job->warnings[0].code == "ahead-far");
  CHECK_FALSE(faults_of(scratch.read(
                  "j.json", one_station(R"("chord": 198, "ahead": 220, "readings": [[0, 0, 0], [50, 9, 9], [198, 1, 1]])"))) ==
              "");
}

TEST_CASE("x a little outside the chord goes to its end, with a warning; beyond three reading errors it is refused") {
  const Scratch scratch;
  // reading error 0.5: 1.5 is taken, 1.51 is not
  const auto job =
      scratch.read("j.json", one_station(R"("chord": 400, "readings": [[-1.5, 0, 0], [50, 20, 20], [401.5, 1, 1]])"));
  REQUIRE(faults_of(job) == "");
  CHECK(job->stations[0].readings.front().x == 0);
  CHECK(job->stations[0].readings.back().x == 400);
  REQUIRE(job->warnings.size() == 1);
  CHECK(job->warnings[0].code == "x-outside-chord");
  CHECK(job->warnings[0].where == "station A");
  CHECK(job->warnings[0].text.starts_with("2 readings lie up to 1.5 mm outside the chord (first "));
  const auto beyond = scratch.read("j.json", one_station(R"("chord": 400, "readings": [[0, 0, 0], [401.51, 1, 1]])"));
  CHECK(faults_of(beyond, scratch.folder.string()) ==
        "j.json:2: x = 401.5 mm lies 1.5 mm beyond the 400.0 mm chord of station A: check x, the chord and \"x_from\"; at the "
        "trailing edge x is the chord");
}

TEST_CASE("inches and centimetres become mm at the door") {
  const Scratch scratch;
  const auto inches = scratch.read(
      "j.json",
      one_station(
          R"("chord": "16 1/2", "ahead": 3, "skeg": "5cm", "readings": [["1/8", "3/16", 0.25], ["1 1/8", 1, 1]], "thickness": "2in",
         "extend_leading_edge": { "up_to": 0.5 }, "keep": [0.2, "300mm"], "leading_edge_radius": 0.25, "no_cut": [ { "down": [1, 2], "x": [0, 3] } ])",
          R"("units": "in", "reading_error": 0.02, "bottom": 40, "print": { "ruler_reads": ["100mm", 4], "margin": 0.5 },
         "coats": [ { "name": "p", "dry_film_um": 60 }, { "name": "g", "thickness": 0.01 } ],)"));
  REQUIRE(faults_of(inches) == "");
  const Station& a = inches->stations[0];
  // 1 in = 25.4 mm by definition; tolerance: rounding only (seen 0)
  CHECK(a.chord == Approx(419.1).epsilon(1e-14));
  CHECK(a.ahead.value() == Approx(76.2).epsilon(1e-14));
  CHECK(a.skeg == 50);
  CHECK(a.readings[0].x == Approx(3.175).epsilon(1e-14));
  CHECK(a.readings[0].port.value_or(-99) == Approx(4.7625).epsilon(1e-14));
  CHECK(a.readings[0].starboard.value_or(-99) == Approx(6.35).epsilon(1e-14));
  CHECK(a.readings[1].x == Approx(28.575).epsilon(1e-14));
  CHECK(a.target.thickness.kind == Thickness::Kind::mm);
  CHECK(a.target.thickness.value == Approx(50.8).epsilon(1e-14));
  CHECK(a.target.extend_leading_edge.mm == Approx(12.7).epsilon(1e-14));
  CHECK(a.target.keep_to.value == 300);
  CHECK(a.target.leading_edge_radius.value == Approx(6.35).epsilon(1e-14));
  CHECK(a.target.no_cut[0].x_to == Approx(76.2).epsilon(1e-14));
  CHECK(a.target.max_removal == 1);  // a default stays in mm
  CHECK(inches->reading_error == Approx(0.508).epsilon(1e-14));
  CHECK(inches->bottom.value() == Approx(1016).epsilon(1e-14));
  CHECK(inches->print.ruler_across == 100);
  CHECK(inches->print.ruler_along == Approx(101.6).epsilon(1e-14));
  CHECK(inches->coats[0].dry_film_um == 60.0);  // micrometres whatever the unit
  CHECK(inches->coats[1].thickness.value() == Approx(0.254).epsilon(1e-14));

  const auto cm =
      scratch.read("j.json", one_station(R"("chord": 42, "readings": [[0, 0, 0], [5, 2.05, 2]])", R"("units": "cm",)"));
  REQUIRE(faults_of(cm) == "");
  CHECK(cm->stations[0].chord == 420);
  CHECK(cm->stations[0].readings[1].port == 20.5);
  CHECK(cm->reading_error == 0.5);
}

TEST_CASE("a place where nothing was read is left out") {
  const Scratch scratch;
  const auto job =
      scratch.read("j.json", one_station(R"("chord": 400, "readings": [[0, 0, 0], [50, null, null], [60, 20, 20]])"));
  REQUIRE(faults_of(job) == "");
  CHECK(job->stations[0].readings.size() == 2);
}

TEST_CASE("numbers keep the line they end on") {
  const Scratch scratch;
  const auto job = scratch.read("j.json", one_station("\"chord\": 400, \"readings\": [\n[\n0\n,0,0],[\n50\n,20,20]\n]"));
  REQUIRE(faults_of(job) == "");
  CHECK(job->stations[0].readings[0].line == 4);  // counted by hand: the station opens on line 2
  CHECK(job->stations[0].readings[1].line == 6);
}
