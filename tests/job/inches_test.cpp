// What owners in inches write: rulers that read millimetres, fractions, a phone's marks.
#include "catch.hpp"
#include "job/numbers.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

std::string with_ruler(const std::string& units, const std::string& reads) {
  return "{ \"job\": \"J\", \"units\": \"" + units + "\", \"print\": { \"ruler_reads\": " + reads +
         R"( }, "stations": [ { "name": "A", "down": 0, "chord": 16, "readings": [[0, 0, 0], [2, 1, 1]] } ] })";
}

}  // namespace

TEST_CASE("2026-11-27: what the 100 mm bars measure is in mm, whatever the job's unit") {
  const Scratch scratch;
  struct Row {
    const char *units, *reads;
    double across, along;
  };
  // 1 in = 25.4 mm by definition: 3 15/16 in = 100.0125 mm, 3.95 in = 100.33 mm.
  for (const Row& row :
       {Row{"in", "[99.6, 100.4]", 99.6, 100.4}, Row{"cm", "[99.6, 100.4]", 99.6, 100.4}, Row{"mm", "[90, 110]", 90, 110},
        Row{"in", "[3.95, \"3 15/16\"]", 100.33, 100.0125}, Row{"cm", "[9.96, 10.04]", 99.6, 100.4},
        Row{"in", "[\"9.96cm\", \"100.4mm\"]", 99.6, 100.4}, Row{"in", "[3.54, 4.33]", 90, 109.982}}) {
    INFO(row.units << " " << row.reads);
    const auto job = scratch.read("j.json", with_ruler(row.units, row.reads));
    REQUIRE(faults_of(job) == "");
    CHECK(job->print.ruler_across == Approx(row.across).epsilon(1e-12));
    CHECK(job->print.ruler_along == Approx(row.along).epsilon(1e-12));
  }
  const auto told = [&](const char* units, const char* reads) {
    return faults_of(scratch.read("j.json", with_ruler(units, reads)), scratch.folder.string());
  };
  const std::string bar = "j.json:1: \"print.ruler_reads\" is ",
                    range = ": give what a rule says of the 100 mm bar, from 90 to 110 mm";
  CHECK(told("in", "[10, 100]") == bar + "10" + range + ", or from 3.54 to 4.33 in");
  CHECK(told("cm", "[99, 2]") == bar + "2" + range + ", or from 9 to 11 cm");
  CHECK(told("mm", "[9.95, 10]") == bar + "9.95" + range);
  CHECK(told("mm", "[94, 94]") == "");
  CHECK(told("in", "[84, 100]").find("a 100 mm bar that comes out 84 mm long is no printer's error") != std::string::npos);
}

TEST_CASE("2026-11-27: the rule's readings in a CSV, in two cells or as a job file has them") {
  const Scratch scratch;
  for (const std::string row : {"print.ruler_reads,99.5,100.4\n", "print.ruler_reads,\"[99.5, 100.4]\"\n",
                                "print.ruler_reads,[99.5, 100.4]\n", "print.ruler_reads,\"[\"\"99.5mm\"\",100.4]\"\n"}) {
    INFO(row);
    const auto job = scratch.read("r.csv", "units,in\nprint.pages_of,\"[\"\"bare\"\", \"\"final\"\"]\"\n" + row +
                                               "station,down,chord,x,port,starboard\nA,0,16,0,0,0\nA,,,2,1,1\n");
    REQUIRE(faults_of(job) == "");
    CHECK(job->print.ruler_across == 99.5);
    CHECK(job->print.ruler_along == 100.4);
    CHECK(job->print.pages_of.size() == 2);
  }
  const auto near = scratch.read("r.csv", "paper,Letter\nstation,down,chord,x,port,starboard\nA,0,16,0,0,0\nA,,,2,1,1\n");
  CHECK(faults_of(near, scratch.folder.string()) == "r.csv:1: \"paper\" is not a key of the job: did you mean \"print.paper\"?");
}

