// Private to the cli room. Product: the pictures of report.html, drawn. Verbs: report_pictures.
#pragma once
#include <string>

#include "report/report.hpp"

namespace fairblade::cli {

/// The drawings of the whole blade, as SVG text.
struct WholeBlade {
  std::string map, narrow_map, water, narrow_water;
};
report::ReportPictures report_pictures(const report::Plan& plan, WholeBlade whole);

}  // namespace fairblade::cli
