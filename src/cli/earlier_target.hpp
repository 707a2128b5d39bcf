// Private to the cli room. Whether a folder holds a plan with another target, or other coats over it, than the one that is to
// take its place. Verbs: earlier_plan, other_than_planned.
#pragma once
#include <optional>
#include <string>

#include "job/frozen_plan.hpp"
#include "plan/plan.hpp"

namespace fairblade::cli {

/// The plan that the folder holds; nothing where nobody can tell cheaply: none there, one that cannot be read, or one of a scan's
/// size.
std::optional<job::FrozenPlan> earlier_plan(const std::string& folder);
/// "another target", "other coats"; empty where what was cut by the earlier plan fits this one too, stations being told by
/// their heights, whatever their names.
std::string other_than_planned(const job::FrozenPlan& earlier, const plan::Plan& plan);

}  // namespace fairblade::cli
