// What a round leaves, as a map to draw. Verbs: map_of.
#pragma once
#include "fill/change_map.hpp"
#include "recheck/recheck.hpp"

namespace fairblade::recheck {

/// The last round on the outline of the target at its stage; white within the tolerance.
fill::ChangeMap map_of(const Recheck& recheck);

}  // namespace fairblade::recheck
