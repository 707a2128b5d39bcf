// What a sheet from the yard may look like and still be read; and what repeats say of one's own error. Expected values by
// hand: 1 in = 25.4 mm by definition.
#include <algorithm>
#include <cmath>

#include "catch.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

const std::string table = "A,0,78,420,0,0,0\n,,,,50,20.5,19.75\n,,,,420,2,2\n";
const std::string titles = "station,down,ahead,chord,x,port,starboard\n";

void check_three(const Outcome<Job>& job) {
  REQUIRE(faults_of(job) == "");
  REQUIRE(job->stations.size() == 1);
  const auto& r = job->stations[0].readings;
  REQUIRE(r.size() == 3);
  CHECK(job->stations[0].chord == 420);
  CHECK(r[1].x == 50);
  CHECK(r[1].port == 20.5);
  CHECK(r[1].starboard == 19.75);
}

}  // namespace

TEST_CASE("titles, rows of units and rows of nothing") {
  const Scratch scratch;
  SECTION("units in the titles") {
    check_three(
        scratch.read("a.csv", "Station,Down [mm],ahead / mm,CHORD (Millimetres),x mm,port_mm,\"starboard, mm\"\n" + table));
  }
  SECTION("a row of units") { check_three(scratch.read("a.csv", titles + "unit,mm,mm,mm,(mm),mm.,[MM]\n" + table)); }
  SECTION("a row of units with dashes") { check_three(scratch.read("a.csv", titles + "-,mm,-,mm,mm,mm,mm\n" + table)); }
  SECTION("empty titles at the end, and rows without them") {
    check_three(scratch.read("a.csv", "station,down,ahead,chord,x,port,starboard,,,\n" + table));
  }
  SECTION("a column of the owner's own behind ours, mostly left off") {
    check_three(scratch.read("a.csv",
                             "station,down,ahead,chord,x,port,starboard,remarks\nA,0,78,420,0,0,0,\"worn,\nand "
                             "soft\"\n,,,,50,20.5,19.75\n,,,,420,2,2\n"));
  }
  SECTION("a table that begins in the second column") {
    check_three(scratch.read(
        "a.csv",
        ",job,Invented\n,station,down,ahead,chord,x,port,starboard\n,A,0,78,420,0,0,0\n,,,,,50,20.5,19.75\n,,,,,420,2,2\n"));
  }
  SECTION("the titles once more, rows of separators and blanks") {
    check_three(scratch.read("a.csv", titles + "\n,,,,,,\n \n" + titles + table + "\"\",\"\",\"\",,,,\n\xc2\xa0,,,,,,\n"));
  }
  SECTION("places that were not read") {
    check_three(
        scratch.read("a.csv", titles + "A,0,78,420,0,0,0\n,,,,20,,\n,,,,50,20.5,19.75\n,,,,80,-,\xe2\x80\x94\n,,,,420,2,2\n"));
  }
  SECTION("sep= with a tab") {
    std::string tabs = titles + table;
    std::replace(tabs.begin(), tabs.end(), ',', '\t');
    check_three(scratch.read("a.csv", "sep=\t\r\n" + tabs));
  }
  SECTION("sep= with a bar") {
    std::string bars = titles + table;
    std::replace(bars.begin(), bars.end(), ',', '|');
    check_three(scratch.read("a.csv", "sep=|\r\n" + bars));
  }
}

TEST_CASE("a line is counted where its row begins, in spite of quoted line ends") {
  const Scratch scratch;
  const auto job = scratch.read(
      "a.csv", "note,station,down,chord,x,port\n\"two\nlines\",A,0,420,0,0\n\"and\r\nthree\r\nhere\",,,,50,20\n,,,,420,2\n");
  REQUIRE(faults_of(job) == "");
  const auto& r = job->stations[0].readings;
  CHECK(r[0].line == 2);
  CHECK(r[1].line == 4);
  CHECK(r[2].line == 7);
}

TEST_CASE("a station that is named like a total is one where the job file says so") {
  const Scratch scratch;
  scratch.write("r.csv", "station,x,port,starboard\nMax,0,0,0\nMax,50,20,20\n");
  CHECK(faults_of(scratch.read(
            "j.json",
            R"({ "job": "J", "readings_file": "r.csv", "stations": [ { "name": "Max", "down": 0, "chord": 420 } ] })")) == "");
}

