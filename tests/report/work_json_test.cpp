// The work in plan.json: documented keys, numbers set by hand.
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "report/hand_made_work.hpp"
#include "report/report.hpp"

using namespace fairblade;
using Json = nlohmann::ordered_json;

using hand_made::worked;

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
