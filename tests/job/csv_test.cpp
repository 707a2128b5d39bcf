// CSV: beside a job file, and as a job alone.
#include <sys/stat.h>
#include <unistd.h>

#include "catch.hpp"
#include "scratch.hpp"

using namespace fairblade;
using namespace fairblade::job;

namespace {

const char* const two_stations = R"({ "job": "J", "readings_file": "r.csv", "stations": [
  { "name": "A", "down": 0, "chord": 420 }, { "name": "B", "down": 400, "chord": 380 } ] })";

void check_two(const Outcome<Job>& job) {
  REQUIRE(faults_of(job) == "");
  REQUIRE(job->stations.size() == 2);
  const auto &a = job->stations[0].readings, &b = job->stations[1].readings;
  REQUIRE(a.size() == 2);
  REQUIRE(b.size() == 2);
  CHECK(a[0].x == 0);
  CHECK(a[1].x == 50);
  CHECK(a[1].port == 20.5);
  CHECK(a[1].starboard == 19.75);
  CHECK_FALSE(b[1].starboard);
}

}  // namespace

TEST_CASE("readings in a CSV, in whatever way a spreadsheet writes it") {
  const Scratch scratch;
  SECTION("plain") { scratch.write("r.csv", "station,x,port,starboard\nA,0,0,0\nA,50,20.5,19.75\nB,0,0,0\nB,50,18.2,\n"); }
  SECTION("semicolons, decimal commas, CRLF, byte-order mark, no last line end") {
    scratch.write("r.csv", "\xef\xbb\xbfstation;x;port;starboard\r\nA;0;0;0\r\nA;50;20,5;19,75\r\nB;0;0;0\r\nB;50;18,2;");
  }
  SECTION("tabs, other order and capitals, extra columns, blank lines") {
    scratch.write(
        "r.csv",
        "Note\tStarboard\tPort\tX\tStation\n\nworn\t0\t0\t0\tA\n\t19.75\t20.5\t50\tA\n\t\t\t\t\n\t0\t0\t0\tB\n\t\t18.2\t50\tB\n");
  }
  SECTION("quoted cells, decimal commas among commas, padding at the row's end") {
    scratch.write(
        "r.csv",
        "\"station\",\"x\",\"port\",\"starboard\"\n\"A\",0,0,0,,\nA,50,\"20,5\",\"19,75\"\nB,0,0,0\nB,50,\"18,2\",\"\"\n");
  }
  SECTION("its own units") {
    scratch.write("r.csv", "units,cm\nstation,x,port,starboard\nA,0,0,0\nA,5,2.05,1.975\nB,0,0,0\nB,5,1.82,\n");
  }
  SECTION("old line ends") {
    scratch.write("r.csv", "station,x,port,starboard\rA,0,0,0\rA,50,20.5,19.75\rB,0,0,0\rB,50,18.2,\r");
  }
  const auto job = scratch.read("j.json", two_stations);
  check_two(job);
  CHECK(job->stations[0].readings_from == (scratch.folder / "r.csv").string());
}

TEST_CASE("a reading of a CSV knows its line") {
  const Scratch scratch;
  scratch.write("r.csv", "station,x,port,starboard\nB,50,18,18\n\nA,0,0,0\nA,50,20,20\nB,0,0,0\n");
  const auto job = scratch.read("j.json", two_stations);
  REQUIRE(faults_of(job) == "");
  CHECK(job->stations[0].readings[1].line == 5);
  CHECK(job->stations[1].readings[0].line == 6);
  CHECK(job->stations[1].readings[1].line == 2);
}

