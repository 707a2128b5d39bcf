#include "report/work_json.hpp"

#include "report/json_values.hpp"
#include "report/order_words.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

Json window_of(const std::optional<job::Window>& window) { return window ? Json{window->from, window->to} : Json(nullptr); }

Json zone_of(const fill::ZoneAmount& zone) {
  return {{"net", zone.net},
          {"error", zone.error},
          {"low", zone.low},
          {"high", zone.high},
          {"beyond", zone.beyond},
          {"taken_by_coats", zone.taken_by_coats},
          {"taken_by_glass", zone.taken_by_glass},
          {"filler", zone.filler},
          {"sanding", zone.sanding},
          {"loss", zone.loss},
          {"to_mix", zone.to_mix},
          {"filled_area_m2", zone.filled_area},
          {"deepest", zone.deepest}};
}

Json zones_of(const fill::Zones& zones) {
  return {{"bounds", {{"leading_edge", zones.bounds.leading_edge}, {"trailing_edge", zones.bounds.trailing_edge}}},
          {"leading_edge", zone_of(zones.by_zone[0])},
          {"faces", zone_of(zones.by_zone[1])},
          {"trailing_edge", zone_of(zones.by_zone[2])},
          {"whole", zone_of(zones.whole)}};
}

Json mixes_of(const Plan& plan) {
  Json out = Json::array();
  for (std::size_t k = 0; k < plan.work.mixes.size(); ++k) {
    const fill::ZoneMix& one = plan.work.mixes[k];
    const fill::Mix& mix = one.mix;
    out.push_back({{"zone", fill::name_of(one.zone)},
                   {"litres", mix.litres},
                   {"paste_kg", mix.paste_kg},
                   {"resin_kg", mix.resin_kg},
                   {"hardener_kg", mix.hardener_kg},
                   {"powder_kg", mix.powder_kg},
                   {"resin_litres", mix.resin_litres},
                   {"hardener_litres", mix.hardener_litres},
                   {"powder_litres", mix.powder_litres},
                   {"ratio_by_weight", mix.ratio_by_weight},
                   {"ratio_by_volume", mix.ratio_by_volume},
                   {"other_ratio_estimated", mix.other_ratio_estimated},
                   {"paste_density", mix.paste_density},
                   {"weight_added_kg", one.weight_added},
                   {"passes", plan.work.passes[k].passes.size()},
                   {"batches", batches_in(plan, one.zone)}});
  }
  return out;
}

Json core_of(const std::optional<fill::Core>& core) {
  if (!core) return nullptr;
  return {{"thickness", core->thickness},
          {"cover", core->cover},
          {"area_m2", core->area},
          {"filler_saved", core->filler_saved},
          {"deepest_left", core->deepest_left},
          {"passes_after", core->passes_after}};
}

Json passes_of(const fill::ZonePasses& zone) {
  Json passes = Json::array(), stations = Json::array();
  for (const fill::Pass& one : zone.passes) {
    passes.push_back({{"number", one.number},
                      {"depth", one.depth},
                      {"left_over", one.left_over},
                      {"litres", one.litres},
                      {"stations", one.stations}});
  }
  for (const fill::PassStation& one : zone.stations) {
    stations.push_back({{"name", one.station}, {"down", one.down}, {"depth", one.depth}, {"passes", one.passes}});
  }
  return {{"zone", fill::name_of(zone.zone)},
          {"layer_limit", zone.layer_limit},
          {"deepest", zone.deepest},
          {"deepest_down", zone.deepest_down},
          {"passes", passes},
          {"stations", stations},
          {"core", core_of(zone.core)}};
}

Json batch_of(const fill::PassBatches& one) {
  return {{"zone", fill::name_of(one.zone)},
          {"pass", one.pass},
          {"litres", one.litres},
          {"count", one.count},
          {"batch_g", one.batch_g},
          {"resin_g", one.resin_g},
          {"hardener_g", one.hardener_g},
          {"powder_g", one.powder_g},
          {"resin_ml", one.resin_ml},
          {"hardener_ml", one.hardener_ml},
          {"powder_ml", one.powder_ml},
          {"workable_minutes", one.minutes},
          {"spread_minutes", one.spread_minutes},
          {"pass_minutes", one.pass_minutes},
          {"smaller_for_time", one.smaller_for_time},
          {"cannot_spread_in_time", one.cannot_spread_in_time},
          {"overcoat_hours", window_of(one.overcoat)},
          {"sand_after_hours", maybe(one.sand_after_hours)}};
}

