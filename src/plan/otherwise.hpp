// Private to the plan room. What building an edge out all the way down would come to. Verbs: edges_uncut.
#pragma once
#include "plan/plan.hpp"

namespace fairblade::plan {

/// Asks for it as often as it takes, for the edges that the plan cuts too deep.
BuiltOut edges_uncut(const Plan& plan);

}  // namespace fairblade::plan
