#include "cli/report_pictures.hpp"

#include <utility>

#include "drawing/section_picture.hpp"
#include "emit/svg.hpp"

namespace fairblade::cli {

StationPictures pictures_of_stations(const report::Plan& plan) {
  StationPictures out;
  for (const std::size_t k : report::stations_shown(plan)) {
    const auto sheet = drawing::draw_section_picture(plan.job, plan.measured[k], plan.targets[k], plan.changes[k]);
    out.push_back({k, {"Full size: in the folder sections.", emit::to_svg(sheet)}});
  }
  return out;
}

report::ReportPictures report_pictures(WholeBlade whole, StationPictures stations) {
  report::ReportPictures out;
  const std::string print_map = "To print: highs-and-lows.svg, or the page of that name in print.html.",
                    print_water = "To print: water.svg.";
  out.maps.push_back({print_map, std::move(whole.map)});
  out.narrow_maps.push_back({print_map, std::move(whole.narrow_map)});
  out.water = {print_water, std::move(whole.water)};
  out.narrow_water = {print_water, std::move(whole.narrow_water)};
  out.stations = std::move(stations);
  return out;
}

}  // namespace fairblade::cli