Json part_pack_of(const std::optional<fill::PartPack>& part) {
  if (!part) return nullptr;
  return {{"mixes_a_layer", part->mixes},
          {"litres", part->litres},
          {"of_a_pack", part->of_a_pack > 0 ? Json(part->of_a_pack) : Json(nullptr)},
          {"workable_minutes", part->minutes},
          {"minutes_to_use", part->minutes_to_use},
          {"grams", maybe(part->grams)},
          {"base_g", maybe(part->base_g)},
          {"hardener_g", maybe(part->hardener_g)},
          {"thinner_ml", part->thinner_ml}};
}

Json cloth_of(const std::optional<fill::ClothNeed>& cloth) {
  if (!cloth) return nullptr;
  return {{"area_m2", cloth->area}, {"width", cloth->width}, {"metres", cloth->metres}, {"resin_kg", cloth->resin_kg}};
}

Json coat_of(const fill::CoatPlan& coat, const job::Coat& asked) {
  static constexpr std::array<const char*, 4> parts{"all", "filled", "bare", "old"};
  return {{"name", coat.name},
          {"stage", coat.stage},
          {"on", parts[static_cast<std::size_t>(coat.on)]},
          {"layers", coat.layers},
          {"area_m2", coat.area},
          {"patches_m2", coat.patches},
          {"build", coat.build},
          {"m2_per_litre", coat.spread > 0 ? Json(coat.spread) : Json(nullptr)},
          {"spread_as_given", coat.spread_from_sheet},
          {"solids_estimated", coat.solids_estimated},
          {"litres_a_layer", coat.litres_a_layer},
          {"litres", coat.litres},
          {"thinner_litres", coat.thinner_litres},
          {"packs_used", coat.packs > 0 ? Json(coat.packs_used) : Json(nullptr)},
          {"packs", coat.packs > 0 ? Json(coat.packs) : Json(nullptr)},
          {"cost", maybe(coat.cost)},
          {"cost_a_year", maybe(coat.cost_a_year)},
          {"recoat_hours", window_of(asked.recoat)},
          {"part_pack", part_pack_of(coat.part_pack)},
          {"cloth", cloth_of(coat.cloth)}};
}

Json nose_of(const std::optional<fill::NoseGlassPlan>& nose) {
  if (!nose) return nullptr;
  Json stations = Json::array();
  for (const auto& one : nose->stations) {
    stations.push_back({{"name", one.station},
                        {"depth", one.depth},
                        {"layers", one.layers},
                        {"strip_widths", one.strip_widths},
                        {"left_for_filler", one.left_for_filler}});
  }
  return {{"layer", nose->layer},
          {"cover", nose->cover},
          {"cloth_area_m2", nose->cloth_area},
          {"resin_kg", nose->resin_kg},
          {"glass_litres", nose->glass_litres},
          {"left_for_filler", nose->left_for_filler},
          {"stations", stations}};
}

Json coats_of(const Plan& plan) {
  const fill::Coats& coats = plan.work.coats;
  const fill::Wetted& w = coats.wetted;
  Json list = Json::array(), edges = Json::array();
  for (std::size_t k = 0; k < coats.coats.size(); ++k) list.push_back(coat_of(coats.coats[k], plan.job.coats[k]));
  for (const fill::Edge& one : coats.edges) {
    edges.push_back({{"name", one.station},
                     {"finished", one.finished},
                     {"before_coats", one.before_coats},
                     {"taper_degrees", one.taper_degrees},
                     {"least", one.least},
                     {"nose_too_sharp", one.nose_too_sharp}});
  }
  return {{"wetted_m2",
           {{"faces", w.faces},
            {"tip", w.tip},
            {"top", w.top},
            {"all", w.all},
            {"filled", w.filled},
            {"bare", w.bare},
            {"old", w.old},
            {"patches", w.patches}}},
          {"build", coats.build},
          {"pinhole_litres", coats.pinhole_litres},
          {"coats", list},
          {"edges", edges},
          {"nose_glass", nose_of(coats.nose_glass)}};
}

