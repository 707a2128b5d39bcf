// Coats, cloth and part-packs; the shopping list and what a year costs.
#include <algorithm>

#include "base/text.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

std::string m2(double area) { return fixed(area, 2) + " m²"; }

std::string part_of_blade(job::CoatedPart on) {
  switch (on) {
    case job::CoatedPart::filled: return "what is filled";
    case job::CoatedPart::bare: return "bare places";
    case job::CoatedPart::old: return "old coating";
    case job::CoatedPart::all: break;
  }
  return "all of it";
}

std::string wetted_words(const fill::Wetted& wetted) {
  std::string out = "The finished blade has " + m2(wetted.all) + " of surface";
  std::vector<std::string> ends;
  if (wetted.tip > 0) ends.push_back(fixed(wetted.tip, 3) + " m² of tip");
  if (wetted.top > 0) ends.push_back(fixed(wetted.top, 3) + " m² of top");
  if (!ends.empty()) out += ", with " + listed(ends);
  std::vector<std::string> kinds;
  for (const auto& [area, kind] : {std::pair{wetted.filled, " filled"}, {wetted.bare, " bare"}, {wetted.old, " as it is"}}) {
    if (area >= 0.005) kinds.push_back(m2(area) + kind);
  }
  return out + (kinds.empty() ? "." : ": " + listed(kinds) + ".");
}

std::string paint_table(const Plan& plan) {
  html::Table table("Coats of paint", {"Coat", "Layers", "On", "Area", "One litre covers", "One layer", "All layers, with loss",
                                       "Thinner", "Dry, all layers", "Packs"});
  for (const auto& one : plan.work.coats.coats) {
    if (one.cloth) continue;
    table.row({html::words(one.name), html::number(std::to_string(one.layers)), html::words(part_of_blade(one.on)),
               html::number(m2(one.area)),
               html::words(fixed(one.spread, 1) + " m²" +
                           (one.spread_from_sheet  ? ", as given"
                            : one.solids_estimated ? ", a guess"
                                                   : "")),
               html::number(litres(one.litres_a_layer)), html::number(litres(one.litres)),
               html::number(one.thinner_litres > 0 ? fixed(1000 * one.thinner_litres, 0) + " mL" : "none"),
               html::number(fixed(1000 * one.build, 0) + " µm"),
               html::number(one.packs > 0 ? fixed(one.packs_used, 2) + ", so buy " + std::to_string(one.packs)
                                          : "no pack size given")});
  }
  return table.html();
}

std::string cloth_table(const Plan& plan) {
  const LengthUnit unit = plan.job.units;
  html::Table table("Glass over the filler", {"Cloth", "Layers", "Cloth to cut", "Off the roll", "Roll width (mm)",
                                              "Resin and hardener to wet it", "Thickness (mm)"});
  for (const auto& one : plan.work.coats.coats) {
    if (!one.cloth) continue;
    table.row({html::words(one.name), html::number(std::to_string(one.layers)), html::number(m2(one.cloth->area)),
               html::number(fixed(one.cloth->metres, 2) + " m"), html::length(one.cloth->width, unit),
               html::number(grams(one.cloth->resin_kg)), html::length(one.build, unit)});
  }
  return table.html();
}

std::string part_pack_table(const Plan& plan) {
  html::Table table("Part-packs: one mix", {"Coat", "Mixes a layer", "One mix", "of a pack", "Base", "Hardener", "Thinner",
                                            "Use within", "To put it on"});
  for (const auto& one : plan.work.coats.coats) {
    if (!one.part_pack) continue;
    const fill::PartPack& part = *one.part_pack;
    const auto weight = [](const std::optional<double>& g) {
      return html::number(g ? fixed(*g, *g < 20 ? 1 : 0) + " g" : "not given");
    };
    table.row({html::words(one.name), html::number(std::to_string(part.mixes)),
               html::number(fixed(1000 * part.litres, 0) + " mL" + (part.grams ? ", " + fixed(*part.grams, 0) + " g" : "")),
               html::number(part.of_a_pack > 0 ? fixed(100 * part.of_a_pack, 0) + " %" : "no pack size given"),
               weight(part.base_g), weight(part.hardener_g),
               html::number(part.thinner_ml > 0 ? fixed(part.thinner_ml, 0) + " mL" : "none"),
               html::number(minutes_words(part.minutes)), html::number(minutes_words(part.minutes_to_use))});
  }
  return table.html();
}

std::string edge_table(const Plan& plan) {
  const LengthUnit unit = plan.job.units;
  const auto& coats = plan.work.coats;
  if (!(coats.build > 0)) return {};
  html::Table table("The trailing edge", {"Station", "Before coats (mm)", "Finished (mm)"}, html::Table::Kind::narrow);
  for (const std::size_t k : stations_shown(plan)) {
    const fill::Edge& edge = coats.edges[k];
    table.row({html::words(edge.station), html::length(edge.before_coats, unit), html::length(edge.finished, unit)});
  }
  return html::paragraph("Over the filler the coats are " + both_units(coats.build, unit) +
                         " a side when dry. They wrap the trailing edge's face too, so fill and cut it to the narrower width:") +
         table.html();
}

