#include "fill/coats.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "fill/fill.hpp"
#include "fill/nose_glass.hpp"

namespace fairblade::fill {
namespace {

constexpr double estimated_solids = 50;  // %, where neither solids nor spreading rate are given
constexpr double overlaps = 1.10;        // of cloth
constexpr double degrees = 180 / std::numbers::pi;

double area_of(const Wetted& wetted, job::CoatedPart on) {
  switch (on) {
    case job::CoatedPart::filled: return wetted.filled;
    case job::CoatedPart::bare: return wetted.bare;
    case job::CoatedPart::old: return wetted.old;
    default: return wetted.all;
  }
}

PartPack part_pack_of(const job::Job& job, const job::Coat& coat, const CoatPlan& plan) {
  PartPack out;
  out.minutes = coat.working_time->minutes * std::exp2((coat.working_time->at - job.workshop.temperature) / 10);
  const double layer_minutes = plan.area / job.workshop.paint_m2_per_minute;
  const double keep = job.workshop.kept();
  const double litres = plan.litres_a_layer / keep;
  double mixes = std::max(1.0, std::ceil(layer_minutes / out.minutes - 1e-9));
  if (coat.pack) mixes = std::max(mixes, std::ceil(litres / coat.pack->size - 1e-9));
  out.mixes = static_cast<int>(std::min(mixes, 1e6));
  out.litres = litres / mixes;
  out.minutes_to_use = layer_minutes / mixes;
  if (coat.pack) out.of_a_pack = out.litres / coat.pack->size;
  out.thinner_ml = 1000 * out.litres * coat.thinner_percent.value_or(0) / 100;
  if (coat.density) out.grams = 1000 * out.litres * *coat.density;
  if (out.grams && coat.parts_by_weight) {
    const auto& [base, hardener] = *coat.parts_by_weight;
    out.base_g = *out.grams * base / (base + hardener);
    out.hardener_g = *out.grams * hardener / (base + hardener);
  }
  return out;
}

void plan_paint(const job::Job& job, const job::Coat& coat, CoatPlan& plan) {
  if (coat.spreading_rate) {
    plan.spread = *coat.spreading_rate;
    plan.spread_from_sheet = true;
  } else {
    plan.solids_estimated = !coat.volume_solids_percent;
    plan.spread = film_spread(coat.volume_solids_percent.value_or(estimated_solids), 1000 * plan.build / coat.layers);
  }
  plan.litres_a_layer = plan.area / plan.spread;
  plan.litres = plan.litres_a_layer * coat.layers / job.workshop.kept();
  plan.thinner_litres = plan.litres * coat.thinner_percent.value_or(0) / 100;
  if (coat.working_time && plan.area > 0) plan.part_pack = part_pack_of(job, coat, plan);
  if (!coat.pack) return;
  plan.packs_used = plan.litres / coat.pack->size;
  plan.packs = static_cast<int>(std::ceil(plan.packs_used - 1e-9));
  if (!coat.pack->price) return;
  plan.cost = plan.packs * *coat.pack->price;
  if (coat.life_years) plan.cost_a_year = *plan.cost / *coat.life_years;
}

// The cloth told, or what cloth of the default fibre share would be so thick.
void plan_glass(const job::Job& job, const job::Coat& coat, const Wetted& wetted, CoatPlan& plan) {
  job::Cloth cloth = coat.cloth.value_or(job::Cloth{});
  const double x = cloth.fibre_weight_percent / 100;
  if (!coat.cloth) cloth.g_per_m2 = *coat.thickness / job::glass_layer(1, x, cloth.fibre_density, job::mixed_epoxy_density);
  ClothNeed need;
  need.area = plan.area * coat.layers * overlaps;
  need.width = cloth.width;
  need.metres = coat.on == job::CoatedPart::all && plan.area > 0
                    ? coat.layers * metres_in_strips(plan.area, wetted.height, cloth.width / 1000)
                    : need.area / (cloth.width / 1000);
  need.resin_kg = need.area * cloth.g_per_m2 / 1000 * (1 - x) / x / job.workshop.kept();
  if (cloth.price_per_m) plan.cost = need.metres * *cloth.price_per_m;
  plan.cloth = need;
}

CoatPlan plan_coat(const job::Job& job, const job::Coat& coat, const Wetted& wetted) {
  CoatPlan plan;
  plan.name = coat.name;
  plan.stage = coat.stage;
  plan.on = coat.on;
  plan.layers = coat.layers;
  plan.area = area_of(wetted, coat.on);
  if (coat.on == job::CoatedPart::all) plan.patches = wetted.patches;
  plan.build = build_of(coat);
  if (coat.stage == "glass" && coat.thickness) plan_glass(job, coat, wetted, plan);
  else plan_paint(job, coat, plan);
  return plan;
}

}  // namespace

double metres_down(double area, double height, double width) {
  if (!(height > 0)) return area * overlaps / width;  // one height alone
  return std::ceil(area / height * overlaps / width - 1e-9) * height;
}

double metres_in_strips(double area, double height, double width) {
  const double girth = height > 0 ? area / height : 0;
  return std::min(metres_down(area, height, width), metres_down(area, girth, width));
}

double film_spread(double volume_solids_percent, double dry_film_um) { return 10 * volume_solids_percent / dry_film_um; }

double narrowed_edge(double finished, double build, double taper) {
  return finished - 2 * build / std::cos(taper) + 2 * build * std::tan(taper);
}

double least_edge(double build, double taper) { return 2 * build * (1 - std::sin(taper)) / std::cos(taper); }

Wetted wetted_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                 const std::vector<target::TargetSection>& targets, const std::vector<Piece>& surface, double build) {
  const auto fractions = chord_fractions(400);
  const auto cuts = slices(job, measured, targets, fractions, 4);
  Wetted out;
  for (const Slice& slice : cuts) {
    out.faces += girth(slice.target, fractions) * slice.weight / mm2_per_m2;
    out.height += slice.weight / 1000;
  }
  if (job.workshop.coat_tip && !cuts.empty()) out.tip = section_area(cuts.back().target, fractions) / mm2_per_m2;
  if (job.workshop.coat_top && !cuts.empty()) out.top = section_area(cuts.front().target, fractions) / mm2_per_m2;
  out.all = out.faces + out.tip + out.top;
  double filled = 0, sum = 0;
  for (const Piece& piece : surface) {
    sum += piece.area;
    if (piece.depth > build + no_filler) filled += piece.area;
  }
  out.filled = sum > 0 ? out.faces * filled / sum : 0;
  const double bare = job.workshop.bare_percent.value_or(job.coating_to_strip > 0 ? 100 : 0) / 100;
  out.bare = (out.all - out.filled) * bare;
  out.old = out.all - out.filled - out.bare;
  out.patches = std::min(job.workshop.support_patches_m2, out.all);
  return out;
}

