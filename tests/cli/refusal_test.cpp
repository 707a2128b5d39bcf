// Exit statuses, and what a refused or failed run leaves behind: 0 done, 1 warnings under --strict, 2 refused, 3 not written.
#include <algorithm>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;

namespace {

const char* const good_job = R"({ "job": "Knot", "bottom": 500, "reading_error": 0.5, "stations": [
  { "name": "A", "down": 0, "ahead": 50, "chord": 400, "readings": [[0,0,0],[40,19,19],[120,24,24],[280,14,14],[400,0.5,0.5]] },
  { "name": "B", "down": 500, "ahead": 50, "chord": 400, "readings": [[0,0,0],[40,19,19],[120,24,24],[280,14,14],[400,0.5,0.5]] } ] })";

/// Words that the screen's width broke over lines, on one.
std::string one_run(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c != ' ' && c != '\n') out += c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
  }
  return out;
}

}  // namespace

TEST_CASE("a refused job is told line by line and writes nothing") {
  const Folder folder;
  const std::string job = folder.write("bad.json", "{ \"job\": \"Knot\",\n  \"stations\": [],\n  \"bootom\": 900 }\n");
  const Result result = run({"plan", job, "-o", folder.at("out")});
  CHECK(result.status == 2);
  CHECK(result.out.empty());
  CHECK(has(result.err, "bad.json:3: "));
  CHECK_FALSE(fs::exists(folder.at("out")));
}

TEST_CASE("at most twenty faults are told, one line each") {
  const Folder folder;
  std::string text = "{ \"job\": \"Knot\", \"stations\": [";
  for (int k = 0; k < 40; ++k) {
    text += std::string(k ? "," : "") + "\n{ \"name\": \"S" + std::to_string(k) + "\", \"down\": " + std::to_string(k) +
            ", \"chord\": -1, \"readings\": [[0,0,0],[1,1,1]] }";
  }
  const Result result = run({"plan", folder.write("bad.json", text + "] }"), "-o", folder.at("out")});
  CHECK(result.status == 2);
  const auto lines = std::count(result.err.begin(), result.err.end(), '\n');
  CHECK(lines > 1);
  CHECK(lines <= 20);
}

TEST_CASE("coats that cannot all go on before dusk are refused") {
  const Folder folder;
  // Five coats, half an hour at the least from one to the next, from 9:00: the fifth would begin at 11:00.
  const std::string job = folder.write("late.json", std::string(good_job).substr(0, std::string(good_job).rfind('}')) +
                                                        R"(, "target": { "trailing_edge_thickness": 4 },
  "coats": [ { "name": "Curlew", "dry_film_um": 50, "layers": 5, "spreading_rate": 10, "recoat_hours": [0.5, 4], "one_day": true } ],
  "workshop": { "start": "09:00", "dusk": "11:00" } })");
  const Result result = run({"plan", job, "-o", folder.at("out")});
  CHECK(result.status == 2);
  CHECK(result.out.empty());
  CHECK(has(result.err, "late.json:4: 5 coats of Curlew begun at 9:00 last until 11:0"));
  CHECK(has(result.err, "and dusk is at 11:00: begin by 8:5"));
  CHECK_FALSE(fs::exists(folder.at("out")));
}

TEST_CASE("coats that close the trailing edge are refused where its thickness is asked for") {
  const Folder folder;
  const std::string job =
      folder.write("thick.json", std::string(good_job).substr(0, std::string(good_job).rfind('}')) +
                                     ",\n  \"coats\": [ { \"name\": \"glass\", \"thickness\": 1.5, \"layers\": 2 } ],\n"
                                     "  \"target\": {\n  \"trailing_edge_thickness\": 3 } }");
  const Result result = run({"plan", job, "-o", folder.at("out")});
  CHECK(result.status == 2);
  CHECK(has(result.err,
            "thick.json:6: the coats are 3.0 mm a side, and the trailing edge of station A at 3.0 mm closes to a "
            "point under them: make \"trailing_edge_thickness\" "));
  CHECK_FALSE(fs::exists(folder.at("out")));
}

