// Litres with their ranges, mixes, passes and batches.
#include <algorithm>

#include "base/text.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using fill::ZoneAmount;

html::Cell litres_cell(double value) { return html::number(value > 0 && value < 0.005 ? "< 0.01 L" : litres(value)); }

// A column of the table of litres; one that is nothing everywhere is left out.
struct Column {
  const char* heading;
  double ZoneAmount::*value;
};

std::string litres_table(const Plan& plan) {
  const fill::Zones& zones = plan.work.zones;
  static const std::vector<Column> after_range{{"Above and below the stations", &ZoneAmount::beyond},
                                               {"Less: coats fill it", &ZoneAmount::taken_by_coats},
                                               {"Less: glass fills it", &ZoneAmount::taken_by_glass},
                                               {"Stays on the blade as filler", &ZoneAmount::filler},
                                               {"Sanded off", &ZoneAmount::sanding},
                                               {"Left in pots and on tools", &ZoneAmount::loss},
                                               {"To mix", &ZoneAmount::to_mix}};
  std::vector<std::string> headings{"Zone", "Between the stations", "19 times in 20 between"};
  std::vector<Column> columns;
  for (const Column& one : after_range) {
    if (!(zones.whole.*one.value > 0) && one.value != &ZoneAmount::to_mix) continue;
    columns.push_back(one);
    headings.emplace_back(one.heading);
  }
  html::Table table("Litres of filler", headings);
  const auto row = [&](const std::string& name, const ZoneAmount& zone) {
    const std::string range = zone.high >= 0.005 ? fixed(zone.low, 2) + " and " + fixed(zone.high, 2) + " L"
                              : zone.high > 1e-6 ? litres(zone.high)
                                                 : "nothing to add";
    std::vector<html::Cell> cells{html::words(name), litres_cell(zone.net), html::number(range)};
    for (const Column& one : columns) cells.push_back(litres_cell(zone.*one.value));
    table.row(std::move(cells));
  };
  for (const ZoneAmount& zone : zones.by_zone) row(capital(fill::name_of(zone.zone)), zone);
  row("Whole blade", zones.whole);
  return table.html();
}

std::string zone_bounds(const Plan& plan) {
  const auto& bounds = plan.work.zones.bounds;
  return "The leading edge is the first " + trimmed(100 * bounds.leading_edge, 1) +
         " % of the chord, the trailing edge the last " + trimmed(100 * bounds.trailing_edge, 1) +
         " %, each with what it is built out; the faces are what is between. ";
}

std::string floating_words(const fill::Floating& floating) {
  const double in_water = floating.weight_in_water;
  return "Cured, the filler adds " + grams(floating.weight_added) + " to the blade. It displaces " +
         (floating.buoyancy_gained >= 0 ? grams(floating.buoyancy_gained) + " more"
                                        : grams(-floating.buoyancy_gained) + " less") +
         " of sea water than now, what is taken off counted in, so in the water the blade gets " + grams(std::abs(in_water)) +
         (in_water >= 0 ? " heavier" : " lighter") + ". Coats, and the weight of what is taken off, are not in that.";
}

std::string ratio_words(const std::array<double, 2>& ratio) { return trimmed(ratio[0], 1) + " : " + trimmed(ratio[1], 1); }

std::string ml(double litres) { return fixed(1000 * litres, 0) + " mL"; }

}  // namespace

std::string litres_part(const Plan& plan) {
  const fill::Volumes& v = plan.volumes;
  const ZoneAmount& whole = plan.work.zones.whole;
  std::string out = html::paragraph(
      "Between the first and the last station the blade takes " + litres(v.add) + " and gives up " + litres(v.remove) + ". " +
      (whole.high >= 0.005
           ? "The readings are not perfect, so the true number to add lies " + range_words(whole.low, whole.high) + "; " +
                 litres(v.may_be_reading_error) + " of it may be nothing but reading error. "
           : std::string()) +
      zone_bounds(plan));
  if (plan.work.before_coats) out += html::paragraph(capital(before_coats_words(plan)) + ".");
  out += litres_table(plan);
  out += html::paragraph(
      "Sanding allowance and loss are set in the job's \"workshop\"; buy for what is to mix, not for what stays.", "aside");
  const auto missing = not_included(plan);
  if (!missing.empty()) out += html::paragraph("Not included: " + listed(missing) + ".");
  return out;
}

