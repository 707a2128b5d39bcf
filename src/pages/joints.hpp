// Private to the pages room. Where a length is cut into windows. Verbs: starts_of. mm.
#pragma once
#include <utility>
#include <vector>

namespace fairblade::pages {

/// Where the windows begin that cover `length` with that overlap: as few as can be, or one more where only so no joint
/// falls into a stretch to be kept whole. A joint is all that two neighbours both carry.
std::vector<double> starts_of(double length, double window, double overlap, const std::vector<std::pair<double, double>>& whole);

}  // namespace fairblade::pages
