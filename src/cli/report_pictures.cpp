#include "cli/report_pictures.hpp"

#include <utility>

#include "drawing/section_picture.hpp"
#include "emit/svg.hpp"

namespace fairblade::cli {

report::ReportPictures report_pictures(const report::Plan& plan, std::string map, std::string water) {
  report::ReportPictures out;
  out.maps.push_back({"To print: highs-and-lows.svg, or the page of that name in print.html.", std::move(map)});
  out.water = {"To print: water.svg.", std::move(water)};
  for (const std::size_t k : report::stations_shown(plan)) {
    const auto sheet = drawing::draw_section_picture(plan.job, plan.measured[k], plan.targets[k], plan.changes[k]);
    out.stations.push_back({k, {"Full size: in the folder sections.", emit::to_svg(sheet)}});
  }
  return out;
}

}  // namespace fairblade::cli
