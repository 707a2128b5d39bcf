// Product: how much deeper than the finished surface the blade is shaped under its coats, and what has to come off for them.
// Verbs: before_coats; coats_over and CoatsOver::to_shape of the job room. mm, litres.
//
// A target is the finished surface and `max_removal` is counted from it. Coats make up a part of it, so that what is shaped
// under them stands as much deeper: where the old surface is nearer to the target than the coats over it are thick it has to
// come down, although no cut is seen in the finished shape. Where more is missing than the coats over filler are thick, there
// is filler, and its coats are those over filler. A leading edge that is left as it is stays so: no room is made for coats there.
#pragma once
#include <optional>
#include <vector>

#include "fill/fill.hpp"
#include "fill/surface.hpp"
#include "job/build.hpp"

namespace fairblade::fill {

using job::coats_over;
using job::CoatsOver;

struct BeforeCoats : CoatsOver {
  double remove = 0;        ///< litres between the first and the last station, down to the surface under the coats
  double beyond = 0;        ///< litres above the first station and below the last
  double deepest = 0;       ///< mm, square to the surface, at the stations
  std::size_t station = 0;  ///< of the deepest
};

/// Nothing without coats. To about 1 % of what is cut for the coats' sake, as the pieces are.
std::optional<BeforeCoats> before_coats(const job::Job& job, const std::vector<target::TargetSection>& targets,
                                        const std::vector<StationChange>& changes, const Volumes& volumes,
                                        const std::vector<Piece>& surface);

}  // namespace fairblade::fill
