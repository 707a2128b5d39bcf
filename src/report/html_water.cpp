// Before and after in the water.
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/water.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

std::string table_html(const PlainTable& table) {
  html::Table out(table.heading, table.rows.front(),
                  table.rows.front().size() > 3 ? html::Table::Kind::wide : html::Table::Kind::narrow);
  for (std::size_t k = 1; k < table.rows.size(); ++k) {
    std::vector<html::Cell> cells{html::words(table.rows[k].front())};
    for (std::size_t c = 1; c < table.rows[k].size(); ++c) cells.push_back(html::number(table.rows[k][c]));
    out.row(std::move(cells));
  }
  return out.html();
}

}  // namespace

std::string water_part(const Plan& plan, const ReportPictures& pictures) {
  if (plan.water.stations.empty()) return {};
  const WaterPage page = water_page(plan);
  std::string out;
  for (const std::string& each : page.sentences) out += html::paragraph(each);
  out += html::paragraph(page.verdict) + html::paragraph(page.caution, "aside");
  if (!pictures.water.svg.empty()) {
    out += html::whole_blade(pictures.water.svg, pictures.narrow_water.svg, "w-", pictures.water.title);
  }
  out += table_html(page.blade) + table_html(page.stations);
  out += html::subheading("What yards do about a tone") + html::list(page.edge_options);
  return out + html::subheading("What this does not know") + html::list(page.limits);
}

}  // namespace fairblade::report
