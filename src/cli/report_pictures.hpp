// Private to the cli room. Product: the pictures of report.html, drawn. Verbs: pictures_of_stations, report_pictures.
#pragma once
#include <string>

#include "report/report.hpp"

namespace fairblade::cli {

/// The drawings of the whole blade, as SVG text.
struct WholeBlade {
  std::string map, narrow_map, water, narrow_water;
};
using StationPictures = decltype(report::ReportPictures::stations);
StationPictures pictures_of_stations(const report::Plan& plan);
report::ReportPictures report_pictures(WholeBlade whole, StationPictures stations);

}  // namespace fairblade::cli