TEST_CASE("the columns tell how a station was measured") {
  const Scratch scratch;
  scratch.write("r.csv", "station,x,port_gap,starboard_gap\nA,0,60,60\nA,50,40,41\nB,0,60,60\nB,50,42,42\n");
  const auto gaps = scratch.read("j.json", R"({ "job": "J", "readings_file": "r.csv", "stations": [
    { "name": "A", "down": 0, "chord": 420, "board": 60 }, { "name": "B", "down": 400, "chord": 380, "measured_by": "gaps", "board": 62 } ] })");
  REQUIRE(faults_of(gaps) == "");
  CHECK(gaps->stations[0].measured_by == MeasuredBy::gaps);
  CHECK(gaps->stations[0].readings[1].starboard == 19.0);
  CHECK(gaps->stations[1].readings[1].port == 20.0);

  scratch.write("r.csv", "station,x,thickness\nA,0,0\nA,50,40\nB,0,0\nB,50,38\n");
  const auto caliper = scratch.read("j.json", two_stations);
  REQUIRE(faults_of(caliper) == "");
  CHECK(caliper->stations[1].measured_by == MeasuredBy::thickness);
  CHECK(caliper->stations[1].readings[1].caliper == 38.0);

  scratch.write("r.csv", "station,x,port,starboard,caliper\nA,0,0,0,\nA,50,20,20,41\nB,0,,,0\nB,50,,,38\n");
  const auto mixed = scratch.read("j.json", two_stations);
  REQUIRE(faults_of(mixed) == "");
  CHECK(mixed->stations[0].measured_by == MeasuredBy::half_breadths);
  CHECK(mixed->stations[0].readings[1].caliper == 41.0);
  CHECK(mixed->stations[1].measured_by == MeasuredBy::thickness);
}

TEST_CASE("a CSV alone is a job") {
  const Scratch scratch;
  const auto job = scratch.read(
      "kestrel.csv",
      "job;Invented blade\nunits;in\ntrailing_edge_thickness;0,2\nkeep;0,2;0,7\nthickness;12%\nworkshop.temperature;15\n"
      "Station;Down;Ahead;Chord;X;Port;Starboard;Caliper;Trailing edge off centre;Skeg\n"
      "B;20;2,5;14;0;0;0;;0,1;1\n"
      ";;;;2;3/4;0,75;1,5;;\n"
      "A;0;3;16;0;0;0;;;\n"
      "A;0;3;16;2;1;1;;;\n");
  REQUIRE(faults_of(job) == "");
  CHECK(job->name == "Invented blade");
  CHECK(job->units == LengthUnit::inch);
  REQUIRE(job->stations.size() == 2);
  const Station& b = job->stations[1];
  // 1 in = 25.4 mm by definition; tolerance: rounding only
  CHECK(b.down == Approx(508).epsilon(1e-14));
  CHECK(b.ahead.value() == Approx(63.5).epsilon(1e-14));
  CHECK(b.chord == Approx(355.6).epsilon(1e-14));
  CHECK(b.skeg == Approx(25.4).epsilon(1e-14));
  CHECK(b.trailing_edge_off_centre.value() == Approx(2.54).epsilon(1e-14));
  REQUIRE(b.readings.size() == 2);
  CHECK(b.readings[1].port.value_or(-99) == Approx(19.05).epsilon(1e-14));
  CHECK(b.readings[1].caliper.value_or(-99) == Approx(38.1).epsilon(1e-14));
  CHECK(b.readings[1].line == 9);
  CHECK(b.place.line == 8);
  CHECK(b.target.trailing_edge_thickness.value == Approx(5.08).epsilon(1e-14));
  CHECK(b.target.keep_to.value == 0.7);
  CHECK(b.target.thickness.value == Approx(0.12).epsilon(1e-15));
  CHECK(job->workshop.temperature == 15);
}

TEST_CASE("a CSV alone is named after its file, and may say how all its stations were measured") {
  const Scratch scratch;
  const auto job = scratch.read(
      "kestrel.csv",
      "x_from,stock\nboard,60\nstation,down,ahead,chord,x,port_gap,starboard_gap\n1,0,70,400,-70,60,60\n1,,,,0,40,40\n");
  REQUIRE(faults_of(job) == "");
  CHECK(job->name == "kestrel");
  CHECK(job->defaults.front().key == "job");
  CHECK(job->stations[0].name == "1");
  CHECK(job->stations[0].readings[1].x == 70);
  CHECK(job->stations[0].readings[1].port == 20.0);
}

