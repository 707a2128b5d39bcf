// Product: FrozenPlan, what a plan.json says of its target, and of how the blade was when it was planned; a plain
// checked value. Verbs: read_frozen_plan.
//
// It stands in the job room because files are read here: the JSON library and the tree whose nodes know their lines are
// private to this room, so that a plan.json that is broken, cut short, older or another program's is refused at its
// line. Everything is mm, mm² and litres, as plan.json is; `units` is only what the owner is shown. Nothing of the
// target is worked out here or later: its curves are the points that `plan` wrote.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "base/units.hpp"
#include "job/sources.hpp"

namespace fairblade::job {

/// A stage of the work: the target less the coats still to come.
struct FrozenStage {
  std::string name;     ///< "bare", "glassed", "final"
  double to_come = 0;   ///< mm a side
  std::string surface;  ///< "filled, before glass"; empty without coats
};

/// A half-breadth as it was measured before the work.
struct FrozenReading {
  double x = 0;  ///< mm aft of the measured leading edge
  bool port = true;
  double measured = 0;
};

struct FrozenStation {
  std::string name;
  double down = 0;
  bool calipers = false;               ///< its readings do not tell port from starboard
  double target_chord = 0;             ///< mm
  std::optional<double> target_ahead;  ///< mm the target's leading edge stands ahead of the stock
  double left_to = 0;                  ///< mm; x by which a leading edge that stays as it is has run into the target; 0 for none
  /// Points of both faces from the target's leading edge to its trailing edge: x in mm aft of the *measured* leading
  /// edge (so that one built forward is negative), half-breadths in mm.
  std::vector<double> x, port, starboard;
  std::vector<FrozenReading> readings;
};

struct FrozenPlan {
  std::string file;  ///< plan.json
  std::string job;   ///< its name
  LengthUnit units = LengthUnit::mm;
  double reading_error = 0.5;                      ///< mm
  std::optional<double> bottom;                    ///< mm down
  std::vector<FrozenStage> stages;                 ///< in the order of the work; the filler is shaped at the first
  std::vector<FrozenStation> stations;             ///< from the top down
  double add = 0, remove = 0, taken_by_coats = 0;  ///< litres
  double remove_before_coats = 0;                  ///< litres; without coats what `remove` is
  std::vector<Source> sources;                     ///< the job file and its readings, as they were
};

/// PATH is plan.json, or the folder that holds it.
Outcome<FrozenPlan> read_frozen_plan(const std::string& path);

}  // namespace fairblade::job
