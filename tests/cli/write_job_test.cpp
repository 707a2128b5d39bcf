// plan --write-job: the file that it writes asks the same again. What is expected is the first plan itself, but for the
// lines on which things were written.
#include <nlohmann/json.hpp>
#include <regex>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;
using nlohmann::json;

namespace {

/// plan.json without the names of files and the lines in them.
json plan_of(const std::string& folder) {
  static const std::regex place(R"(\([^()]*\.(json|csv):[0-9]+\))");
  json plan = json::parse(std::regex_replace(bytes_of(folder + "/plan.json"), place, "(PLACE)"));
  plan.erase("sources");
  for (json& station : plan["stations"]) {
    if (station["target"].contains("governing")) station["target"]["governing"].erase("line");
  }
  return plan;
}

/// Plans with the options and writes the job file, then plans that alone.
void same_again(const std::string& job, const std::vector<std::string>& options, const Folder& folder,
                bool named_by_file = false) {
  std::vector<std::string> args{"plan", job, "-o", folder.at("first"), "--quiet", "--write-job", folder.at("asked.json")};
  args.insert(args.end(), options.begin(), options.end());
  const Result first = run(args);
  INFO(first.err);
  REQUIRE(first.status == 0);
  const Result second = run({"plan", folder.at("asked.json"), "-o", folder.at("second"), "--quiet"});
  INFO(second.err);
  INFO(bytes_of(folder.at("asked.json")));
  REQUIRE(second.status == 0);
  json expected = plan_of(folder.at("first"));
  if (named_by_file) expected["defaults"].erase("job");  // a job file has to name its job
  CHECK((plan_of(folder.at("second")) == expected));
}

/// The text with the slashes of every default taken away.
std::string all_told(const std::string& text) {
  std::string out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    const std::size_t at = line.find_first_not_of(' ');
    if (at != std::string::npos && at > 0 && line.compare(at, 3, "// ") == 0) line.erase(at, 3);
    out += line + "\n";
  }
  return out;
}

const char* const inch_csv =
    "units;in\nreading_error;0,02\ntrailing_edge_thickness;3/16\nextend_trailing_edge;up_to 1/2\nno_cut;9;11;1;2\n"
    "x_from;stock\nbottom;31\nprint.margin;0,5\nworkshop.pot_life.minutes;30\n"
    "station;down;ahead;chord;skeg;board;x;port_gap;starboard_gap;caliper\n"
    "12;2;3/4;14 1/4;9;2;-3/4;1,9;1 15/16;\n;;;;;;1/4;1,34375;1 5/16;1,34\n;;;;;;3;1,1;1,125;\n;;;;;;5 3/4;1,15625;;\n"
    ";;;;;;11;1 21/32;1,7;\n;;;;;;13,5;1,96875;63/32;\n"
    "B;20;0,75;12,75;6,5;2;-0,75;1,95;1,9375;\nB;;;;;;0,25;1,4;1,4;\nB;;;;;;3,3;1,2;1,2;\nB;;;;;;7,5;1,46875;1,5;\n"
    "B;;;;;;12;2;2;\n";

}  // namespace

TEST_CASE("every profile is asked again by its job file") {
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    INFO(name);
    const Folder folder;
    same_again(profile(name), {}, folder);
    const std::string text = bytes_of(folder.at("asked.json"));
    CHECK(has(text, "// \"spanwise\": \"fair\",  // default; "));
    CHECK_FALSE(has(text, "readings_file"));
  }
}

TEST_CASE("options are saved, over the file's and the stations' own") {
  const Folder folder;
  same_again(profile("whimbrel"),
             {"--thickness", "13%", "--max-removal=2", "--no-cut", "300,360,0,120", "--extend-trailing-edge", "up_to 12",
              "--gauge-spacing", "75", "--keep", "0.25,200mm", "--leading-edge-radius", "1.8%", "--every", "100"},
             folder);
  const std::string text = bytes_of(folder.at("asked.json"));
  for (const char* told : {"\"thickness\": \"13%\",", "\"extend_trailing_edge\": { \"up_to\": 12 },",
                           "\"keep\": [0.25, \"200mm\"],", "\"no_cut\": [{ \"down\": [300, 360], \"x\": [0, 120] }],",
                           "\"gauge_spacing\": 75", "; from the command line", "ask for it again with --every 100"}) {
    INFO(told);
    CHECK(has(text, told));
  }
  CHECK(json::parse(bytes_of(folder.at("second/plan.json")))["stations"][0]["target"]["thickness_ratio"].get<double>() ==
        Approx(0.13));

  std::string own = bytes_of(profile("turnstone"));
  own.replace(own.find("\"down\": 330,"), 12, "\"down\": 330, \"trailing_edge_thickness\": 9,");
  const Folder other;
  const std::string job = other.write("own.json", own);
  same_again(job, {}, other);
  CHECK(has(bytes_of(other.at("asked.json")), "\"trailing_edge_thickness\": 9"));
  const Folder third;
  same_again(job, {"--trailing-edge-thickness", "5"}, third);
  CHECK_FALSE(has(bytes_of(third.at("asked.json")), "\"trailing_edge_thickness\": 9"));
}

