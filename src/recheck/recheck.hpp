// Product of the recheck room: Recheck, what is left to do after a round of filling or sanding, against the target
// frozen in a plan; and how the work went on from round to round. Verbs: recheck. mm, litres.
//
// The target comes from plan.json alone. Whether the job was edited since is looked up only to say so.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "job/frozen_plan.hpp"
#include "job/round.hpp"
#include "recheck/litres.hpp"
#include "recheck/open_places.hpp"
#include "recheck/spots.hpp"

namespace fairblade::recheck {

struct Options {
  double tolerance = 0.5;  ///< mm; within it nothing need be done
  std::string stage;       ///< "bare", "glassed", "final"; empty: the one at which the filler is shaped. A file's own wins
};

/// One set of readings against the target: the plan's own, or a round's.
struct RoundResult {
  std::string file;
  fill::StageKind stage = fill::StageKind::final;  ///< the surface that was measured
  int stage_line = 0;                              ///< of the file, where it tells that surface itself; 0: it does not
  double told_error = 0;                           ///< mm, how far one reading strays, by the file or the plan
  /// mm, what everything is judged with: the told one, or the readings' own scatter about the target where that is less
  /// (median of the sizes / 0.6745, higher by chance's share; 20 readings at least; never below a third of what was
  /// told).
  double reading_error = 0;
  std::vector<HeightRead> heights;           ///< from the top down; only the last round keeps its own
  std::size_t readings = 0, within = 0;      ///< readings of a face; of those, within the tolerance
  double deepest_low = 0, deepest_high = 0;  ///< mm, both positive; of readings that do not stand alone
  Litres litres;
};

enum class Verdict {
  nothing_left,   ///< every reading lies within the tolerance
  reading_error,  ///< some do not, but not more than reading error alone would show: stop here
  go_on
};
const char* name_of(Verdict verdict);

/// A station's two faces are out by as much in opposite ways: the section, or the datum, stands to one side.
struct Aside {
  std::size_t height = 0;
  double to_port = 0;  ///< mm
};

/// The readings lie as far off, all over, as the coats between two stages are thick: was the other one measured?
struct OtherStage {
  std::string name;
  double coats = 0;  ///< mm from the stage taken to the other: positive where the other lies outside
};

struct Recheck {
  Frozen frozen;
  Options options;
  RoundResult first;                ///< the plan's own readings against the same stage
  std::vector<RoundResult> rounds;  ///< oldest first; the last is what is left now
  std::vector<Spot> spots;          ///< of the last round, worst first
  std::vector<Aside> aside;
  Verdict verdict = Verdict::go_on;       ///< of what was read
  std::vector<std::string> unread;        ///< the plan's stations that the last round did not touch: nobody knows of them
  std::vector<OpenPlace> left_open;       ///< by earlier rounds, at heights that the last one read elsewhere; the deepest first
  double beyond_by_chance = 0;            ///< readings of the last round that reading error alone would put beyond the tolerance
  double common = 0, common_error = 0;    ///< mm, weighted mean depth of the last round
  std::optional<OtherStage> other_stage;  ///< to be settled before anything is made of what is high or low
  std::vector<DefaultUsed> defaults;
  std::vector<std::string> notes;  ///< what the owner should know: the job was edited, a face was not read
  const RoundResult& now() const { return rounds.back(); }
};

/// Every round is read and placed before anything is judged; faults of all of them, up to 20.
Outcome<Recheck> recheck(job::FrozenPlan plan, const std::vector<std::string>& readings, const Options& options);

}  // namespace fairblade::recheck