// "14 × 181, 49 and 43": strips that print alike are counted.
std::string strip_words(const std::vector<double>& widths, LengthUnit unit) {
  std::vector<std::pair<std::string, int>> runs;
  for (const double width : widths) {
    std::string words = unit == LengthUnit::mm ? fixed(width, 0) : both_units(width, unit);
    if (runs.empty() || runs.back().first != words) runs.emplace_back(std::move(words), 0);
    ++runs.back().second;
  }
  std::vector<std::string> out;
  for (const auto& [words, count] : runs) out.push_back(count > 1 ? std::to_string(count) + " × " + words : words);
  return listed(out, 40);
}

std::string nose_glass_part(const Plan& plan) {
  const auto& nose = plan.work.coats.nose_glass;
  if (!nose) return {};
  const LengthUnit unit = plan.job.units;
  html::Table table("Strips of cloth round the nose",
                    {"Station", "To build up (mm)", "Layers", "Strip widths, innermost first (mm)",
                     "Left for filler at the deepest place (mm)"});
  for (const std::size_t k : stations_shown(plan)) {
    const auto& one = nose->stations[k];
    const std::string widths = one.strip_widths.empty() ? "none" : strip_words(one.strip_widths, unit);
    table.row({html::words(one.station), html::length(one.depth, unit), html::number(std::to_string(one.layers)),
               html::words(widths), html::length(one.left_for_filler, unit)});
  }
  const std::string heading = html::subheading("The nose in glass, then filler");
  if (!(nose->cloth_area > 0)) {
    return heading + html::paragraph("Nowhere is the nose so far short that one layer of the cloth fits under " +
                                     both_units(nose->cover, unit) + " of filler: it is all filler.");
  }
  return heading +
         html::paragraph("One layer of the cloth is " + fixed(nose->layer, 2) + " mm thick when wetted out. At least " +
                         both_units(nose->cover, unit) + " over it are left for filler to shape. In all " +
                         fixed(nose->cloth_area, 2) + " m² of cloth and " + grams(nose->resin_kg) +
                         " of resin and hardener on the blade.") +
         table.html();
}

std::string money(double value, const std::string& currency) {
  return fixed(value, 2) + (currency.empty() ? "" : " " + currency);
}

std::string amount(const fill::ShoppingItem& item) {
  if (item.unit == "kg" && item.needed < 1) return grams(item.needed);
  return fixed(item.needed, 2) + " " + item.unit;
}

std::string years_words(const Plan& plan) {
  const auto& years = plan.work.year_cost;
  if (!years) return {};
  const std::string& currency = plan.job.packs.currency;
  return html::paragraph("A year of " + years->cheaper + " costs " + money(years->cheaper_a_year, currency) + ", a year of " +
                         years->dearer + " " + money(years->dearer_a_year, currency) + ". The dearer must last " +
                         trimmed(years->break_even_years, 1) + " years to cost no more a year.");
}

}  // namespace

std::string coats_part(const Plan& plan) {
  const auto& coats = plan.work.coats;
  std::string out = html::paragraph(wetted_words(coats.wetted));
  if (coats.pinhole_litres > 0) {
    out += html::paragraph("Neat epoxy for the pinholes of what is filled: " + litres(coats.pinhole_litres) +
                           ", loss included (" + trimmed(plan.job.workshop.pinhole_litres_per_m2, 3) + " L to the m²).");
  }
  if (plan.job.coats.empty())
    out += html::paragraph("The job names no coats (\"coats\"), so nothing is planned over the filler.");
  out += nose_glass_part(plan) + cloth_table(plan) + paint_table(plan) + part_pack_table(plan);
  if (coats.wetted.patches > 0) {
    out += html::paragraph(m2(coats.wetted.patches) +
                           " under the supports are coated after the rest, when the blade can be turned.");
  }
  return out + edge_table(plan);
}

std::string shopping_part(const Plan& plan) {
  const auto& shopping = plan.work.shopping;
  html::Table table("To buy", {"What", "Needed", "Packs", "Cost"}, html::Table::Kind::narrow);
  for (const auto& one : shopping.items) {
    const std::string packs =
        one.packs > 0 ? std::to_string(one.packs) + " × " + trimmed(*one.pack_size, 3) + " " + one.unit : "-";
    table.row({html::words(capital(one.what)), html::number(amount(one)), html::number(packs),
               html::number(one.cost ? money(*one.cost, shopping.currency) : "-")});
  }
  if (table.empty()) return html::paragraph("Nothing to buy.");
  std::string out = table.html();
  out += html::paragraph("A dash where the job gives no pack or no price.", "aside");
  if (shopping.cost) {
    out += html::paragraph("What has a price comes to " + money(*shopping.cost, shopping.currency) +
                           (shopping.all_priced ? ": that is everything." : "; not everything has one."));
  }
  for (const auto& one : plan.work.coats.coats) {
    if (one.cost_a_year)
      out += html::paragraph(one.name + ": " + money(*one.cost_a_year, shopping.currency) + " a year over its life.");
  }
  out += years_words(plan);
  return out +
         html::paragraph("And gloves, trays, spreaders, abrasive paper, masks and soap: they are not counted here.", "aside");
}

}  // namespace fairblade::report
