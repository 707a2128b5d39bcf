// The screen's account of a plan.
#include <algorithm>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/text.hpp"
#include "report/along.hpp"
#include "report/layout.hpp"
#include "report/report.hpp"
#include "report/water.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

std::string ratio_words(const form::FittedForm& fitted) {
  const std::string value = fixed(100 * fitted.form.thickness_ratio, 2);
  if (fitted.thickness_ratio_error < 0) return value + " ± ?";
  return value + " ± " + fixed(100 * fitted.thickness_ratio_error, 2);
}

std::string deepest_words(const fill::Deepest& deepest, const section::MeasuredSection& measured, LengthUnit unit) {
  if (deepest.depth <= 0) return "none";
  return number_in_unit(deepest.depth, unit) + " at " + number_in_unit(deepest.x, unit) + " " +
         side_words(measured, deepest.face);
}

std::string area_words(double mm2, LengthUnit unit) {
  const double side = millimetres_in(unit);
  return fixed(mm2 / (side * side), unit == LengthUnit::mm ? 0 : 2);
}

void station_row(const Plan& plan, std::size_t k, LengthUnit unit, bool first, Table& table) {
  const auto& measured = plan.measured[k];
  const auto& fitted = plan.fitted[k];
  const auto& change = plan.changes[k];
  table.row({first ? on_one_line(measured.station) : "", std::string(name_of(unit)), first ? nearest_form(plan, k) : "",
             first ? ratio_words(fitted) : "", number_in_unit(fitted.rms, unit), deepest_words(change.add, measured, unit),
             deepest_words(change.removal, measured, unit), area_words(change.add_area, unit),
             area_words(change.remove_area, unit)});
}

// mm, and the job's own unit in a row beneath.
std::string station_table(const Plan& plan) {
  using enum Table::Align;
  Table table({left, left, left, right, right, left, left, right, right});
  table.row({"station", "unit", "nearest", "t, % of chord", "rms", "deepest add", "deepest removal", "add", "take off"});
  table.row({"", "", "form", "", "miss", "(depth at x)", "(depth at x)", "(area)", "(area)"});
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    station_row(plan, k, LengthUnit::mm, true, table);
    if (plan.job.units != LengthUnit::mm) station_row(plan, k, plan.job.units, false, table);
  }
  return table.text();
}

std::string volume_lines(const Plan& plan) {
  const fill::Volumes& v = plan.volumes;
  std::string out = wrapped("  " + litres(v.add) + " ± " + litres(v.add_error) + " to add, " + litres(v.remove) +
                                " to take off, between the first and the last station; " + litres(v.may_be_reading_error) +
                                " of the filler may be nothing but reading error",
                            4);
  if (plan.measured.front().down > 0) {
    out += wrapped("  above the first station: " + litres(v.above_add) + " to add, " + litres(v.above_remove) +
                       " to take off, its section carried on unchanged",
                   4);
  }
  if (v.has_below) {
    out += wrapped("  below the last station: " + litres(v.below_add) + " to add, " + litres(v.below_remove) +
                       " to take off, its section carried on unchanged",
                   4);
  }
  if (plan.work.before_coats) out += wrapped("  " + before_coats_words(plan), 4);
  const fill::Zones& zones = plan.work.zones;
  out += wrapped(
      "  to mix: " + litres(zones.whole.to_mix) + ", with " + litres(zones.whole.sanding) + " sanding allowance and " +
          litres(zones.whole.loss) + " left in pots and on tools" +
          (zones.whole.taken_by_coats >= 0.005 ? ", less " + litres(zones.whole.taken_by_coats) + " that the coats will fill"
                                               : ""),
      4);
  for (const std::string& one : not_included(plan)) out += wrapped("  not included: " + one, 4);
  return out;
}

// Grams to weigh for each zone; nothing for a zone that takes none.
std::string mix_lines(const Plan& plan) {
  std::string out;
  for (std::size_t k = 0; k < plan.work.mixes.size(); ++k) {
    const fill::ZoneMix& one = plan.work.mixes[k];
    if (one.mix.litres < 0.005) continue;
    out += wrapped("  " + std::string(fill::name_of(one.zone)) + ": " + litres(one.mix.litres) +
                       " of paste: " + grams(one.mix.resin_kg) + " resin, " + grams(one.mix.hardener_kg) + " hardener, " +
                       grams(one.mix.powder_kg) + " powder; " + counted(plan.work.passes[k].passes.size(), "pass", "passes") +
                       ", " + counted(batches_in(plan, one.zone), "batch", "batches"),
                   4);
  }
  if (out.empty()) return {};
  return "\nMixing (estimates: what the data sheets say comes first)\n" + out;
}

std::string warning_lines(const std::vector<Warning>& warnings) {
  if (warnings.empty()) return {};
  std::string out = "\nWarnings (" + std::to_string(warnings.size()) + ")\n";
  for (const Warning& one : warnings) out += wrapped("  " + on_one_line(one.where + ": " + one.text), 4);
  return out;
}

// The defaults that shape this target by name, the rest by number.
std::string default_lines(const job::Job& job) {
  const auto& defaults = job.defaults;
  std::vector<std::string_view> shaping{"reading_error", "target.leading_edge_radius", "target.trailing_edge_thickness",
                                        "target.max_removal"};
  const auto edges_only = std::mem_fn(&job::Station::edges_only);
  if (std::any_of(job.stations.begin(), job.stations.end(), edges_only)) shaping.push_back("target.keep");
  if (!std::all_of(job.stations.begin(), job.stations.end(), edges_only))
    shaping.insert(shaping.end(), {"target.thickness", "target.max_thickness_at"});
  std::string named;
  std::size_t others = 0;
  for (const DefaultUsed& one : defaults) {
    if (std::find(shaping.begin(), shaping.end(), one.key) == shaping.end()) {
      ++others;
    } else {
      named += (named.empty() ? "" : ", ") + one.key + " " + one.value;
    }
  }
  if (defaults.empty()) return {};
  if (others > 0) named += (named.empty() ? "" : ", and ") + std::to_string(others) + " more";
  return "\nDefaults used (all of them are in plan.json)\n" + wrapped("  " + on_one_line(named), 4);
}

}  // namespace

std::string summary(const Plan& plan) {
  std::string out = on_one_line(plan.job.name) + "\n\n" + station_table(plan);
  out += "\nHow near the blade is to a standard section\n";
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    out += wrapped("  " + on_one_line(plan.measured[k].station) + ": " + nearness(plan, k), 4);
  }
  out += "\nFiller\n" + volume_lines(plan) + mix_lines(plan);
  out += "\nAlong the blade\n";
  for (const std::string& one : along_the_blade(plan)) out += wrapped("  " + one, 4);
  if (!plan.water.stations.empty()) out += "\nIn the water, before and after\n" + water_text(plan);
  return out + warning_lines(warnings_for_people(plan)) + default_lines(plan.job);
}

}  // namespace fairblade::report
