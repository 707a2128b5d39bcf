// Private to the report room. Product: the parts of report.html, each HTML to stand under its heading; empty where the
// job has nothing to say there. Verbs: one a part.
#pragma once
#include <string>

#include "report/report.hpp"

namespace fairblade::report {

// The blade: html_blade.cpp, html_stations.cpp
std::string measured_part(const Plan& plan, const check::Findings& findings);
std::string target_part(const Plan& plan);
std::string stations_part(const Plan& plan, const ReportPictures& pictures);
// Filler: html_filler.cpp
std::string litres_part(const Plan& plan);
std::string mix_part(const Plan& plan);
std::string passes_part(const Plan& plan);
std::string batches_part(const Plan& plan);
// Coats and shopping: html_coats.cpp
std::string coats_part(const Plan& plan);
std::string shopping_part(const Plan& plan);
// The order of work: html_order.cpp
std::string order_part(const Plan& plan);
// Before and after in the water: html_water.cpp
std::string water_part(const Plan& plan, const ReportPictures& pictures);
// What stands behind it: html_end.cpp
std::string defaults_part(const Plan& plan);
std::string cautions_part();
std::string sources_part();

}  // namespace fairblade::report