TEST_CASE("2026-11-27: where commas part no cells, one in a list in brackets may be a decimal one") {
  // board;[50,45] was taken as two boards, and [99,5;100,4] was told to part by semicolons what they part.
  const Scratch scratch;
  const auto read = [&](const std::string& row, const std::string& titles = "station;down;chord;x;port;starboard") {
    return scratch.read("r.csv", row + "\n" + titles + "\nA;0;400;0;0;0\nA;;;50;20;20\nA;;;400;1;1\n");
  };
  const auto told = [&](const std::string& row) { return faults_of(read(row), scratch.folder.string()); };
  for (const std::string row :
       {"print.ruler_reads;[99,5;100,4]", "print.ruler_reads;99,5;100,4", "print.ruler_reads;[99.5;100.4]",
        "print.ruler_reads;[99.5, 100.4]", "print.ruler_reads;[99.5,100.4]"}) {
    INFO(row);
    const auto job = read(row);
    REQUIRE(faults_of(job) == "");
    CHECK(job->print.ruler_across == 99.5);
    CHECK(job->print.ruler_along == 100.4);
  }
  const std::string cells = "one number or several: put each number into a cell of its own, without brackets";
  CHECK(told("board;[50,45]") == "r.csv:1: \"board\" is \"[50,45]\", " + cells + ", or write 50.45 if it is one");
  const auto boards = read("board;[50,45]", "station;down;chord;x;port_gap;starboard_gap");
  CHECK(boards.faults().size() == 1);  // nothing is told of a board that is missing
  CHECK(told("print.ruler_reads;[99,5,100,4]") == "r.csv:1: \"print.ruler_reads\" is \"[99,5,100,4]\", " + cells);
  CHECK(told("print.ruler_reads;99,5;100,4;101") ==
        "r.csv:1: \"print.ruler_reads\" is a list: give two numbers, as in [100, 100]");
  const auto gaps = read("board;50,5;45", "station;down;chord;x;port_gap;starboard_gap");
  REQUIRE(faults_of(gaps) == "");
  CHECK(*gaps->stations[0].board_port == 50.5);
  CHECK(*gaps->stations[0].board_starboard == 45);
}

TEST_CASE("2026-11-27: an empty place in a list in brackets is refused") {
  const Scratch scratch;
  const std::string rows = "station,down,chord,x,port,starboard\nA,0,400,0,0,0\nA,,,400,1,1\n";
  CHECK(faults_of(scratch.read("r.csv", "print.ruler_reads,[99.5,,100]\n" + rows), scratch.folder.string()) ==
        "r.csv:1: \"print.ruler_reads\" has an empty place in its list: write what is missing, or take a comma out");
}

TEST_CASE("2026-11-27: whatever a phone makes of the inch mark is one") {
  // U+2033, U+201D, U+201C, two single quotes: plain, primes, curly.
  for (const std::string mark :
       {"\"", "\xe2\x80\xb3", "\xe2\x80\x9d", "\xe2\x80\x9c", "''", "\xe2\x80\xb2\xe2\x80\xb2", "\xe2\x80\x99\xe2\x80\x99"}) {
    INFO(mark);
    const auto read = length_of_text("1\xe2\x85\x9c" + mark, LengthUnit::mm);  // 1 3/8
    CHECK((read.kind == LengthOfText::Kind::length));
    CHECK(read.mm == Approx(1.375 * 25.4).epsilon(1e-14));
  }
}

TEST_CASE("2026-11-27: a length that must be more than nothing is refused with those words") {
  const Scratch scratch;
  const auto job = scratch.read("j.json", R"({ "job": "J", "units": "in", "reading_error": 0,
    "stations": [ { "name": "A", "down": 0, "chord": 16, "readings": [[0, 0, 0], [2, 1, 1]] } ] })");
  CHECK(faults_of(job, scratch.folder.string()) ==
        "j.json:1: \"reading_error\" is 0: give a length of more than 0, up to 1.969 in");
}
