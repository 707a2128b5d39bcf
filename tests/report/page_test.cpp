// report.html as text: what it holds, in its order, whatever the owner's names are.
#include <algorithm>
#include <regex>
#include <set>

#include "catch.hpp"
#include "has.hpp"
#include "report/hand_made.hpp"
#include "report/in_water.hpp"
#include "report/report.hpp"

using namespace fairblade;

namespace {

const std::string drawing = "<svg xmlns=\"http://www.w3.org/2000/svg\"><title>t</title><path id=\"add\" d=\"M0,0\"/></svg>";

report::ReportPictures pictures() {
  report::ReportPictures out;
  out.maps = {{"the map", drawing}, {"the other side", drawing}};
  out.stations = {{0, {"A in small", drawing}}, {1, {"B in small", drawing}}};
  out.water = {"the water", drawing};
  return out;
}

std::vector<std::string> found(const std::string& text, const std::string& pattern) {
  const std::regex expression(pattern);
  std::vector<std::string> out;
  for (std::sregex_iterator at(text.begin(), text.end(), expression), end; at != end; ++at) out.push_back((*at)[1].str());
  return out;
}

// A plan of many stations, each with many readings.
report::Plan large(std::size_t stations, int readings) {
  report::Plan plan = hand_made::plan();
  plan.job.stations.clear();
  plan.measured.clear();
  plan.fitted.clear();
  plan.targets.clear();
  plan.changes.clear();
  plan.asymmetry.clear();
  for (std::size_t k = 0; k < stations; ++k) {
    const std::string name = "S" + std::to_string(k);
    plan.job.stations.push_back(hand_made::station(name, 10.0 * double(k)));
    plan.measured.push_back(hand_made::measured(name, 10.0 * double(k)));
    plan.fitted.push_back(hand_made::fitted());
    plan.targets.push_back(hand_made::target(name, 10.0 * double(k)));
    plan.changes.push_back(hand_made::change(name));
    plan.asymmetry.emplace_back();
    auto& points = plan.measured.back().points;
    points.clear();
    for (int i = 0; i < readings; ++i) points.push_back({double(i), 10, 0, section::Face::port});
    plan.changes.back().targets.assign(points.size(), 10.1);
  }
  return plan;
}

}  // namespace

