// One slip of the pen in a good sheet (2026-11-26: 16 written as 61 was answered with how much to cut off the blade): what plan
// and choices say of it. Lines and numbers are those of profiles/whimbrel/readings.csv, spoilt by hand.
#include <algorithm>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;

namespace {

/// Whimbrel with one row of its sheet written otherwise.
std::string spoilt(const Folder& folder, const std::string& row, const std::string& written) {
  const fs::path from = fs::path(PROFILES_DIR) / "whimbrel";
  std::string readings = bytes_of(from / "readings.csv");
  const std::size_t at = readings.find("\n" + row + "\n");
  REQUIRE(at != std::string::npos);
  folder.write("readings.csv", readings.replace(at + 1, row.size(), written));
  return folder.write("whimbrel.json", bytes_of(from / "whimbrel.json"));
}

std::size_t lines_of(const std::string& text) { return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')); }

}  // namespace

TEST_CASE("a refusal that hangs on a slip of the pen says so, and advises nothing but to measure again") {
  const Folder folder;
  const std::string job = spoilt(folder, "B;240;18;16", "B;240;18;61");
  const Result result = run({"plan", job, "-o", folder.at("out")});
  INFO(result.err);
  CHECK(result.status == 2);
  CHECK(lines_of(result.err) == 1);
  CHECK(has(result.err,
            "readings.csv:23: station B: the starboard reading at x 240.0 mm is almost certainly a slip of the pen: "
            "it says 61.0 mm where the others say 16."));
  CHECK(has(result.err, ": measure x 240.0 mm on starboard again; 16.0 mm would fit (two digits changed places)\n"));
  for (const char* dangerous : {"allow", "max_removal", "extend", "leave the trailing edge"}) {
    CHECK_FALSE(has(result.err, dangerous));
  }
  CHECK_FALSE(fs::exists(folder.at("out")));
}

TEST_CASE("two slips in a refused station are told at once, the one that governs first") {
  const Folder folder;
  const std::string job = spoilt(folder, "B;40;19;18,5\nB;75;23,5;21,5\nB;120;25,5;22,5\nB;175;21,5;20,5\nB;240;18;16",
                                 "B;40;91;18,5\nB;75;23,5;21,5\nB;120;25,5;22,5\nB;175;21,5;20,5\nB;240;18;61");
  const Result result = run({"plan", job, "-o", folder.at("out")});
  INFO(result.err);
  CHECK(lines_of(result.err) == 2);
  CHECK(has(result.err, "measure x 40.0 mm on port again; 19.0 mm would fit"));
  CHECK(has(result.err, "measure x 240.0 mm on starboard again; 16.0 mm would fit"));
  CHECK_FALSE(has(result.err, "max_removal"));
}

TEST_CASE("a blade too thick for the limit is refused as before: no reading of it is a slip") {
  const Folder folder;
  std::string text = "units,mm\nmax_removal,0\nstation,down,ahead,chord,x,port,starboard\n";
  for (const char* station : {"A", "B"}) {  // a plank 160 mm thick on a chord of 400: 40 %, and no section is thicker than 30
    text += std::string(station) + "," + (*station == 'A' ? "0" : "500") + ",50,400,0,40,40\n";
    for (const int x : {20, 60, 100, 140, 180, 220, 260, 300, 340, 380, 400})
      text += std::string(station) + ",,,," + std::to_string(x) + ",80,80\n";
  }
  const Result result = run({"plan", folder.write("plank.csv", text), "-o", folder.at("out")});
  INFO(result.err);
  CHECK(result.status == 2);
  CHECK(has(result.err, "no section up to 30 % thick keeps every cut within"));
  CHECK_FALSE(has(result.err, "slip"));
}

TEST_CASE("an almost certain slip that stops no plan stands above the five numbers and at the head of the report") {
  const Folder folder;
  const std::string job = spoilt(folder, "B;120;25,5;22,5", "B;120;25,5;32,5");
  const Result result = run({"plan", job, "-o", folder.at("out")});
  INFO(result.out);
  CHECK(result.status == 0);
  const std::size_t slip = result.out.find("\n  B starboard, x 120.0 mm: 32.5 mm where the others say 22.");
  const std::size_t five = result.out.find("\nThe five numbers that matter\n");
  REQUIRE(slip != std::string::npos);
  REQUIRE(five != std::string::npos);
  CHECK(lines_of(result.out.substr(slip + 1, five - slip - 1)) == 1);  // its own line, and nothing between it and the five
  CHECK(has(result.out.substr(slip, five - slip), "(readings.csv:21)"));
  const std::string report = bytes_of(folder.at("out") + "/report.html");
  const std::size_t told = report.find("B starboard, x 120.0 mm: 32.5 mm where the others say");
  REQUIRE(told != std::string::npos);
  CHECK(told < report.find("Filler to mix"));
  CHECK(run({"plan", job, "-o", folder.at("out"), "--quiet", "--strict"}).status == 1);
  CHECK(has(run({"choices", job}).out, "B starboard, x 120.0 mm: 32.5 mm where the others say"));
}

TEST_CASE("a good sheet has no such lines") {
  const Folder folder;
  const Result result = run({"plan", profile("whimbrel"), "-o", folder.at("out")});
  CHECK_FALSE(has(result.out, "Almost certainly wrong"));
  CHECK_FALSE(has(bytes_of(folder.at("out") + "/report.html"), "Measure these again first"));
}
