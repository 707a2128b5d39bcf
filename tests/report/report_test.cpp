// Values by hand, from hand_made.hpp; the keys are those that programs rely on.
#include "report/report.hpp"

#include <algorithm>
#include <limits>
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "report/hand_made.hpp"

using namespace fairblade;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> keys_of(const Json& object) {
  std::vector<std::string> out;
  for (const auto& [key, value] : object.items()) out.push_back(key);
  return out;
}

// Wherever lines break.
bool has(const std::string& text, const std::string& part) {
  std::string flat;
  for (const char c : text) {
    const char plain = c == '\n' ? ' ' : c;
    if (plain != ' ' || flat.empty() || flat.back() != ' ') flat += plain;
  }
  return text.find(part) != std::string::npos || flat.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("plan.json holds the numbers under their keys") {
  const Json json = Json::parse(report::plan_json(hand_made::plan()));
  CHECK(keys_of(json) == std::vector<std::string>{"fairblade", "job",      "units",    "reading_error", "bottom",  "stages",
                                                  "sources",   "warnings", "defaults", "stations",      "volumes", "zones",
                                                  "mix",       "floating", "passes",   "batches",       "coats",   "schedule",
                                                  "shopping",  "order",    "blade",    "water"});
  CHECK(json["job"] == "Reed warbler");
  CHECK(json["units"] == name_of(hand_made::plan().job.units));
  CHECK(json["stages"] == Json::array({{{"name", "final"}, {"to_come", 0.0}, {"surface", ""}}}));  // it has no coats
  CHECK(json["sources"].empty());
  const Json told = Json::parse(report::plan_json(hand_made::plan(), {{"reed.json", "cbf29ce484222325"}}));
  CHECK(told["sources"] == Json::array({{{"file", "reed.json"}, {"fnv1a64", "cbf29ce484222325"}}}));
  CHECK(json["defaults"]["target.thickness"] == "closest");
  REQUIRE(json["stations"].size() == 2);
  const Json& station = json["stations"][0];
  CHECK(keys_of(station) == std::vector<std::string>{"name", "down", "ahead", "chord", "calipers", "measured", "fit", "target",
                                                     "change", "asymmetry", "offsets"});
  CHECK(station["measured"]["area"] == 13000);
  CHECK(station["measured"]["lopsided"] == 0.25);
  CHECK(station["fit"]["form"] == "0012");
  CHECK(station["fit"]["thickness_ratio"] == 0.1234);  // the same number to the last bit
  CHECK(station["fit"]["worst"] == Json({{"residual", -1.25}, {"x", 100.0}, {"side", "starboard"}}));
  CHECK(station["fit"]["modified"]["form"] == "0012-45");
  CHECK(station["change"]["deepest_add"] == 2.54);
  CHECK(station["change"]["deepest_removal_side"] == "starboard");
  CHECK(station["offsets"][1]["change"].get<double>() == Approx(-0.3456).epsilon(1e-13));
  CHECK(json["volumes"]["add"] == 1.234);
  CHECK(json["volumes"]["below_last_station"]["add"] == 0.25);
}

TEST_CASE("the target's curve runs from edge to edge in at most 200 places") {
  const Json json = Json::parse(report::plan_json(hand_made::plan()));
  const Json& curve = json["stations"][0]["target"]["curve"];
  const auto x = curve["x"].get<std::vector<double>>();
  const auto port = curve["port"].get<std::vector<double>>();
  REQUIRE(x.size() <= 200);
  REQUIRE(port.size() == x.size());
  CHECK(curve["starboard"] == curve["port"]);
  CHECK(x.front() == -10.0);
  CHECK(x.back() == 400.0);
  // Report 460: half-breadth 0.0105 t at the trailing edge and 1.00029 t / 2 where it is greatest.
  CHECK(port.back() == Approx(0.0105 * 0.12 * 410).epsilon(1e-9));
  const double greatest = *std::max_element(port.begin(), port.end());
  CHECK(greatest == Approx(1.00029 * 0.12 * 410 / 2).epsilon(1e-5));  // tolerance 1e-5 (seen 4e-6)
}

TEST_CASE("what cannot be told is null, never a made-up number") {
  report::Plan plan = hand_made::plan();
  plan.fitted[0].thickness_ratio_error = -1;
  plan.measured[0].figures.leading_edge_radius = std::numeric_limits<double>::quiet_NaN();
  plan.volumes.has_below = false;
  plan.job.bottom.reset();
  const Json json = Json::parse(report::plan_json(plan));
  CHECK(json["stations"][0]["ahead"].is_null());
  CHECK(json["stations"][0]["fit"]["thickness_ratio_error"].is_null());
  CHECK(json["stations"][0]["measured"]["leading_edge_radius"].is_null());
  CHECK(json["volumes"]["below_last_station"].is_null());
  CHECK(has(json["volumes"]["not_included"][0], "below the last station, at 800.0 mm"));
}

TEST_CASE("offsets.csv has a row per reading and side, mm to a thousandth") {
  report::Plan plan = hand_made::plan();
  plan.changes[1].station = "B, \"low\"";
  CHECK(report::offsets_csv(plan) ==
        "station,down,x,side,measured,target,change\n"
        "A,0.000,0.000,port,0.000,0.500,0.500\n"
        "A,0.000,10.500,starboard,12.346,12.000,-0.346\n"
        "\"B, \"\"low\"\"\",800.000,0.000,port,0.000,0.500,0.500\n"
        "\"B, \"\"low\"\"\",800.000,10.500,starboard,12.346,12.000,-0.346\n");
}

TEST_CASE("the summary says what was found, in words and numbers") {
  const std::string text = report::summary(hand_made::plan());
  INFO(text);
  CHECK(has(text, "12.34 ± 0.06"));
  CHECK(has(text, "2.5 at 101.6 port"));
  CHECK(has(text, "0.8 at 25.4 starboard"));
  CHECK(has(text, "miss it by less than 0.3 mm"));
  CHECK(has(text, "hollow at x 100.0 mm, starboard"));
  CHECK(has(text, "1.23 L ± 0.06 L to add, 0.50 L to take off"));
  CHECK(has(text, "below the last station: 0.25 L to add"));
  CHECK_FALSE(has(text, "Warnings"));
}

TEST_CASE("a job in inches shows them beside the millimetres") {
  report::Plan plan = hand_made::plan();
  plan.job.units = LengthUnit::inch;
  const std::string text = report::summary(plan);
  INFO(text);
  CHECK(has(text, "2.5 at 101.6 port"));
  CHECK(has(text, "0.100 at 4.000 port"));  // 2.54 mm and 101.6 mm, an inch being 25.4
  CHECK(has(text, "0.39"));                 // 250 mm² / 25.4²
  CHECK(has(text, "100.0 mm (3.937 in)"));
}

TEST_CASE("the words follow the miss, not the name") {
  report::Plan plan = hand_made::plan();
  CHECK(has(report::summary(plan), "a 0012, as far as these readings can tell"));  // rms 0.5 mm = one reading error
  plan.fitted[0].rms = 1.9;                                                        // under 0.5 % of 400 mm
  CHECK(has(report::summary(plan), "A: near a 0012"));
  plan.fitted[0].rms = 5.9;  // under 1.5 %
  CHECK(has(report::summary(plan), "A: only loosely a 0012"));
  plan.fitted[0].rms = 6.1;
  const std::string far = report::summary(plan);
  CHECK(has(far, "A: no standard section: even the nearest, a 0012, is far off"));
  CHECK(has(far, "0012, far"));  // in the table
  CHECK(has(far, "0012-45, comes nearer"));
}