TEST_CASE("warnings change the exit status only under --strict") {
  const Folder folder;
  CHECK(run({"plan", profile("turnstone"), "-o", folder.at("out")}).status == 0);
  CHECK(run({"plan", profile("turnstone"), "-o", folder.at("out"), "--strict"}).status == 1);
  CHECK(fs::exists(folder.at("out/plan.json")));
  const std::string good = folder.write("good.json", good_job);
  CHECK(run({"plan", good, "-o", folder.at("good"), "--strict", "--thickness", "closest", "--max-removal", "20"}).status == 0);
}

TEST_CASE("results that cannot be written are told, and earlier ones stay whole") {
  const Folder folder;
  const std::string job = folder.write("good.json", good_job);
  const std::string in_the_way = folder.write("taken", "a letter");
  CHECK(run({"plan", job, "-o", in_the_way}).status == 3);
  CHECK(bytes_of(in_the_way) == "a letter");
  fs::create_directories(folder.at("mine"));
  folder.write("mine/novel.txt", "chapter one");
  const Result other = run({"plan", job, "-o", folder.at("mine")});
  CHECK(other.status == 3);
  CHECK(has(other.err, "mine"));
  CHECK(files_in(folder.at("mine")).size() == 1);
}

TEST_CASE("an output that fails is not called done") {
  const Folder folder;
  std::ostringstream out, err;
  out.setstate(std::ios::badbit);
  CHECK(fairblade::cli::run({"plan", folder.write("good.json", good_job), "-o", folder.at("out")}, out, err) == 3);
}

TEST_CASE("mistyped commands and options are answered with the nearest") {
  const Result command = run({"plam", "x.json"});
  CHECK(command.status == 2);
  CHECK(command.err == "fairblade: there is no command \"plam\": did you mean plan?\n");
  const Result option = run({"plan", "x.json", "--leading-edge-radus", "8"});
  CHECK(option.status == 2);
  CHECK(option.err == "fairblade: there is no option --leading-edge-radus: did you mean --leading-edge-radius?\n");
  CHECK(run({"plan", "x.json", "--thickness"}).status == 2);
  CHECK(run({"plan"}).status == 2);
  CHECK(run({}).status == 2);
  CHECK(run({"plan", "x.json", "y.json"}).status == 2);
}

TEST_CASE("2026-11-27: -- ends the options, and a most that is written with a blank is answered with how to write it") {
  const Folder folder;
  const std::string job = profile("turnstone");
  CHECK(run({"check", "--", job}).status == 0);
  CHECK(run({"plan", "--quiet", "-o", folder.at("out"), "--", job}).status == 0);
  const Result more = run({"check", job, "--", "-o"});
  CHECK(more.status == 2);
  CHECK(more.err == "fairblade: \"-o\" is one word too many: see fairblade check --help\n");
  const Result most = run({"plan", job, "-o", folder.at("none"), "--extend-leading-edge", "up to 15"});
  CHECK(most.status == 2);
  CHECK(most.err ==
        "--extend-leading-edge: \"extend_leading_edge\" is \"up to 15\": give a length, or \"up_to 15\" for the most that may be "
        "chosen\n");
  CHECK_FALSE(fs::exists(folder.at("none")));
}

TEST_CASE("help and version are answered wherever they stand") {
  CHECK(run({"--version"}).out == std::string("fairblade ") + FAIRBLADE_VERSION + "\n");
  CHECK(run({"plan", "--version"}).out == run({"--version"}).out);
  CHECK(run({"--help"}).status == 0);
  CHECK(has(run({"--help"}).out, "plan"));
}

