// The order of work as a list to tick, and how long a flat block may be.
#include <algorithm>
#include <map>
#include <optional>

#include "base/text.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/order_words.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

// The shorter of the two faces' blocks, a row a station.
std::string block_table(const Plan& plan) {
  std::map<std::string, std::map<double, std::optional<double>>> stations;
  std::vector<double> places;
  for (const auto& one : plan.work.schedule.blocks) {
    auto& block = stations[one.station][one.chord_fraction];
    if (one.block && (!block || *one.block < *block)) block = one.block;
    if (std::find(places.begin(), places.end(), one.chord_fraction) == places.end()) places.push_back(one.chord_fraction);
  }
  if (stations.empty()) return {};
  std::vector<std::string> headings{"Station"};
  for (const double place : places) headings.push_back(trimmed(100 * place, 0) + " %");
  const bool own = plan.job.units != LengthUnit::mm;
  html::Table table("How long a flat block may be across the blade, in mm" +
                        (own ? " and beneath them in " + std::string(name_of(plan.job.units)) : "") +
                        ": it leaves a flat of 0.2 mm at most",
                    headings, html::Table::Kind::narrow);
  for (const std::size_t k : stations_shown(plan)) {
    std::vector<html::Cell> cells{html::words(plan.measured[k].station)};
    for (const double place : places) {
      const auto& block = stations[plan.measured[k].station][place];
      if (!block) {
        cells.push_back(html::number("any"));
        continue;
      }
      std::string mm = fixed(*block, 0);
      if (own) mm += "<br/><small>" + fixed(*block / millimetres_in(plan.job.units), 1) + "</small>";
      cells.push_back({mm, true});
    }
    table.row(std::move(cells));
  }
  return table.html() +
         html::paragraph(
             "Places are per cent of the target's chord, from its leading edge; \"any\" where the face is flat or hollow.",
             "aside");
}

}  // namespace

std::string order_part(const Plan& plan) {
  if (plan.work.order.empty()) return {};
  std::string out = html::paragraph("Tick each square when it is done.") + "<ol class=\"work\">\n";
  for (const fill::Step& step : plan.work.order) {
    const StepWords words = words_of(plan, step);
    out += "<li><p><strong>" + html::text(words.title) + ".</strong></p>";
    for (const std::string& one : words.sentences) out += "<p>" + html::text(one) + "</p>";
    out += "</li>\n";
  }
  return out + "</ol>\n" + block_table(plan);
}

}  // namespace fairblade::report
