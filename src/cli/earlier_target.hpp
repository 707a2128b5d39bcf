// Private to the cli room. Whether a folder holds a plan with another target, or other coats over it, than the one that is to
// take its place. Verbs: other_than_planned.
#pragma once
#include <string>

#include "plan/plan.hpp"

namespace fairblade::cli {

/// "another target", "other coats"; empty where what was cut by the earlier plan fits this one too, stations being told by
/// their heights, whatever their names, and where nobody can tell cheaply: no plan there, one that cannot be read, or one of a
/// scan's size.
std::string other_than_planned(const std::string& folder, const plan::Plan& plan);

}  // namespace fairblade::cli
