// What there is to measure of a job: with readings, without, in JSON and in a CSV; and tables that are half filled.
#include "job/to_measure.hpp"

#include "catch.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

std::string head(const std::string& more = {}) { return more + "station,down,ahead,chord,x,port,starboard\n"; }

}  // namespace

TEST_CASE("a job without any reading can be measured") {
  const Scratch scratch;
  const auto job =
      read_to_measure(scratch.write("j.json", R"({ "job": "Knot", "units": "in", "bottom": 40, "print": { "paper": "A4" },
    "stations": [ { "name": "low", "down": 30, "chord": 14, "measured_by": "gaps", "board": [5, 5.5], "x_from": "stock", "ahead": 3 },
                  { "name": "top", "down": 0, "chord": 16.5 },
                  { "name": "mid", "down": 15, "chord": 15, "interpolated": true } ] })"));
  REQUIRE(job);
  CHECK(job->job == "Knot");
  CHECK(job->units == LengthUnit::inch);
  CHECK(*job->bottom == Approx(1016));
  CHECK(job->print.paper == Paper::a4);
  REQUIRE(job->stations.size() == 2);
  CHECK(job->stations[0].name == "top");
  CHECK(job->stations[0].chord == Approx(419.1));
  CHECK(job->stations[0].measured_by == MeasuredBy::half_breadths);
  CHECK(job->stations[1].measured_by == MeasuredBy::gaps);
  CHECK(job->stations[1].x_from == XFrom::stock);
  CHECK(*job->stations[1].ahead == Approx(76.2));
  CHECK(*job->stations[1].board_port == Approx(127));
  CHECK(*job->stations[1].board_starboard == Approx(139.7));
}

TEST_CASE("columns of a CSV tell how it is measured, and its keys are kept") {
  const Scratch scratch;
  const auto job = read_to_measure(scratch.write("j.csv",
                                                 "job,Knot\nunits,cm\ntrailing_edge_thickness,0.4\nboard,12\n"
                                                 "station,down,chord,x,port_gap,starboard_gap\nA,0,42,0,,\nA,,,42,,\n"));
  REQUIRE(job);
  CHECK(job->stations.at(0).measured_by == MeasuredBy::gaps);
  CHECK(*job->stations.at(0).board_port == Approx(120));
  REQUIRE(job->keys.size() == 3);
  CHECK(job->keys[1].first == "trailing_edge_thickness");
  CHECK(job->keys[1].second == std::vector<std::string>{"0.4"});
}

TEST_CASE("a readings_file tells how it is measured, and need not be there") {
  const Scratch scratch;
  const std::string text =
      R"({ "job": "Knot", "readings_file": "r.csv", "stations": [ { "name": "A", "down": 0, "chord": 420 } ] })";
  const auto before = read_to_measure(scratch.write("j.json", text));
  REQUIRE(before);
  CHECK(before->stations.at(0).measured_by == MeasuredBy::half_breadths);
  scratch.write("r.csv", "station,x,thickness\nA,0,0\nA,100,40\n");
  const auto after = read_to_measure(scratch.write("j.json", text));
  REQUIRE(after);
  CHECK(after->stations.at(0).measured_by == MeasuredBy::thickness);
}

TEST_CASE("what is wrong with a station is refused as ever") {
  const Scratch scratch;
  CHECK_FALSE(read_to_measure(scratch.write("j.json", R"({ "job": "Knot", "stations": [ { "name": "A", "down": 0 } ] })")));
  CHECK_FALSE(
      read_to_measure(scratch.write("j.json", R"({ "job": "Knot", "stations": [ { "name": "A", "down": 0, "chord": -4 } ] })")));
  CHECK_FALSE(read_to_measure(scratch.write("j.csv", "down,chord\n1,2\n")));
}

TEST_CASE("a place without readings counts as not taken, and so does a station") {
  const Scratch scratch;
  const auto job =
      scratch.read("j.csv", head() +
                                "A,0,,400,0,0,0\nA,,,,40,,\nA,,,,120,24,24\nA,,,,400,1,1\nB,300,,400,0,,\nB,,,,120,,\n"
                                "C,600,,400,0,0,0\nC,,,,120,23,23\nC,,,,400,1,1\n");
  REQUIRE(job);
  REQUIRE(job->stations.size() == 2);
  CHECK(job->stations[0].readings.size() == 3);
  CHECK(job->stations[1].name == "C");
  REQUIRE(job->warnings.size() == 1);
  CHECK(job->warnings[0].code == "station-not-read");
  CHECK(job->warnings[0].where == "station B");
}

TEST_CASE("a table that is still blank is refused in one line") {
  const Scratch scratch;
  const auto job = scratch.read("j.csv", head("units,mm\n") + "A,0,,400,0,,\nA,,,,40,,\nB,300,,400,0,,\nB,,,,120,,\n");
  REQUIRE_FALSE(job);
  REQUIRE(job.faults().size() == 1);
  CHECK(job.faults()[0].place.line == 2);
  CHECK(job.faults()[0].what == "nothing is filled in yet: 4 places wait for their readings");
  CHECK_FALSE(job.faults()[0].remedy.empty());
}