TEST_CASE("rows whose last is nearly a mean are readings all the same") {
  const Scratch scratch;
  // The means are 170, 11.05 and 10.9; 11.2 is none, to a tenth.
  const auto job =
      scratch.read("a.csv", titles + "A,0,78,420,0,0,0\n,,,,50,20.1,19.8\n,,,,210,22,21.8\n,,,,420,2.1,2\n,,,,170,11.2,10.9\n");
  CHECK(faults_of(job) == "");
}

TEST_CASE("inches as rules and spreadsheets write them") {
  const Scratch scratch;
  const auto job = scratch.read("a.csv",
                                "units;in\nstation;down;chord;x;port;starboard\n"
                                "A;0;16 1/2\";0;-1/16;\xe2\x88\x92"
                                "1/16\n"
                                ";;;1 1/8;\xc2\xbd;0,5\n"
                                ";;;2\xc2\xbd;1\xe2\x85\x9b;1-1/8\n"
                                ";;;3\xe2\x81\x84"
                                "4;\"3/4\"\"\";19,05mm\n"
                                ";;;16\xc2\xa0"
                                "1/2;1/32 in.;0,03125 in\n");
  REQUIRE(faults_of(job) == "");
  const auto& r = job->stations[0].readings;
  REQUIRE(r.size() == 5);
  CHECK(job->stations[0].chord == Approx(419.1).epsilon(1e-14));
  CHECK(r[0].port.value_or(-99) == Approx(-1.5875).epsilon(1e-14));
  CHECK(r[0].starboard.value_or(-99) == Approx(-1.5875).epsilon(1e-14));
  CHECK(r[1].x == Approx(19.05).epsilon(1e-14));
  CHECK(r[1].port.value_or(-99) == Approx(19.05).epsilon(1e-14));
  CHECK(r[1].starboard.value_or(-99) == Approx(19.05).epsilon(1e-14));
  CHECK(r[2].port.value_or(-99) == Approx(12.7).epsilon(1e-14));
  CHECK(r[3].x == Approx(63.5).epsilon(1e-14));
  CHECK(r[3].port.value_or(-99) == Approx(28.575).epsilon(1e-14));
  CHECK(r[3].starboard.value_or(-99) == Approx(28.575).epsilon(1e-14));
  CHECK(r[4].x == Approx(419.1).epsilon(1e-14));
  CHECK(r[4].starboard.value_or(-99) == Approx(0.79375).epsilon(1e-14));
}

TEST_CASE("places that were read twice tell the reading error where the owner does not") {
  const Scratch scratch;
  const std::string twice = ",,,,50,20.1,19.75\n,,,,60,21,21\n,,,,60,22,20\n";
  // Two on port differ by 0.4 and 1.0, two on starboard by 0 and 1.0: squares about the means 0.08 + 0.5 + 0 + 0.5 = 1.08
  // over four. With the default's 0.5 counting as three: sqrt((3 x 0.25 + 1.08)/(3 + 4)) = 0.51130.
  const auto job = scratch.read("a.csv", titles + table + twice);
  REQUIRE(faults_of(job) == "");
  CHECK(job->reading_error == Approx(0.511301).margin(1e-6));
  const auto found =
      std::find_if(job->defaults.begin(), job->defaults.end(), [](const DefaultUsed& one) { return one.key == "reading_error"; });
  REQUIRE(found != job->defaults.end());
  CHECK(found->value == "0.5 mm, from 4 repeated readings (0.5 mm without)");
  const auto told = scratch.read("a.csv", "reading_error,0.8\n" + titles + table + twice);
  REQUIRE(faults_of(told) == "");
  CHECK(told->reading_error == 0.8);
  // A slip of 8 mm is no error of reading, and as it may be one in x its row is left out whole: the two at x 50 count alone,
  // sqrt((0.75 + 0.08)/(3 + 2)).
  const auto slip = scratch.read("a.csv", titles + table + ",,,,50,20.1,19.75\n,,,,60,21,21\n,,,,60,22,12\n");
  REQUIRE(faults_of(slip) == "");
  CHECK(slip->reading_error == Approx(std::sqrt(0.83 / 5)).margin(1e-9));
}
