// What was asked of the target, and why it is as it is, in plain sentences. Verbs: why_this_target.
#pragma once
#include <string>
#include <vector>

#include "report/plan.hpp"

namespace fairblade::report {

/// Where stations were asked different things, each sentence names the stations that it is true of.
std::vector<std::string> why_this_target(const Plan& plan);

}  // namespace fairblade::report