Json schedule_of(const Plan& plan) {
  const fill::Schedule& schedule = plan.work.schedule;
  Json blocks = Json::array(), days = Json::array();
  for (const auto& one : schedule.blocks) {
    blocks.push_back({{"station", one.station},
                      {"side", section::name_of(one.face)},
                      {"chord_fraction", one.chord_fraction},
                      {"x", one.x},
                      {"radius", maybe(one.radius)},
                      {"hollow", one.hollow},
                      {"block", maybe(one.block)}});
  }
  for (const auto& day : schedule.days) {
    Json coats = Json::array();
    for (const auto& one : day.coats) {
      coats.push_back({{"layer", one.number},
                       {"start", fill::clock_text(one.start)},
                       {"end", fill::clock_text(one.end)},
                       {"latest", fill::clock_text(one.latest)}});
    }
    days.push_back({{"coat", day.coat}, {"coat_minutes", day.coat_minutes}, {"layers", coats}});
  }
  return {{"dew_point", schedule.dew_point},
          {"room", schedule.room},
          {"too_damp", schedule.too_damp},
          {"longboard", {{"radius", schedule.longboard.radius}, {"thickness", schedule.longboard.thickness}}},
          {"blocks", blocks},
          {"dusk", fill::clock_text(plan.job.workshop.dusk)},
          {"days", days}};
}

Json shopping_of(const fill::Work& work) {
  Json items = Json::array();
  for (const auto& one : work.shopping.items) {
    items.push_back({{"what", one.what},
                     {"needed", one.needed},
                     {"unit", one.unit},
                     {"pack_size", maybe(one.pack_size)},
                     {"packs", one.packs > 0 ? Json(one.packs) : Json(nullptr)},
                     {"cost", maybe(one.cost)}});
  }
  Json out = {{"items", items}, {"cost", maybe(work.shopping.cost)}, {"all_priced", work.shopping.all_priced}};
  out["currency"] = work.shopping.currency;
  out["year_cost"] = nullptr;
  if (const auto& years = work.year_cost) {
    out["year_cost"] = {{"cheaper", years->cheaper},
                        {"cheaper_a_year", years->cheaper_a_year},
                        {"dearer", years->dearer},
                        {"dearer_a_year", years->dearer_a_year},
                        {"break_even_years", years->break_even_years}};
  }
  return out;
}

Json order_of(const Plan& plan) {
  Json out = Json::array();
  for (const fill::Step& step : plan.work.order) {
    Json row = {{"task", fill::name_of(step.task)}};
    if (step.zone) row["zone"] = fill::name_of(*step.zone);
    if (step.pass > 0) row["pass"] = step.pass;
    if (step.coat) row["coat"] = plan.work.coats.coats[*step.coat].name;
    if (step.depth > 0) row["depth"] = step.depth;
    if (step.litres > 0) row["litres"] = step.litres;
    if (step.area > 0) row["area_m2"] = step.area;
    if (!step.stations.empty()) row["stations"] = step.stations;
    const StepWords words = words_of(plan, step);
    row["title"] = words.title;
    row["text"] = words.sentences;
    out.push_back(std::move(row));
  }
  return out;
}

}  // namespace

void add_work(const Plan& plan, Json& out) {
  const fill::Work& work = plan.work;
  out["zones"] = zones_of(work.zones);
  out["mix"] = mixes_of(plan);
  const fill::Floating& floating = work.floating;
  out["floating"] = {{"weight_added_kg", floating.weight_added},
                     {"buoyancy_gained_kg", floating.buoyancy_gained},
                     {"weight_in_water_kg", floating.weight_in_water}};
  out["passes"] = Json::array();
  for (const fill::ZonePasses& zone : work.passes) out["passes"].push_back(passes_of(zone));
  out["batches"] = Json::array();
  for (const fill::PassBatches& one : work.batches) out["batches"].push_back(batch_of(one));
  out["coats"] = coats_of(plan);
  out["schedule"] = schedule_of(plan);
  out["shopping"] = shopping_of(work);
  out["order"] = order_of(plan);
}

}  // namespace fairblade::report
