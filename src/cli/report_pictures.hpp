// Private to the cli room. Product: the pictures of report.html, drawn. Verbs: report_pictures.
#pragma once
#include "report/report.hpp"

namespace fairblade::cli {

report::ReportPictures report_pictures(const report::Plan& plan);

}  // namespace fairblade::cli
