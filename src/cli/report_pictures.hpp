// Private to the cli room. Product: the pictures of report.html, drawn. Verbs: report_pictures.
#pragma once
#include <string>

#include "report/report.hpp"

namespace fairblade::cli {

/// `map` and `water`: the drawings of that name, as SVG text.
report::ReportPictures report_pictures(const report::Plan& plan, std::string map, std::string water);

}  // namespace fairblade::cli
