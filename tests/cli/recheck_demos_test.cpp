// fairblade recheck on the demo rudders, in process.
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/text.hpp"
#include "catch.hpp"
#include "cli/sandbox.hpp"
#include "fill/stages.hpp"
#include "plan/plan.hpp"
#include "recheck/frozen.hpp"
#include "report/report.hpp"

using namespace sandbox;
using Json = nlohmann::json;

namespace {

std::string number(double value) { return fairblade::fixed(value, 6); }

}  // namespace

TEST_CASE("recheck: the demo's round") {
  const Folder folder;
  REQUIRE(run({"plan", profile("whimbrel"), "-o", folder.at("whimbrel"), "--quiet"}).status == 0);
  const Result result = run({"recheck", folder.at("whimbrel"), std::string(PROFILES_DIR) + "/whimbrel/after-filling.csv", "-o",
                             folder.at("left"), "--json"});
  REQUIRE(result.status == 0);
  const Json json = Json::parse(result.out);
  CHECK(json["verdict"] == "go on");
  // As its README tells: a hump on the port side about C, a flat on the starboard side of B.
  const auto spot = [&](const std::string& kind, const std::string& side, const std::string& at) {
    return std::any_of(json["spots"].begin(), json["spots"].end(),
                       [&](const Json& one) { return one["kind"] == kind && one["side"] == side && one["worst_at"] == at; });
  };
  CHECK(spot("hump", "port", "C"));
  CHECK(spot("flat", "starboard", "B"));
  const std::string map = bytes_of(folder.at("left/what-is-left.svg"));
  CHECK(has(map, ">What is left<"));
  CHECK(has(map, "White: within the tolerance of 0.5 mm"));
}

TEST_CASE("recheck: README's sample is what the demo prints") {
  const Folder folder;
  const Result plan = run({"plan", profile("whimbrel"), "-o", folder.at("whimbrel")});
  REQUIRE(plan.status == 0);
  CHECK(has(plan.out, ": fairblade recheck " + folder.at("whimbrel") + " READINGS.csv\n"));
  const Result result =
      run({"recheck", folder.at("whimbrel"), std::string(PROFILES_DIR) + "/whimbrel/after-filling.csv", "-o", folder.at("left")});
  REQUIRE(result.status == 0);
  INFO(result.out);
  std::istringstream readme(bytes_of(std::string(PROFILES_DIR) + "/../README.md"));
  std::string line;
  while (std::getline(readme, line) && !has(line, "prints the verdict, and a list")) continue;
  std::size_t lines = 0, from = 0;
  while (std::getline(readme, line) && (line.empty() || line.rfind("    ", 0) == 0)) {
    if (line.empty()) continue;
    INFO(line);
    const std::size_t at = result.out.find(line.substr(4) + "\n", from);  // in this order
    REQUIRE(at != std::string::npos);
    from = at;
    ++lines;
  }
  CHECK(lines == 10);
}

TEST_CASE("recheck: the frozen target is the planned one") {
  // Every kind of curve that there is: forms, rebuilt edges on a kept body, faces bent round a patch, built-out edges, a skeg.
  using namespace fairblade;
  const std::vector<std::pair<std::string, std::vector<job::Override>>> cases{
      {"whimbrel", {}},
      {"whimbrel", {{"approach", "edges-only"}, {"trailing_edge_thickness", "2"}}},
      {"whimbrel", {{"no_cut", "400,500,60,120"}, {"thickness", "10%"}}},
      {"whimbrel", {{"extend_leading_edge", "12"}, {"extend_trailing_edge", "8"}, {"max_thickness_at", "0.4"}}},
      {"turnstone", {}},
      {"dunlin", {}}};
  const Folder folder;
  // Where a rebuilt edge meets the kept body there may be a step: at that very place there are two half-breadths.
  const auto on_a_step = [](const target::TargetSection& target, double x) {
    if (!target.joints) return false;
    for (const auto* joints : {&target.joints->nose, &target.joints->tail}) {
      for (std::size_t k = 0; *joints && k < 2; ++k) {
        if (std::abs((**joints)[k].x - x) < 1e-5) return true;
      }
    }
    return false;
  };
  for (const auto& [name, wishes] : cases) {
    const auto job = job::read_job(profile(name), wishes);
    REQUIRE(job);
    const auto plan = plan::make_plan(*job);
    INFO(name << " " << (plan ? "" : one_line(plan.faults().front())));
    REQUIRE(plan);
    const auto read = job::read_frozen_plan(folder.write("plan.json", report::plan_json(*plan)));
    REQUIRE(read);
    const auto frozen = recheck::freeze(*read, "");
    REQUIRE(frozen);
    double worst = 0;
    for (std::size_t k = 0; k < plan->targets.size(); ++k) {
      const auto &is = frozen->targets[k], &was = plan->targets[k];
      CHECK(is.down == was.down);
      CHECK(is.leading_edge_x == Approx(was.leading_edge_x).margin(1e-9));
      CHECK(is.chord == Approx(was.chord).margin(1e-9));
      for (int i = 0; i <= 3000; ++i) {
        const double x = was.leading_edge_x + was.chord * (i / 3000.0) * (1 - 1e-12);
        if (on_a_step(was, x)) continue;
        for (const auto face : {section::Face::port, section::Face::starboard}) {
          const double miss = std::abs(is.half_breadth(face, x) - was.half_breadth(face, x));
          worst = std::max(worst, miss);
        }
      }
    }
    CHECK(frozen->stages.size() == fill::stages_of(*job).size());
    CHECK(worst < 0.001);  // mm; seen 0.00007 behind a patch, 0.00001 elsewhere
  }
}

TEST_CASE("recheck: readings off the demos' own plans leave nothing") {
  // Every eleventh point of the curves in plan.json, in the job's unit: a spade, a caliper job, and a skeg in inches.
  const std::map<std::string, double> units{{"mm", 1}, {"cm", 10}, {"in", 25.4}};
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    const Folder folder;
    REQUIRE(run({"plan", profile(name), "-o", folder.at("plan"), "--quiet"}).status == 0);
    const Json plan = Json::parse(bytes_of(folder.at("plan/plan.json")));
    const double mm = units.at(plan["units"]);
    std::string text = "station,ahead,chord,x,port,starboard\n";
    for (const Json& station : plan["stations"]) {
      const Json &target = station["target"], &curve = target["curve"];
      for (std::size_t k = 0; k < curve["x"].size(); k += 11) {
        text += station["name"].get<std::string>() + "," +
                (target["ahead"].is_null() ? "" : number(target["ahead"].get<double>() / mm)) + "," +
                number(target["chord"].get<double>() / mm) + "," +
                number((curve["x"][k].get<double>() - curve["x"][0].get<double>()) / mm) + "," +
                number(curve["port"][k].get<double>() / mm) + "," + number(curve["starboard"][k].get<double>() / mm) + "\n";
      }
    }
    const Result result =
        run({"recheck", folder.at("plan"), folder.write("r.csv", text), "-o", folder.at("left"), "--stage", "final", "--json"});
    INFO(name << result.err);
    REQUIRE(result.status == 0);
    const Json json = Json::parse(result.out);
    CHECK(json["verdict"] == "nothing left");
    CHECK(json["progress"][1]["deepest_low"].get<double>() < 0.005);                              // mm; seen 0.00001
    CHECK(json["progress"][1]["deepest_high"].get<double>() < 0.005);                             // seen 0.0021
    CHECK(json["litres"]["add"].get<double>() + json["litres"]["remove"].get<double>() < 0.002);  // seen 0.0005
  }
}
