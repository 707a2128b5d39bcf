// Private to the cli room. Whether a folder holds a plan with another target than the one that is to take its place.
// Verbs: holds_other_target.
#pragma once
#include <string>

#include "plan/plan.hpp"

namespace fairblade::cli {

/// False too where nobody can tell cheaply: no plan there, one that cannot be read, or one of a scan's size.
bool holds_other_target(const std::string& folder, const plan::Plan& plan);

}  // namespace fairblade::cli
