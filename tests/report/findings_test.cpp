// What check found, as a phone shows it and as programs read it. Made by hand, so that nothing depends on the judges.
#include "report/findings.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "catch.hpp"
#include "report/layout.hpp"

using namespace fairblade;

namespace {

job::Job inch_job() {
  job::Job job;
  job.name = "Sanderling, a name that is rather longer than any phone's screen is wide";
  job.units = LengthUnit::inch;
  return job;
}

check::Findings three() {
  check::Findings out;
  out.stations = 3;
  out.readings = 72;
  out.own = {0.4, 0.5, false, 0.31, 4, 0.45};
  out.list.push_back({"slipped-digit",
                      check::Rank::reading,
                      check::Sureness::certain,
                      "C",
                      "port",
                      25.4,
                      {"sheet.csv", 41},
                      "too much",
                      "look at the sheet"});
  out.list.push_back({"leading-edge-worn",
                      check::Rank::blade,
                      check::Sureness::likely,
                      "A",
                      "",
                      0.0,
                      {"sheet.csv", 2},
                      "flat by 3",
                      "count from the stock"});
  out.list.push_back({"leading-edge-worn",
                      check::Rank::blade,
                      check::Sureness::likely,
                      "B",
                      "",
                      0.0,
                      {"sheet.csv", 20},
                      "flat by 4",
                      "count from the stock"});
  out.notes = {"a note that goes on for so long that it does not fit on one line of a phone at all"};
  return out;
}

}  // namespace

TEST_CASE("findings fit a phone, say where in the job's unit, and say alike things once") {
  const std::string text = report::findings_text(inch_job(), three());
  INFO(text);
  std::stringstream lines(text);
  for (std::string line; std::getline(lines, line);) CHECK(report::columns_of(line) <= report::phone_columns);
  CHECK(text.find("1. C port, x 1.000 in\n   almost certain: too much\n   > look at the sheet (sheet.csv:41)\n") !=
        std::string::npos);
  CHECK(text.find("2. A, x 0.000 in, and others\n   likely: flat by 3\n   B, x 0.000 in: flat by 4\n   > count from the stock "
                  "(sheet.csv:2)\n") != std::string::npos);
  CHECK(text.find("3.") == std::string::npos);
}

TEST_CASE("findings in the report are sentences with place, remedy and one's own error") {
  const auto said = report::findings_sentences(inch_job(), three());
  REQUIRE(said.size() == 3);
  CHECK(said[0] == "C port, x 1.000 in: too much (almost certain, sheet.csv:41). What to do: look at the sheet.");
  CHECK(said[1] == "A, x 0.000 in: flat by 3; B, x 0.000 in: flat by 4 (likely, sheet.csv:2). What to do: count from the stock.");
  CHECK(said[2].find("Your own error: ") == 0);
  check::Findings none;
  CHECK(report::findings_sentences(inch_job(), none).empty());  // not judged at all
  none.readings = 28;
  CHECK(report::findings_sentences(inch_job(), none)[0].find("no slip of the pen") != std::string::npos);
}

TEST_CASE("nothing found is said in so many words") {
  check::Findings none;
  none.stations = 1;
  none.readings = 28;
  CHECK(report::findings_text(inch_job(), none).find("Nothing found: 28 readings, 1 station.") != std::string::npos);
}

TEST_CASE("findings as JSON keep every station apart, in mm") {
  const auto json = nlohmann::json::parse(report::findings_json(inch_job(), three()));
  REQUIRE(json["findings"].size() == 3);
  const auto& slip = json["findings"][0];
  CHECK(slip["code"] == "slipped-digit");
  CHECK(slip["x"] == 25.4);
  CHECK(slip["line"] == 41);
  CHECK(slip["do"] == "look at the sheet");
  CHECK(json["findings"][1]["side"].is_null());
  CHECK(json["own_error"]["from_repeats"] == 0.31);
  CHECK(json["own_error"]["reading_error_given"] == false);
}

TEST_CASE(
    "almost certain slips are told in a line each, three at most; what is likely comes apart, what is of the blade not at all") {
  check::Findings findings = three();  // one certain slip, at C; two worn noses
  findings.list[0].slip = check::Slip{33.02, 22.86, 23.114, "two digits changed places"};  // 1.3, 0.9 and 0.91 in by hand
  auto lines = report::slip_lines(inch_job(), findings);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0] == "C port, x 1.000 in: 1.300 in where the others say 0.900 in; 0.910 in would fit (sheet.csv:41)");
  CHECK(report::slips_text(inch_job(), findings).find("\n  " + lines[0] + "\n") != std::string::npos);
  for (int k = 0; k < 4; ++k) findings.list.push_back(findings.list[0]);
  lines = report::slip_lines(inch_job(), findings);
  REQUIRE(lines.size() == 4);
  CHECK(lines[3] == "and 2 more: \"fairblade check\" names them all");
  for (auto& one : findings.list) one.sure = check::Sureness::likely;
  CHECK(report::slip_lines(inch_job(), findings).empty());
  // 2026-11-27: what is likely was in the report's small print alone.
  CHECK(report::likely_slip_lines(inch_job(), findings).size() == 4);
  CHECK(report::slips_text(inch_job(), findings).find("\nLikely wrong in the readings") == 0);
  for (auto& one : findings.list) one.sure = check::Sureness::look;
  CHECK(report::slips_text(inch_job(), findings).empty());
}