std::string mix_part(const Plan& plan) {
  html::Table table("To weigh in all, by zone", {"Zone", "Paste", "Resin", "Hardener", "Powder", "Resin to hardener by weight",
                                                 "by volume", "1 L of paste weighs"});
  bool estimated = false;
  for (const auto& one : plan.work.mixes) {
    if (!(one.mix.litres >= 0.005)) continue;
    const fill::Mix& mix = one.mix;
    estimated |= mix.other_ratio_estimated;
    table.row({html::words(capital(fill::name_of(one.zone))), html::number(litres(mix.litres) + ", " + grams(mix.paste_kg)),
               html::number(grams(mix.resin_kg) + " (" + ml(mix.resin_litres) + ")"),
               html::number(grams(mix.hardener_kg) + " (" + ml(mix.hardener_litres) + ")"),
               html::number(grams(mix.powder_kg) + " (" + ml(mix.powder_litres) + ")"),
               html::number(ratio_words(mix.ratio_by_weight)), html::number(ratio_words(mix.ratio_by_volume)),
               html::number(fixed(mix.paste_density, 2) + " kg")});
  }
  if (table.empty()) return html::paragraph("Nothing is filled, so nothing is mixed.");
  std::string out = table.html();
  out += html::paragraph(
      "Weigh the powder, never scoop it: the mL behind it are what its grains take up in the paste, and a scoop of loose "
      "powder is mostly air, so several times that. What the data sheets say comes before any "
      "number here that the list of defaults names." +
          std::string(estimated ? " The densities of resin and hardener apart are estimates, so the ratio that you did not give, "
                                  "and the millilitres, are estimates too."
                                : ""),
      "aside");
  return out + html::paragraph(floating_words(plan.work.floating));
}

std::string passes_part(const Plan& plan) {
  const LengthUnit unit = plan.job.units;
  html::Table table("Passes", {"Pass", "Depth at most (mm)", "Still to come over it (mm)", "To mix", "At stations"});
  std::string cores;
  for (const auto& zone : plan.work.passes) {
    for (const auto& pass : zone.passes) {
      table.row({html::words(capital(fill::name_of(zone.zone)) + " " + std::to_string(pass.number) + " of " +
                             std::to_string(zone.passes.size())),
                 html::length(pass.depth, unit), html::length(pass.left_over, unit), litres_cell(pass.litres),
                 html::words(pass.stations.empty() ? "between stations" : listed(pass.stations))});
    }
    if (!zone.core) continue;
    cores += html::paragraph("Deeper than " + both_units(fill::core_from, unit) + " (" + fill::name_of(zone.zone) +
                             "): a board of wood or foam " + both_units(zone.core->thickness, unit) + " thick, bonded in over " +
                             fixed(zone.core->area, 3) + " m² under " + both_units(zone.core->cover, unit) +
                             " of filler, would save " + litres(zone.core->filler_saved) + " and leave " +
                             counted(static_cast<std::size_t>(zone.core->passes_after), "pass", "passes") +
                             ". The numbers on this page are without it.");
  }
  if (table.empty()) return {};
  return html::paragraph(
             "Pass 1 goes into the deepest places only, the last one over everything that is filled. Depths count the sanding "
             "allowance in and the coats out.") +
         table.html() + cores;
}

std::string batches_part(const Plan& plan) {
  html::Table table("One batch", {"For", "Batches", "One batch", "Resin", "Hardener", "Powder", "Workable for", "To spread it"});
  bool smaller = false, too_little = false;
  for (const auto& one : plan.work.batches) {
    if (!(one.batch_g > 0)) continue;
    if (one.batch_g < least_batch_g) {
      too_little = true;
      continue;
    }
    smaller |= one.smaller_for_time;
    const auto g = [](double value) { return fixed(value, value < 20 ? 1 : 0) + " g"; };
    const auto both = [&](double weight, double volume) {
      return g(weight) + " (" + fixed(volume, volume < 20 ? 1 : 0) + " mL)";
    };
    table.row({html::words(capital(fill::name_of(one.zone)) + ", pass " + std::to_string(one.pass)),
               html::number(std::to_string(one.count)), html::number(g(one.batch_g)),
               html::number(both(one.resin_g, one.resin_ml)), html::number(both(one.hardener_g, one.hardener_ml)),
               html::number(both(one.powder_g, one.powder_ml)), html::number(minutes_words(one.minutes)),
               html::number(minutes_words(one.spread_minutes))});
  }
  if (table.empty()) return {};
  const job::Workshop& shop = plan.job.workshop;
  return html::paragraph(
             "At " + trimmed(shop.temperature, 1) + " °C in the workshop, no batch over " + trimmed(shop.batch_limit_g, 0) +
             " g, spread at " + trimmed(1000 * shop.spread_kg_per_minute, 0) + " g a minute." +
             (smaller ? " Where a batch is smaller than that, it is so that it can be spread before it goes off." : "")) +
         table.html() +
         (too_little ? html::paragraph("Where less than " + trimmed(least_batch_g, 0) +
                                           " g are wanted, take them from another mix of the same paste.",
                                       "aside")
                     : std::string()) +
         html::paragraph(
             "Pot life halves for each 10 °C warmer (common practice), and is shorter in a bigger pot: a wide tray "
             "keeps it cooler.",
             "aside");
}

}  // namespace fairblade::report
