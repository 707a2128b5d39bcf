// Private to the cli room. Product: the files of a plan's folder. Verbs: draw_plan.
#pragma once
#include <vector>

#include "check/findings.hpp"
#include "emit/folder.hpp"
#include "report/plan.hpp"

namespace fairblade::cli {

/// The files of a plan's folder, in a fixed order; `between` are sections at heights that the owner asked for. Both must
/// outlive the files, some of which are made when they are written.
/// `findings`: what was found in the readings.
std::vector<emit::File> draw_plan(const report::Plan& plan, const std::vector<plan::Between>& between,
                                  const check::Findings& findings);

}  // namespace fairblade::cli