TEST_CASE("two stations whose names give one file name keep their own files") {
  const Folder folder;
  std::string text = good_job;
  text.replace(text.find("\"A\""), 3, "\"a/1\"");
  text.replace(text.find("\"B\""), 3, "\"A 1\"");
  const Result result = run({"plan", folder.write("job.json", text), "-o", folder.at("out")});
  INFO(result.err);
  REQUIRE(result.status == 0);
  CHECK(fs::exists(folder.at("out/sections/a-1.svg")));
  CHECK(fs::exists(folder.at("out/sections/A-1_2.svg")));
}

TEST_CASE("2026-11-26: a station of no thickness is refused, by plan and by check, and nothing is nan") {
  const Folder folder;
  const std::string readings = "[[0,0,0],[40,19,19],[120,24,24],[280,14,14],[400,0.5,0.5]]";
  for (const char* none :
       {"[[0,0,0],[40,0,0],[120,0,0],[280,0,0],[400,0,0]]", "[[0,0,0],[40,19,-19],[120,24,-24],[280,14,-14],[400,1,-1]]"}) {
    std::string text = good_job;
    text.replace(text.rfind(readings), readings.size(), none);
    const std::string job = folder.write("thin.json", text);
    const Result planned = run({"plan", job, "-o", folder.at("out")});
    CHECK(planned.status == 2);
    CHECK(has(planned.err,
              "thin.json:3: station B: port + starboard is nowhere more than 0.0 mm: check the readings and their signs"));
    CHECK_FALSE(fs::exists(folder.at("out")));
    const Result checked = run({"check", job, "--json"});
    CHECK(has(checked.out, "nowhere more than"));
    CHECK_FALSE(has(checked.out, "nan"));
  }
}

TEST_CASE("options that ask for nothing are refused, and those without effect are told") {
  const Folder folder;
  const std::string job = folder.write("job.json", good_job);
  const auto refused = [&](std::vector<std::string> more, const std::string& message) {
    more.insert(more.begin(), {"plan", job, "-o", folder.at("no")});
    const Result result = run(more);
    CHECK(result.status == 2);
    CHECK(result.err == message + "\n");
    CHECK_FALSE(fs::exists(folder.at("no")));
  };
  refused({"--at", ""}, "--at: is empty: give it a value, or leave it out");
  refused({"--every", ""}, "--every: is empty: give it a value, or leave it out");
  refused({"--at", "-5"},
          "--at: no section at -5.0 mm down: the stations run from 0.0 mm to 500.0 mm: ask for a height between the "
          "first and the last station");
  refused({"--thickness", "4mm"},
          "--thickness: \"thickness\" of 4.0 mm is less than 3% of the 400.0 mm chord of station A: give 12.0 mm at least");
  // Lengths with their unit, as everywhere.
  const Result at = run({"plan", job, "-o", folder.at("at"), "--at", "25cm", "--gauge-spacing", "120 mm"});
  CHECK(at.status == 0);
  CHECK(fs::exists(folder.at("at/sections/at-250.svg")));

  const Result edges =
      run({"plan", job, "-o", folder.at("edges"), "--approach", "edges-only", "--thickness", "15%", "--spanwise", "straight"});
  CHECK(edges.status == 0);
  CHECK(has(one_run(edges.out), "\"thickness\", \"spanwise\" have no effect on edges-only"));
  const Result full = run({"plan", job, "-o", folder.at("full"), "--keep", "0.3,0.6"});
  CHECK(has(one_run(full.out), "\"keep\" has no effect on full sections"));
}

TEST_CASE("2026-11-26: a form's drawing takes no drawing of a plan's place") {
  const Folder folder;
  const std::string job = folder.write("job.json", good_job), section = folder.at("plan/sections/A.svg");
  REQUIRE(run({"plan", job, "-o", folder.at("plan"), "--quiet"}).status == 0);
  const std::string before = files_in(folder.at("plan")).at("sections/A.svg");
  const Result result = run({"offsets", "0012", "--chord", "100", "--svg", section});
  CHECK(result.status == 3);
  CHECK(result.err == section + ": this is a drawing of the plan in plan: give another name\n");
  CHECK(files_in(folder.at("plan")).at("sections/A.svg") == before);
}