TEST_CASE("files that are none") {
  const Scratch scratch;
  const std::string folder = scratch.folder.string();
  CHECK(faults_of(read_job(folder)) == folder + ": this is a folder, not a file: give the job file or CSV inside it");
  CHECK(faults_of(read_job(folder + "/none.json")) == folder + "/none.json: there is no such file: check its name and folder");
  CHECK(faults_of(read_job("")) == ": there is no such file: check its name and folder");
  const std::string file = scratch.write("file.json", "{}");
  // A file cannot be a folder: the nearest that root, too, is refused.
  CHECK_FALSE(read_job(file + "/job.json"));
  const std::string pipe = folder + "/pipe.json";
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  CHECK(faults_of(read_job(pipe), folder) == "pipe.json: this is not an ordinary file: save the data to a file and give that");
  REQUIRE(chmod(file.c_str(), 0) == 0);
  if (access(file.c_str(), R_OK) != 0) {  // root reads everything
    CHECK(faults_of(read_job(file), folder) == "file.json: the file cannot be read: check its permissions");
  }
  const std::string large = scratch.write("large.csv", "");
  std::filesystem::resize_file(large, (512u << 20) + 1);  // a hole: takes no room
  CHECK(faults_of(read_job(large), folder) ==
        "large.csv: the file is larger than 512 MB: check that it is the right one, or thin its readings");
}

TEST_CASE("2026-11-27: empty cells beyond the headings are let be where no decimal comma can have made them") {
  const Scratch scratch;
  const std::string head = "station,down,chord,x,thickness,trailing_edge_off_centre,notes";
  const auto told = [&](const std::string& text) {
    return faults_of(read_job(scratch.write("j.csv", text)), scratch.folder.string());
  };
  const std::string wants_semicolons = "check it; with decimal commas, separate the cells by semicolons";
  // One reading of 45.5 mm in a row whose last cell is empty: it must not become 45 mm, and the edge 5 mm off centre.
  const std::string rows = "A,0,420,0,0,,\nA,,,50,40,,\n", last = "A,,,420,3,,\n";
  CHECK(told(head + "\n" + rows + "A,,,105,45,5,,\n" + last) ==
        "j.csv:4: this row has 8 cells, the header row 7: " + wants_semicolons);
  CHECK(told(head + "\n" + rows + "A,,,105,45,,\n" + last).empty());
  // No row whose numbers lie side by side, or all with a point.
  CHECK(told(head + "\n" + rows + "A,,,105.5,45.5,,,,\n" + last).empty());
  CHECK(told(head + "\n" + rows + "A,,,105,,,,,\n" + last).empty());
  // A spreadsheet pads the headings too; it drops the padding of rows far down.
  CHECK(told(head + ",,\nA,0,420,0,0,,,,\nA,,,50,40,,,,\nA,,,105,45,,,,\n" + last).empty());
  // Every row ends in a comma.
  CHECK(told(head + "\nA,0,420,0,0,,,\nA,,,50,40,,,\nA,,,105,45,,,\nA,,,420,3,,,\n").empty());
  // Every row has one decimal behind a comma.
  const std::string program = told("station,down,chord,x,thickness,notes,more\nA,0,420,0,0,0,,\nA,,,50,40,0,,\nA,,,105,45,5,,\n");
  CHECK(program.find("j.csv:4: this row has 8 cells, the header row 7: " + wants_semicolons) != std::string::npos);
  // Semicolons leave no doubt.
  CHECK(told("station;down;chord;x;thickness\nA;0;420;0;0\nA;;;50;40;;\nA;;;105;45,5;;;\nA;;;420;3\n").empty());
}
