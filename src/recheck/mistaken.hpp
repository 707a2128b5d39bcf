// Private to the recheck room. Readings that lie on the blade only when they are taken for something else: another unit, or
// thicknesses for half-breadths, gaps for half-breadths; or on no such blade at all. Verbs: mistaken, of_no_such_blade. mm.
//
// Judged by the median distance from the target, as read and as it might have been meant: refused where that is a fifth or less
// of what was read, which must be further out than readings stray and than any filler stands. Tried (tests/recheck): a whole
// sheet, the half-breadths alone and one station alone in inches; none of 200 rounds with up to 8 mm left to do. A gap and its
// half-breadth add up to the board's distance at every place, and with a wrong distance all half-breadths are off by one length:
// there the median distance from that common length is weighed in the same way.
//
// A round that fits nothing is refused where fewer than one reading in twenty lies within 10 mm of the target, or within a third
// of its thickest half-breadth where that is more, and all are off by more than that third in the mean.
#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "job/round.hpp"
#include "recheck/frozen.hpp"
#include "recheck/placed.hpp"

namespace fairblade::recheck {

/// `x_of`: from x as read, in mm, to where it lies on the surface. `unit` is the one that the numbers were taken for.
std::optional<Fault> mistaken(const job::RoundStation& station, const Surface& surface, const std::function<double(double)>& x_of,
                              LengthUnit unit, double sigma);

/// The whole round, laid on its target. `place`: where its readings begin.
std::optional<Fault> of_no_such_blade(const std::vector<HeightRead>& heights, const Place& place, LengthUnit unit);

}  // namespace fairblade::recheck
