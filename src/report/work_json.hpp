// Private to the report room. Product: the work of a plan as JSON: what plan.json holds under the keys zones, mix,
// floating, passes, batches, coats, schedule, shopping and order. Verbs: add_work.
//
// Lengths mm, areas m² where the key says so, litres, kg or g or mL as the key says, hours and minutes likewise, clock
// times "9:05". What was not given or cannot be told is null.
//   zones      bounds; leading_edge, faces, trailing_edge, whole: net, error, low, high, beyond, taken_by_coats,
//              taken_by_glass, filler, sanding, loss, to_mix, filled_area_m2, deepest
//   mix        a zone each, what is weighed in all: by mass (kg) and by volume (litres; of powder the particles alone)
//   floating   weight_added_kg, buoyancy_gained_kg, weight_in_water_kg
//   passes     a zone each: layer_limit, deepest, deepest_down, passes, stations, core (an offer)
//   batches    a pass each: count, one batch by mass and by volume, minutes, overcoat_hours, sand_after_hours
//   coats      wetted_m2, build, pinhole_litres, coats (with cloth and part_pack), edges, nose_glass
//   schedule   dew_point, room, too_damp, longboard, blocks, days
//   shopping   items, cost, all_priced, currency, year_cost
//   order      the order of work: task, its numbers, and the words of the report
#pragma once
#include <nlohmann/json.hpp>

#include "report/plan.hpp"

namespace fairblade::report {

void add_work(const Plan& plan, nlohmann::ordered_json& out);

}  // namespace fairblade::report
