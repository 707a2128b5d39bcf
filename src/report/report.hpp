// What people and programs read of a plan, as text. Verbs: summary, plan_json, offsets_csv.
#pragma once
#include <string>

#include "report/plan.hpp"

namespace fairblade::report {

/// For the screen: a table of the stations, how near the blade is to a standard section, litres, warnings, defaults.
/// mm, with the job's own unit beside it. UTF-8, at most 100 columns where names allow it.
std::string summary(const Plan& plan);

/// plan.json: mm, mm², litres; full precision; what cannot be told is null.
std::string plan_json(const Plan& plan);

/// offsets.csv: one row per reading and side, mm to 0.001.
std::string offsets_csv(const Plan& plan);

}  // namespace fairblade::report