TEST_CASE("2026-11-26: an option wins over a station's own key wherever the keys of the job stand") {
  // With readings_file ahead of the stations, and no "target", the saved file was put together from memory given back.
  const Folder folder;
  folder.write("readings.csv", "station,x,port,starboard\nA,0,0,0\nA,100,22,22\nA,250,16,16\nA,400,1,1\n");
  const std::string job = folder.write("dotterel.json",
                                       "{ \"job\": \"Dotterel, invented\", \"readings_file\": \"readings.csv\", \"stations\": [ "
                                       "{ \"name\": \"A\", \"down\": 0, \"chord\": 400, \"max_removal\": 3 } ], \"speed\": 5 }");
  same_again(job, {"--max-removal", "2"}, folder);
  const std::string text = bytes_of(folder.at("asked.json"));
  CHECK(has(text, "\"max_removal\": 2"));
  CHECK_FALSE(has(text, "\"max_removal\": 3"));
  CHECK(has(text, "\"speed\": 5"));
}

TEST_CASE("a CSV alone is saved in its own unit, with its name") {
  const Folder folder;
  same_again(folder.write("godwit.csv", inch_csv), {"--max-removal", "1/4"}, folder, true);
  const std::string text = bytes_of(folder.at("asked.json"));
  for (const char* told :
       {"\"job\": \"godwit\"", "\"units\": \"in\"", "\"chord\": \"14 1/4\"", "\"name\": \"12\"", "[-0.75, 1.9, 1.9375],",
        "[0.25, 1.34375, 1.3125, 1.34],", "[5.75, 1.15625, null],", "\"measured_by\": \"gaps\"", "\"max_removal\": \"1/4\""}) {
    INFO(told);
    CHECK(has(text, told));
  }
  const Folder thick;
  same_again(thick.write("knot.csv",
                         "station,down,chord,x,thickness\nA,0,400,0,10\nA,,,40,38\nA,,,120,48\nA,,,280,28\nA,,,400,1\n"
                         "B,500,380,0,9\nB,,,40,37\nB,,,120,46.5\nB,,,270,27\nB,,,380,1\n"),
             {}, thick, true);
}

TEST_CASE("2026-11-26: a reading error learnt from repeats is written as the one number that it is") {
  const Folder folder;
  const std::string csv =
      "station,down,chord,x,port,starboard\nA,0,400,0,0,0\nA,,,40,19,19\nA,,,40,19.2,19\nA,,,120,24,24\nA,,,280,14,14\n"
      "A,,,400,1,1\nB,500,380,0,0,0\nB,,,40,18,18\nB,,,120,23,23\nB,,,120,23.4,23\nB,,,270,13,13\nB,,,380,1,1\n";
  same_again(folder.write("dunnock.csv", csv), {}, folder, true);
  CHECK(has(plan_of(folder.at("first"))["defaults"]["reading_error"].get<std::string>(), ", from 4 repeated readings ("));
  const Result told =
      run({"plan", folder.write("told.json", all_told(bytes_of(folder.at("asked.json")))), "-o", folder.at("told"), "--quiet"});
  INFO(told.err);
  CHECK(told.status == 0);
}

TEST_CASE("each default in the file can be told, and then none is left") {
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    INFO(name);
    const Folder folder;
    same_again(profile(name), {}, folder);
    const std::string job = folder.write("told.json", all_told(bytes_of(folder.at("asked.json"))));
    const Result told = run({"plan", job, "-o", folder.at("told"), "--quiet"});
    INFO(told.err);
    REQUIRE(told.status == 0);
    json expected = plan_of(folder.at("first")), plan = plan_of(folder.at("told"));
    CHECK(plan["defaults"].empty());
    CHECK((plan["stations"] == expected["stations"]));
    CHECK(plan["volumes"]["to_mix"] == expected["volumes"]["to_mix"]);
    CHECK((plan["water"] == expected["water"]));
  }
}

TEST_CASE("a job file never takes the place of another") {
  const Folder folder;
  const std::string letter = folder.write("letter.json", "dear Knot");
  const Result result = run({"plan", profile("turnstone"), "-o", folder.at("out"), "--write-job", letter});
  CHECK(result.status == 2);
  CHECK(result.err == letter + ": is there already, and would be lost: give another name, or move it away first\n");
  CHECK(bytes_of(letter) == "dear Knot");
  CHECK_FALSE(fs::exists(folder.at("out")));
  CHECK(run({"plan", profile("turnstone"), "-o", folder.at("out"), "--write-job", ""}).status == 2);
  CHECK(run({"plan", profile("turnstone"), "-o", folder.at("out"), "--write-job", folder.at("nowhere/a.json")}).status == 3);
  CHECK_FALSE(fs::exists(folder.at("out")));
  // Where the results cannot be written there is no job file either.
  CHECK(run({"plan", profile("turnstone"), "-o", letter, "--write-job", folder.at("asked.json")}).status == 3);
  CHECK(files_in(folder.at("")) == std::map<std::string, std::string>{{"letter.json", "dear Knot"}});
}
