// Private to the cli room. Product: a plan, made by handing a job through the rooms in their order. Verbs: make_plan,
// draw_plan.
#pragma once
#include <string>
#include <vector>

#include "emit/folder.hpp"
#include "report/plan.hpp"

namespace fairblade::cli {

/// From a checked job to everything that is reported and drawn, or why not.
Outcome<report::Plan> make_plan(const job::Job& job);

/// The files of a plan's folder, in a fixed order.
std::vector<emit::File> draw_plan(const report::Plan& plan);

}  // namespace fairblade::cli
