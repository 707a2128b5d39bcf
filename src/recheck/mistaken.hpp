// Private to the recheck room. Readings that lie on the blade only when they are taken for something else: another unit, or
// thicknesses for half-breadths. Verbs: mistaken. mm.
//
// Judged by the median distance from the target, as read and as it might have been meant: refused where that is a fifth or less
// of what was read, which must be further out than readings stray and than any filler stands. Tried (tests/recheck): a whole
// sheet, the half-breadths alone and one station alone in inches; none of 200 rounds with up to 8 mm left to do.
#pragma once
#include <functional>
#include <optional>

#include "job/round.hpp"
#include "recheck/frozen.hpp"

namespace fairblade::recheck {

/// `x_of`: from x as read, in mm, to where it lies on the surface. `unit` is the one that the numbers were taken for.
std::optional<Fault> mistaken(const job::RoundStation& station, const Surface& surface, const std::function<double(double)>& x_of,
                              LengthUnit unit, double sigma);

}  // namespace fairblade::recheck