TEST_CASE("the page has its parts in their order, and needs nothing from outside") {
  const std::string page = report::report_html(hand_made::plan(), pictures());
  CHECK(found(page, "<section id=\"([a-z]+)\"") == std::vector<std::string>{"numbers", "warnings", "measured", "target", "map",
                                                                            "stations", "litres", "mix", "coats", "shopping",
                                                                            "cautions", "defaults", "sources"});
  // A plan that was put in the water says so, with its picture, between the order of work and the cautions.
  const std::string wet = report::report_html(in_water::planned(0.10, 0.13), pictures());
  const auto parts = found(wet, "<section id=\"([a-z]+)\"");
  const auto water = std::find(parts.begin(), parts.end(), "water");
  REQUIRE(water != parts.end());
  CHECK(*(water - 1) == "order");
  CHECK(*(water + 1) == "cautions");
  CHECK(has(wet, "id=\"w-add\""));
  CHECK(has(wet, "Stall: at "));
  CHECK(has(page, "<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">"));
  CHECK(has(page, "<title>Reed warbler: refit plan</title>"));
  CHECK(has(page, "<meta name=\"viewport\""));
  CHECK(has(page, "<dt>target.thickness</dt><dd>closest</dd>"));
  for (const char* foreign : {"<script", "<link", "<img", "<iframe", " src=", "@import", "url("}) {
    INFO(foreign);
    CHECK_FALSE(has(page, foreign));
  }
  const auto links = found(page, "href=\"([^\"]*)\"");
  for (const std::string& link : links) CHECK(link[0] == '#');
  // Every id once, and every link to one of them.
  const auto ids = found(page, " id=\"([^\"]*)\"");
  const std::set<std::string> unique(ids.begin(), ids.end());
  CHECK(unique.size() == ids.size());
  for (const std::string& link : links) CHECK(unique.count(link.substr(1)) == 1);
}

TEST_CASE("a part that the job has nothing for is left out") {
  const std::string page = report::report_html(hand_made::plan(), {});
  for (const char* id : {"map", "water", "batches"}) CHECK_FALSE(has(page, "<section id=\"" + std::string(id)));
  CHECK_FALSE(has(page, "<svg"));
  CHECK(has(page, "Nothing in this job needs a decision"));
}

TEST_CASE("2026-11-27: the page prints on Letter where the job's pages do, else on A4") {
  auto plan = hand_made::plan();
  CHECK(has(report::report_html(plan, {}), "@page { size: A4; "));
  plan.job.print.paper = job::Paper::letter;
  CHECK(has(report::report_html(plan, {}), "@page { size: Letter; "));
}

TEST_CASE("2026-11-27: no circle that would not go into the blade is told as its nose's radius") {
  report::Plan plan = hand_made::plan();
  for (auto& one : plan.measured) {
    one.figures.max_thickness = 32.5;  // a plate's, whose nose is flat
    one.figures.leading_edge_radius = 83.02;
  }
  std::string page = report::report_html(plan, pictures(), {});
  CHECK(has(page, ">flat<"));
  CHECK_FALSE(has(page, "83.0"));
  for (auto& one : plan.measured) one.figures.leading_edge_radius = 16.2;
  page = report::report_html(plan, pictures(), {});
  CHECK_FALSE(has(page, ">flat<"));
  CHECK(has(page, "16.2"));
}

TEST_CASE("every caution of the yard is on the page") {
  // Common practice, no source: the list the project keeps.
  const std::string page = report::report_html(hand_made::plan(), {});
  for (const char* words : {"allergic for life", "never with solvent", "half-cured", "P3", "organic vapour", "powder is dust",
                            "hazardous waste", "leaded", "boil over", "shallow trays", "hanging rudder", "no strength",
                            "surveyor", "not a design", "coating_to_strip"}) {
    INFO(words);
    CHECK(has(page, words));
  }
}

TEST_CASE("words that nobody in a yard uses are not on the page") {
  const std::string page = report::report_html(hand_made::plan(), pictures());
  for (const char* word : {"standard deviation", "root mean square", " rms", "variance", "sigma"}) {
    INFO(word);
    CHECK_FALSE(has(page, word));
  }
  CHECK(has(page, "19 times in 20 between"));
}

TEST_CASE("names with markup and of two hundred letters do no harm") {
  report::Plan plan = hand_made::plan();
  const std::string bad = "<b>&\"'</b> \xf0\x9f\x90\xa6 " + std::string(200, 'W');
  plan.job.name = plan.measured[0].station = plan.changes[0].station = plan.targets[0].station = bad;
  plan.job.defaults.push_back({"<key>", "a & b"});
  plan.job.defaults.push_back({"workshop.pot_life", "25"});
  const std::string page = report::report_html(plan, pictures());
  CHECK_FALSE(has(page, "<b>"));
  CHECK(has(page, "&lt;b&gt;&amp;&quot;&#39;&lt;/b&gt; \xf0\x9f\x90\xa6 WWWW"));
  CHECK(has(page, "&lt;key&gt;"));
  CHECK(has(page, "<dt>workshop.pot_<wbr/>life</dt>"));
}

TEST_CASE("of hundreds of stations and readings some are shown, the deepest among them") {
  report::Plan plan = large(300, 500);
  plan.changes[137].add.depth = 9;
  plan.changes[211].removal.depth = 8;
  plan.changes[137].targets[333] = 19;  // 9 mm
  const auto shown = report::stations_shown(plan);
  CHECK(shown.size() <= 24);
  CHECK(shown.front() == 0);
  CHECK(shown.back() == 299);
  CHECK(std::count(shown.begin(), shown.end(), 137) == 1);
  CHECK(std::count(shown.begin(), shown.end(), 211) == 1);
  const std::string page = report::report_html(plan, {});
  CHECK(has(page, "of 300 are shown here"));
  // 38 evenly spread, and the deepest to add; the least change is the first reading, which is among the 38.
  CHECK(has(page, "S137, port: half-breadths; 39 of 500 readings"));
  CHECK(has(page, "add 9.0"));
  CHECK(page.size() < 600000);
  CHECK(report::stations_shown(large(24, 3)).size() == 24);
}