Coats coats_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<target::TargetSection>& targets, const Zones& zones, const std::vector<Piece>& surface) {
  Coats out;
  out.build = build_of(job);
  out.wetted = wetted_of(job, measured, targets, surface, out.build);
  out.pinhole_litres = out.wetted.filled * job.workshop.pinhole_litres_per_m2 / job.workshop.kept();
  for (const job::Coat& coat : job.coats) out.coats.push_back(plan_coat(job, coat, out.wetted));
  out.edges = edges_of(targets, out.build);
  if (job.nose_glass) out.nose_glass = nose_glass_of(job, measured, zones, surface, out.build);
  return out;
}

std::vector<Edge> edges_of(const std::vector<target::TargetSection>& targets, double build) {
  std::vector<Edge> out;
  for (const auto& target : targets) {
    const double x = target.trailing_edge_x();
    const double tan = -(target.slope(Face::port, x) + target.slope(Face::starboard, x)) / 2;
    const double beta = std::atan(tan);
    Edge edge{target.station, target.trailing_edge_thickness, build, beta * degrees, 0, 0,
              false,          target.leading_edge_radius,     false};
    edge.least = least_edge(build, beta);
    edge.closes = build > 0 && edge.finished <= edge.least;
    edge.before_coats = edge.closes ? 0 : narrowed_edge(edge.finished, build, beta);
    edge.nose_too_sharp = target.skeg == 0 && edge.nose_radius < build;
    out.push_back(edge);
  }
  return out;
}

std::vector<Fault> faults_of(const job::Job& job, const Coats& coats) {
  std::vector<Fault> out;
  for (const Edge& edge : coats.edges) {
    if (!edge.closes) continue;
    const auto station =
        std::find_if(job.stations.begin(), job.stations.end(), [&](const auto& one) { return one.name == edge.station; });
    const Place place = station == job.stations.end() ? Place{job.file, 0} : job::place_of(*station, {"trailing_edge_thickness"});
    const auto mm = [&](double value) { return both_units(value, job.units); };
    std::string least = in_unit(last_figure_up(edge.least, LengthUnit::mm), LengthUnit::mm);
    if (job.units != LengthUnit::mm) least += " (" + in_unit(last_figure_up(edge.least, job.units), job.units) + ")";
    out.push_back({place,
                   "the coats are " + mm(edge.build) + " a side, and the trailing edge of station " + edge.station + " at " +
                       mm(edge.finished) + " closes to a point under them",
                   "make \"trailing_edge_thickness\" " + least + " at least, or the coats thinner"});
  }
  return out;
}

std::vector<Warning> warnings_of(const Coats& coats) {
  std::vector<Warning> out;
  for (const Edge& edge : coats.edges) {
    if (!edge.nose_too_sharp) continue;
    out.push_back({"nose-below-coats", "station " + edge.station,
                   "the nose radius of " + fixed(edge.nose_radius, 2) + " mm is less than the " + fixed(edge.build, 2) +
                       " mm of coats: before coats the leading edge must stand further back, and no coat restores it"});
  }
  for (const CoatPlan& coat : coats.coats) {
    if (!coat.solids_estimated) continue;
    out.push_back({"solids-estimated", "coat " + coat.name,
                   "neither its solids nor its spreading rate are given: 50 % by volume is taken; the data sheet has it"});
  }
  return out;
}

}  // namespace fairblade::fill
