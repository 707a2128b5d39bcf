// The water page as lines and cells.
#include "report/water.hpp"

#include <algorithm>
#include <cctype>
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "has.hpp"
#include "report/hand_made.hpp"
#include "report/in_water.hpp"
#include "report/report.hpp"

using namespace fairblade;
using in_water::planned;

namespace {

bool has_digit(const std::string& text) {
  return std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isdigit(c); });
}

}  // namespace

TEST_CASE("the page has its three sentences with numbers, its tables and its limits") {
  const auto plan = planned(0.10, 0.13);
  const auto page = report::water_page(plan);
  REQUIRE(page.sentences.size() == 3);
  for (const std::string& sentence : page.sentences) CHECK(has_digit(sentence));
  CHECK(has(page.caution, "not a design"));
  // 10 % to 13 % is about as much as the readings can tell at the nose: either verdict may fall, but it is said.
  const bool said = has(page.verdict, "errors of reading could make it look") || has(page.verdict, "the readings can tell");
  CHECK(said);
  CHECK(page.edge_options.size() == 3);
  for (const std::string& option : page.edge_options) CHECK(has(option, "no promise"));
  CHECK(std::any_of(page.limits.begin(), page.limits.end(), [](const auto& limit) { return has(limit, "cavitation"); }));
  for (const report::PlainTable* table : {&page.blade, &page.stations}) {
    REQUIRE(table->rows.size() > 1);
    for (const auto& row : table->rows) CHECK(row.size() == table->rows[0].size());
  }
  CHECK(page.stations.rows.size() == 4);
  CHECK(page.blade.rows[1][1] == "17.0");  // blade.hpp puts 17 % of each chord ahead of the stock
}

TEST_CASE("a nose worn flat is worth rounding, and the page says so") {
  // The first 5 % of the chord worn to a blunt wedge, 3 % of the chord across at its front: far beyond 0.5 mm of
  // reading error.
  const blade::Shape worn = [](double x) { return x < 0.05 ? 0.015 + 0.3 * x : blade::naca(0.12, x); };
  const auto plan = planned(0.12, 0.12, [&](job::Job& job) {
    for (job::Station& station : job.stations) {
      auto target = station.target;
      station = blade::station(station.name, station.down, station.chord, worn, worn);
      station.target = target;
    }
  });
  CHECK(plan.water.meaning.stall_gain);
  CHECK(has(report::water_page(plan).verdict, "Better by more than errors of reading could make it look: the nose's suction"));
}

TEST_CASE("a blade that needs nothing is not worth doing, on the screen too") {
  const auto plan = planned(0.12, 0.12);
  CHECK(has(report::water_page(plan).verdict, "not worth doing"));
  const std::string screen = report::summary(plan);
  CHECK(has(screen, "In the water, before and after"));
  CHECK(has(screen, "not worth doing"));
  CHECK(has(screen, "not a design"));
}

TEST_CASE("inches stand beside millimetres, and what is not known is a dash") {
  const auto plan = planned(0.10, 0.12, [](job::Job& job) {
    job.units = LengthUnit::inch;
    for (job::Station& station : job.stations) station.ahead.reset();
  });
  const auto page = report::water_page(plan);
  CHECK(page.blade.rows[1][1] == "-");
  CHECK(has(page.stations.rows[1][4], " mm ("));
  CHECK(has(page.stations.rows[1][4], " in)"));
}

TEST_CASE("defaults of the page are the plan's") {
  const auto plan = planned(0.12, 0.12);
  const auto json = nlohmann::json::parse(report::plan_json(plan));
  CHECK(json["defaults"]["speed"] == "5 knots");
  CHECK(json["defaults"]["water.helm"] == "8 degrees");
  CHECK(json["defaults"]["water.end_plate"] == "full");
  CHECK(json["water"]["heard_hz"].is_null());
  const auto asked = planned(0.12, 0.12, [](job::Job& job) {
    job.speed = 6;
    job.water = {job::EndPlate::none, 5.0, 180.0};
  });
  const auto other = nlohmann::json::parse(report::plan_json(asked));
  CHECK_FALSE(other["defaults"].contains("speed"));
  CHECK(other["water"]["knots"] == 6);
  CHECK(other["water"]["helm"] == 5);
  CHECK(other["water"]["end_plate"] == "none");
  CHECK(other["water"]["stations"][0]["edge"]["before"]["humming_knots"].size() == 2);
  CHECK(other["water"]["stations"][0]["before"]["pressure"]["helm"] == 5);
}

TEST_CASE("plan.json tells the flow's numbers as they are") {
  const auto plan = planned(0.10, 0.12);
  const auto json = nlohmann::json::parse(report::plan_json(plan));
  const auto& station = plan.water.stations[1];
  const auto& told = json["water"]["stations"][1];
  CHECK(told["name"] == "B");
  CHECK(told["nose"]["suction_before"] == station.nose.before);
  CHECK(told["after"]["lift_slope"] == station.after.lift_slope);
  CHECK(told["before"]["to_port"]["suction"][8] == station.before.to_port[8].suction);
  CHECK(told["before"]["to_port"]["centre_of_pressure"][0].is_null());
  CHECK(told["edge"]["after"]["hertz"][0] == station.tone_after.frequency->low);
  CHECK(json["water"]["blade"]["after"]["lever"] == *plan.water.blade_after.lever);
  CHECK(json["water"]["meaning"]["stall_gain"] == plan.water.meaning.stall_gain);
}

TEST_CASE("a plan without a water page is summed up without one") {
  CHECK_FALSE(has(report::summary(hand_made::plan()), "In the water"));
  CHECK(nlohmann::json::parse(report::plan_json(hand_made::plan()))["water"]["stations"].empty());
}
