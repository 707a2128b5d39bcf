// Station by station: the picture, what it shows, and the table of offsets.
#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "fill/shown_rows.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/report.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

constexpr std::size_t most_rows = 40;  // of one face

std::string square_words(double mm2, LengthUnit unit) {
  const std::string metric = fixed(mm2 / 100, mm2 < 1000 ? 1 : 0) + " cm²";
  return unit == LengthUnit::inch ? metric + " (" + fixed(mm2 / (mm_per_inch * mm_per_inch), 2) + " in²)" : metric;
}

std::string change_words(const Plan& plan, std::size_t k, const fill::Deepest& deepest, double area) {
  if (!(deepest.depth > 0)) return "nothing";
  return square_words(area, plan.job.units) + " of the section, deepest " + both_units(deepest.depth, plan.job.units) + ", " +
         aft_words(deepest.x, plan.job.units) + ", " + side_words(plan.measured[k], deepest.face);
}

html::Cell change_cell(double mm, LengthUnit unit) {
  if (std::abs(mm) < 0.05) return html::number("0.0");
  html::Cell out = html::length(std::abs(mm), unit);
  out.html = (mm > 0 ? "add " : "off ") + out.html;
  return out;
}

std::string offsets_table(const Plan& plan, std::size_t k, section::Face face) {
  const LengthUnit unit = plan.job.units;
  auto offsets = fill::Offsets(plan.measured[k], plan.changes[k]).of(face);
  const std::size_t all = offsets.size();
  const auto rows = fill::rows_shown(std::move(offsets), most_rows);
  std::string side = side_words(plan.measured[k], face);
  std::string caption = plan.measured[k].station + ", " + side + ": half-breadths";
  if (rows.size() < all)
    caption += "; " + std::to_string(rows.size()) + " of " + std::to_string(all) + " readings, all of them in offsets.csv";
  html::Table table(caption, {"x (mm)", "Now (mm)", "Target (mm)", "Change (mm)"}, html::Table::Kind::narrow);
  bool past = false;
  for (const fill::OffsetRow& row : rows) {
    if (const auto edge = fill::past_of(plan.targets[k], row.x); edge != fill::Past::none) {
      past = true;
      table.row({html::length(row.x, unit), html::length(row.measured, unit),
                 html::words(edge == fill::Past::trailing_edge ? "past the new edge" : "ahead of the new edge"),
                 html::words("")});
      continue;
    }
    table.row({html::length(row.x, unit), html::length(row.measured, unit), html::length(row.target, unit),
               change_cell(row.change(), unit)});
  }
  std::string out = table.html();
  if (past) {
    out += html::paragraph(
        "Past an edge there is no half-breadth to fill or cut to: what stands there goes with the old edge. "
        "At the trailing edge the saw line on the trailing-edge card tells where, at the nose the gauge.",
        "aside");
  }
  return out;
}

std::string station_html(const Plan& plan, std::size_t k, const ReportPictures& pictures) {
  const auto& change = plan.changes[k];
  const auto& measured = plan.measured[k];
  std::string out = "<div class=\"station\">\n" + html::subheading("Station " + measured.station + ", " +
                                                                   both_units(measured.down, plan.job.units) + " below the top");
  out += "<div class=\"shown\">\n<div>\n";
  const auto picture =
      std::find_if(pictures.stations.begin(), pictures.stations.end(), [&](const auto& one) { return one.first == k; });
  if (picture != pictures.stations.end()) {
    out += html::figure(picture->second.svg, "s" + std::to_string(k) + "-", picture->second.title);
  }
  out += html::paragraph("Add: " + change_words(plan, k, change.add, change.add_area) + ".") +
         html::paragraph("Take off: " + change_words(plan, k, change.removal, change.remove_area) + ".") + "</div>\n";
  out += "<div class=\"side-by-side\">\n" + offsets_table(plan, k, section::Face::port);
  if (!measured.thickness_only) out += offsets_table(plan, k, section::Face::starboard);
  return out + "</div>\n</div>\n</div>\n";
}

}  // namespace

std::string stations_part(const Plan& plan, const ReportPictures& pictures) {
  std::string out = html::paragraph(
      "In the pictures forward is to the left. The grey part of a section is what comes off. Under it each face is laid out "
      "flat: hatched upwards is filler to add, grey and crossed downwards is what to take off, and a dot is a reading. At "
      "the very edges a strip is cut where it would run off. In the tables x is how far aft of the leading edge a reading was "
      "taken, and half-breadths are counted from the plane through the stock. A change in the tables is counted straight across "
      "the "
      "blade, the depths beside the pictures square to its surface: close behind the leading edge, where the surface turns, "
      "the first is the greater of the two.");
  if (const std::string words = under_coats_words(plan); !words.empty()) out += html::paragraph(words);
  for (const std::size_t k : stations_shown(plan)) out += station_html(plan, k, pictures);
  return out;
}

}  // namespace fairblade::report
