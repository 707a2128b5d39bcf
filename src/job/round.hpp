// Product: Round, the readings of one file that were taken after a round of filling or sanding; still as they lie on
// the sheet, in mm, with their lines. Verbs: read_round.
//
// The file is a CSV in the dialects and columns of a job's. A station is one of the plan's, by name, or any other
// height, which then has `down`. `ahead` and `chord` say where the edges are now; without them the plan's target tells,
// and whoever places the readings says so. x may also count from the marks of before the work: x_from is then
// "old-leading-edge"; "new-leading-edge" is "leading-edge", said in so many words. Rows of key,value above the header: units,
// x_from, board, measured_by, reading_error, stage; a sheet that began as a job's may keep the job's other keys, which count for
// nothing here and are told.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "base/units.hpp"
#include "job/job.hpp"
#include "job/to_measure.hpp"

namespace fairblade::job {

/// Which leading edge x is counted from, where it is counted from one.
enum class LeadingEdge { not_told, before_the_work, now };

struct RoundStation {
  std::string name;
  Place place;                               ///< of its first row
  std::optional<double> down, ahead, chord;  ///< mm, where they were written
  XFrom x_from = XFrom::leading_edge;
  MeasuredBy measured_by = MeasuredBy::half_breadths;
  std::vector<Reading> readings;  ///< x as it was read; gaps have become half-breadths
};

struct Round {
  std::string file;
  LengthUnit unit = LengthUnit::mm;     ///< that its numbers were taken for
  std::optional<double> reading_error;  ///< mm, where the file tells its own
  std::vector<RoundStation> stations;   ///< in the order of their first rows
  bool x_from_told = false;             ///< else x is taken as aft of the leading edge
  LeadingEdge leading_edge = LeadingEdge::not_told;
  std::string stage;  ///< "bare", "glassed" or "final": the surface that was measured, where the file tells it
  int stage_line = 0;
  std::vector<std::string> job_keys;  ///< keys of a job above the header: the plan's hold, not these
};

/// `unit` is the plan's, unless the file has a row "units,...". `known`: the plan's stations.
Outcome<Round> read_round(const std::string& path, LengthUnit unit, const std::vector<std::string>& known);

}  // namespace fairblade::job
