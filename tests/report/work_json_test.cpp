// The work in plan.json: documented keys, numbers set by hand.
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "report/hand_made.hpp"
#include "report/report.hpp"

using namespace fairblade;
using Json = nlohmann::ordered_json;

namespace {

report::Plan worked() {
  report::Plan plan = hand_made::plan();
  fill::Work& work = plan.work;
  work.zones.by_zone[1].zone = fill::Zone::faces;
  work.zones.by_zone[1].net = 1.25;
  work.zones.by_zone[1].low = 1.0;
  work.mixes[1].zone = fill::Zone::faces;
  work.mixes[1].mix.powder_litres = 0.375;
  work.mixes[1].mix.ratio_by_volume = {100, 50};
  work.floating.buoyancy_gained = 0.5;
  work.passes[1].zone = fill::Zone::faces;
  work.passes[1].passes = {{1, 5.5, 0, 1.25, {"A", "B"}}};
  work.passes[1].core = fill::Core{12, 3, 0.05, 0.6, 4, 1};
  fill::PassBatches batch;
  batch.pass = 1;
  batch.count = 4;
  batch.powder_ml = 62.5;
  batch.overcoat = job::Window{6, 24};
  work.batches = {batch};
  job::Coat asked;
  asked.recoat = job::Window{0.5, 3};
  plan.job.coats = {asked};
  fill::CoatPlan coat;
  coat.name = "Curlew";
  coat.packs = 1;
  coat.packs_used = 0.5;
  coat.part_pack = fill::PartPack{2, 0.05, 0.1, 20, 15, 80.0, 64.0, 16.0, 2.5};
  coat.cloth = fill::ClothNeed{1.5, 1000, 1.5, 0.25};
  work.coats.coats = {coat};
  work.coats.wetted.bare = 0.125;
  work.coats.edges = {{"A", 4, 0.5, 8, 2.75, 1.25, false, 5, false}};
  work.coats.nose_glass = fill::NoseGlassPlan{0.25, 2, {{"A", 4, 8, {90, 60}, 2}}, 0.5, 0.125, 0.3, 0.2};
  work.schedule.days = {{0, "Curlew", 29, {{1, 540, 569, 600}}}};
  work.schedule.blocks = {{"A", fill::Face::port, 120, 0.3, 1000.0, false, 40.0}};
  work.shopping.items = {{"epoxy resin", 1.5, "kg", 1.0, 2, 40.0}, {"cloth", 2, "m", {}, 0, {}}};
  work.year_cost = fill::YearCost{"soft", "hard", 50, 40, 8};
  fill::Step step;
  step.task = fill::Task::fill_faces;
  step.zone = fill::Zone::faces;
  step.batches = 0;
  step.pass = step.passes = 1;
  step.depth = 5.5;
  step.litres = 1.25;
  work.order = {step};
  return plan;
}

}  // namespace

TEST_CASE("every number of the work has its place in plan.json") {
  const Json json = Json::parse(report::plan_json(worked()));
  const auto at = [&](const char* place) -> const Json& { return json.at(Json::json_pointer(place)); };
  CHECK(at("/zones/faces/net") == 1.25);
  CHECK(at("/zones/faces/low") == 1.0);
  CHECK(at("/zones/bounds/leading_edge") == 0.15);
  CHECK(at("/mix/1/powder_litres") == 0.375);
  CHECK(at("/mix/1/ratio_by_volume") == Json({100.0, 50.0}));
  CHECK(at("/mix/1/passes") == 1);
  CHECK(at("/mix/1/batches") == 4);
  CHECK(at("/floating/buoyancy_gained_kg") == 0.5);
  CHECK(at("/passes/1/passes/0/stations") == Json({"A", "B"}));
  CHECK(at("/passes/1/core/thickness") == 12);
  CHECK(at("/passes/0/core").is_null());
  CHECK(at("/batches/0/powder_ml") == 62.5);
  CHECK(at("/batches/0/overcoat_hours") == Json({6.0, 24.0}));
  CHECK(at("/batches/0/sand_after_hours").is_null());
  CHECK(at("/coats/wetted_m2/bare") == 0.125);
  CHECK(at("/coats/coats/0/part_pack/base_g") == 64);
  CHECK(at("/coats/coats/0/recoat_hours") == Json({0.5, 3.0}));
  CHECK(at("/coats/coats/0/cloth/area_m2") == 1.5);
  CHECK(at("/coats/coats/0/m2_per_litre").is_null());
  CHECK(at("/coats/edges/0/before_coats") == 2.75);
  CHECK(at("/coats/nose_glass/stations/0/strip_widths") == Json({90.0, 60.0}));
  CHECK(at("/schedule/days/0/layers/0/start") == "9:00");
  CHECK(at("/schedule/days/0/layers/0/latest") == "10:00");
  CHECK(at("/schedule/blocks/0/block") == 40);
  CHECK(at("/shopping/items/0/packs") == 2);
  CHECK(at("/shopping/items/1/pack_size").is_null());
  CHECK(at("/shopping/items/1/packs").is_null());
  CHECK(at("/shopping/year_cost/break_even_years") == 8);
  CHECK(at("/order/0/task") == "fill-faces");
  CHECK(at("/order/0/litres") == 1.25);
  CHECK(at("/order/0/title") == "Screed the faces, pass 1 of 1: 1.25 L");
}

TEST_CASE("a plan without work has the keys all the same") {
  const Json json = Json::parse(report::plan_json(hand_made::plan()));
  CHECK(json["batches"].empty());
  CHECK(json["coats"]["nose_glass"].is_null());
  CHECK(json["shopping"]["year_cost"].is_null());
  CHECK(json["shopping"]["cost"].is_null());
}
