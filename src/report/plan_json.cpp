// plan.json. The library writes the shortest digits that read back the same, and null for what is not a number.
#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "fill/stages.hpp"
#include "report/json_values.hpp"
#include "report/report.hpp"
#include "report/water_json.hpp"
#include "report/words.hpp"
#include "report/work_json.hpp"

namespace fairblade::report {
namespace {

Json measured_of(const section::Figures& figures) {
  return {{"area", figures.area},
          {"max_thickness", figures.max_thickness},
          {"max_thickness_at", figures.max_thickness_at},
          {"leading_edge_radius", figures.leading_edge_radius},
          {"leading_edge_radius_error", figures.leading_edge_radius_error},
          {"trailing_edge_thickness", figures.trailing_edge_thickness},
          {"lopsided", figures.lopsided}};
}

Json fit_of(const form::FittedForm& fitted) {
  const auto error = fitted.thickness_ratio_error;  // negative: too few readings to tell
  return {{"form", form::name_of(fitted.form)},
          {"thickness_ratio", fitted.form.thickness_ratio},
          {"thickness_ratio_error", error < 0 ? Json(nullptr) : Json(error)},
          {"rms", fitted.rms},
          {"typical", fitted.typical},
          {"worst", {{"residual", fitted.worst.residual}, {"x", fitted.worst.x}, {"side", section::name_of(fitted.worst.face)}}},
          {"centre_shift", fitted.centre_shift},
          {"skew_degrees", fitted.skew_degrees},
          {"modified",
           {{"form", form::name_of(fitted.modified)},
            {"thickness_ratio", fitted.modified.thickness_ratio},
            {"leading_edge_index", fitted.modified.leading_edge_index},
            {"max_thickness_at", fitted.modified.max_thickness_at},
            {"rms", fitted.modified_rms}}}};
}

// Places along the chord: 200 even in sqrt(x), and both sides of a step, where a rebuilt edge meets the kept body.
std::vector<double> places_of(const target::TargetSection& target) {
  constexpr double beside = 1e-6;  // mm
  std::vector<double> out;
  for (const double fraction : chord_fractions(199)) out.push_back(target.leading_edge_x + target.chord * fraction);
  for (const auto* joints : {target.joints ? &target.joints->nose : nullptr, target.joints ? &target.joints->tail : nullptr}) {
    if (!joints || !*joints) continue;
    for (const target::Joint& one : **joints) {
      for (const double x : {one.x - beside, one.x + beside}) {
        const bool there = std::any_of(out.begin(), out.end(), [&](double other) { return std::abs(other - x) < beside / 2; });
        if (!there && x > out.front() && x < target.trailing_edge_x()) out.push_back(x);
      }
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

// mm aft of the measured leading edge.
Json curve_of(const target::TargetSection& target) {
  Json x = Json::array(), port = Json::array(), starboard = Json::array();
  for (const double place : places_of(target)) {
    x.push_back(place);
    port.push_back(target.half_breadth(section::Face::port, place));
    starboard.push_back(target.half_breadth(section::Face::starboard, place));
  }
  return {{"x", x}, {"port", port}, {"starboard", starboard}};
}

Json joints_of(const std::array<target::Joint, 2>& joints) {
  Json out = Json::array();
  for (std::size_t k = 0; k < 2; ++k) {
    out.push_back({{"side", k == 0 ? "port" : "starboard"}, {"x", joints[k].x}, {"step", joints[k].step}});
  }
  return out;
}

Json target_of(const target::TargetSection& target) {
  Json out = {{"thickness_ratio", target.thickness_ratio},
              {"chord", target.chord},
              {"ahead", maybe(target.ahead)},
              {"max_thickness_at", target.max_thickness_at},
              {"leading_edge_radius", target.leading_edge_radius},
              {"trailing_edge_thickness", target.trailing_edge_thickness},
              {"area", target.area},
              {"girth", target.girth},
              {"pulled",
               {{"thickness", target.pull.thickness},
                {"leading_edge", target.pull.leading_edge},
                {"trailing_edge", target.pull.trailing_edge}}}};
  if (target.governing) {
    out["governing"] = {{"x", target.governing->x},
                        {"side", section::name_of(target.governing->face)},
                        {"line", target.governing->line},
                        {"thickness_ratio_without", target.governing->thickness_ratio_without}};
  }
  if (target.joints && target.joints->nose) out["nose_joint"] = joints_of(*target.joints->nose);
  if (target.joints && target.joints->tail) out["tail_joint"] = joints_of(*target.joints->tail);
  if (target.left_to > 0) out["leading_edge_left_to"] = target.left_to;
  out["curve"] = curve_of(target);
  return out;
}

Json change_of(const fill::StationChange& change) {
  return {{"add_area", change.add_area},
          {"remove_area", change.remove_area},
          {"deepest_add", change.add.depth},
          {"deepest_add_x", change.add.x},
          {"deepest_add_side", section::name_of(change.add.face)},
          {"deepest_removal", change.removal.depth},
          {"deepest_removal_x", change.removal.x},
          {"deepest_removal_side", section::name_of(change.removal.face)}};
}

// Most of a scanned blade's plan.json: a line each, without a tree made of them, and to a millionth of a mm: to their last
// binary digit they are half as long again.
std::string offsets_of(const fill::Offsets& rows) {
  std::string out = "[";
  const auto append = [&out](const char* key, double mm) {
    out.append(key);
    if (std::isfinite(mm)) append_trimmed(out, mm, 6);
    else out.append("null");
  };
  for (const fill::OffsetRow& row : rows) {  // written otherwise, recheck's quick reader (job/frozen_plan) passes it by
    append(out.size() > 1 ? ",\n  {\"x\": " : "\n  {\"x\": ", row.x);
    out.append(", \"side\": \"").append(section::name_of(row.face));
    append("\", \"measured\": ", row.measured);
    append(", \"target\": ", row.target);
    append(", \"change\": ", row.change());
    out += '}';
  }
  return out + (rows.size() == 0 ? "]" : "\n ]");
}

Json volumes_of(const Plan& plan) {
  const fill::Volumes& v = plan.volumes;
  Json out = {{"add", v.add},
              {"remove", v.remove},
              {"add_error", v.add_error},
              {"may_be_reading_error", v.may_be_reading_error},
              {"above_first_station", {{"add", v.above_add}, {"remove", v.above_remove}}}};
  out["below_last_station"] = v.has_below ? Json{{"add", v.below_add}, {"remove", v.below_remove}} : Json(nullptr);
  const fill::Zones& zones = plan.work.zones;
  out["by_zone"] = {
      {"leading_edge", zones.by_zone[0].net}, {"faces", zones.by_zone[1].net}, {"trailing_edge", zones.by_zone[2].net}};
  out["taken_by_coats"] = zones.whole.taken_by_coats;
  const auto& before = plan.work.before_coats;
  out["before_coats"] = before ? Json{{"build", before->over_old},
                                      {"over_filler", before->over_filler},
                                      {"remove", before->remove},
                                      {"beyond", before->beyond},
                                      {"deepest_removal", before->deepest}}
                               : Json(nullptr);
  out["sanding_allowance"] = zones.whole.sanding;
  out["loss"] = zones.whole.loss;
  out["to_mix"] = zones.whole.to_mix;
  out["not_included"] = not_included(plan);
  return out;
}

Json blade_of(const fill::BladeFigures& figures) {
  return {{"area", figures.area}, {"balance_percent", maybe(figures.balance_percent)}, {"volume", figures.volume}};
}

Json twist_of(const Plan& plan) {
  Json out = {{"centre_station", plan.twist.centre_station},
              {"total_degrees", plan.twist.total_degrees},
              {"lean_degrees", maybe(plan.twist.lean_degrees)},
              {"stations", Json::array()}};
  for (const auto& one : plan.twist.stations) {
    if (!one.known) continue;
    out["stations"].push_back({{"name", one.station},
                               {"degrees", one.twist_degrees},
                               {"degrees_error", one.error_degrees},
                               {"leading_edge_off", one.leading_edge_off},
                               {"trailing_edge_off", one.trailing_edge_off}});
  }
  return out;
}

Json asymmetry_of(const target::Asymmetry& one) {
  if (!one.known) return nullptr;
  return {{"greatest", one.greatest}, {"greatest_x", one.greatest_x}, {"rms", one.rms}, {"add_area_to_make_one", one.add_area}};
}

// What a later recheck needs besides the targets' curves, so that it never has to read the job again.
void add_frozen(const Plan& plan, const std::vector<job::Source>& sources, Json& out) {
  out["units"] = name_of(plan.job.units);
  out["reading_error"] = plan.job.reading_error;
  out["bottom"] = maybe(plan.job.bottom);
  out["stages"] = Json::array();
  for (const fill::Stage& stage : fill::stages_of(plan.job)) {
    out["stages"].push_back({{"name", fill::name_of(stage.kind)}, {"to_come", stage.to_come}, {"surface", stage.surface}});
  }
  out["sources"] = Json::array();
  for (const job::Source& one : sources) out["sources"].push_back({{"file", one.file}, {"fnv1a64", one.digest}});
}

std::string head_of(const Plan& plan, const std::vector<job::Source>& sources, const std::vector<check::Finding>& slips) {
  Json out = {{"fairblade", FAIRBLADE_VERSION}, {"job", plan.job.name}};
  add_frozen(plan, sources, out);
  out["warnings"] = Json::array();
  for (const check::Finding& one : slips) {
    const std::string where = one.station.empty() ? "the readings" : "station " + one.station;
    out["warnings"].push_back({{"code", one.code},
                               {"where", where},
                               {"text", (one.side.empty() ? "" : one.side + ": ") + one.what + ": " + one.remedy}});
  }
  for (const Warning& one : gather_warnings(plan)) {
    out["warnings"].push_back({{"code", one.code}, {"where", one.where}, {"text", one.text}});
  }
  out["defaults"] = Json::object();
  for (const DefaultUsed& one : plan.job.defaults) out["defaults"][one.key] = one.value;
  return left_open(out) + " \"stations\": [\n";
}

std::string station_of(const Plan& plan, std::size_t k) {
  const auto& measured = plan.measured[k];
  const Json out = {{"name", measured.station},
                    {"down", measured.down},
                    {"ahead", maybe(measured.ahead)},
                    {"chord", measured.chord},
                    {"calipers", measured.thickness_only},
                    {"measured", measured_of(measured.figures)},
                    {"fit", fit_of(plan.fitted[k])},
                    {"target", target_of(plan.targets[k])},
                    {"change", change_of(plan.changes[k])},
                    {"asymmetry", asymmetry_of(plan.asymmetry[k])}};
  const bool last = k + 1 == plan.measured.size();
  return left_open(out) + " \"offsets\": " + offsets_of({plan.measured[k], plan.changes[k]}) + (last ? "\n}\n" : "\n},\n");
}

std::string tail_of(const Plan& plan) {
  Json out = {{"volumes", volumes_of(plan)}};
  out["volumes"]["without_governing"] = Json::array();
  for (const auto& one : plan.governing) {
    out["volumes"]["without_governing"].push_back({{"station", plan.measured[one.station].station}, {"add", one.litres_without}});
  }
  out["volumes"]["to_make_sides_one"] = plan.make_one.add_litres;
  add_work(plan, out);
  out["blade"] = {{"before", blade_of(plan.before)},
                  {"after", blade_of(plan.after)},
                  {"wetted_area_m2", plan.work.coats.wetted.all},
                  {"twist", twist_of(plan)}};
  return " ],\n" + left_open(out).substr(2) + " \"water\": ";  // without its opening brace
}

}  // namespace

Pieces plan_json_pieces(const Plan& plan, const std::vector<job::Source>& sources, const check::Findings& findings) {
  const std::size_t stations = plan.measured.size();
  auto water = water_json(plan.water);
  auto slips = check::almost_certain_slips(findings);
  return {stations + water.count + 3,
          [&plan, sources, stations, slips = std::move(slips), water = std::move(water)](std::size_t k) {
            if (k == 0) return head_of(plan, sources, slips);
            if (k <= stations) return station_of(plan, k - 1);
            if (k == stations + 1) return tail_of(plan);
            const std::size_t part = k - stations - 2;
            return part < water.count ? water.piece(part) : "\n}\n";
          }};
}

std::string plan_json(const Plan& plan, const std::vector<job::Source>& sources, const check::Findings& findings) {
  return whole(plan_json_pieces(plan, sources, findings));
}

}  // namespace fairblade::report
