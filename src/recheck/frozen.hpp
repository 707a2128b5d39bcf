// Product: Frozen, the target that a plan wrote, as sections that the other rooms know how to cut, coat and loft; and
// Surface, one height of it at the stage that was measured. Verbs: freeze, surface_at. mm.
//
// The target is never worked out again: its faces run through the points in plan.json (200 to a face, even in sqrt(x),
// and both sides of a step) by cubics in sqrt(x) with the points' own slopes (Hermite). Seen: within 0.00001 mm of the
// curve that was planned, 0.00007 mm on a face bent round a patch. Heights between stations are lofted, and coats taken
// off, by the rooms that did it for the plan's templates.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "fill/stages.hpp"
#include "job/frozen_plan.hpp"
#include "target/target.hpp"

namespace fairblade::recheck {

struct Frozen {
  job::Job job;  ///< name, file (plan.json), units, reading error, bottom: what other rooms ask a job for
  std::vector<target::TargetSection> targets;  ///< from the top down
  std::vector<double> was_over;  ///< of each: as many times the target's half-breadths as the blade's were, the median
  std::vector<fill::Stage> stages;
  fill::Stage stage;  ///< the one that was measured
};

/// `stage`: "bare", "glassed" or "final"; empty: the stage at which the filler is shaped. Refused: one that the coats
/// of the plan do not make.
Outcome<Frozen> freeze(const job::FrozenPlan& plan, const std::string& stage);

struct Surface {
  std::string name;
  double down = 0;
  std::string between;                 ///< "B and C" for a height between stations; else empty
  fill::StageSection section;          ///< x aft of the leading edge as it was measured before the work
  double was_over = 1;                 ///< as many times its half-breadths as the blade's were before the work, at most
  std::optional<double> origin_ahead;  ///< mm that x = 0 stands ahead of the stock
};

/// Refused, at `place`: above the first station and below the last, where the plan has no target.
Outcome<Surface> surface_at(const Frozen& frozen, double down, const std::string& name, const Place& place);

}  // namespace fairblade::recheck
