// Product: what there is to measure of a job, before anything has been read. Verbs: read_to_measure, name_of,
// measured_by_named. All mm.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "job/job.hpp"

namespace fairblade::job {

/// Where x is counted from: aft of the leading edge, ahead of the trailing edge, aft of the stock.
enum class XFrom { leading_edge, trailing_edge, stock };

struct StationToMeasure {
  std::string name;
  double down = 0;
  std::optional<double> ahead;
  double chord = 0;
  MeasuredBy measured_by = MeasuredBy::half_breadths;
  XFrom x_from = XFrom::leading_edge;
  std::optional<double> board_port, board_starboard;  ///< from the centre plane
  std::optional<double> trailing_edge_off_centre;     ///< to port
  double skeg = 0;                                    ///< of fixed skeg ahead of this edge
};

/// A row above the header of a CSV: its key and values, as they were written.
using KeyOfTable = std::pair<std::string, std::vector<std::string>>;

struct ToMeasure {
  std::string job;
  LengthUnit units = LengthUnit::mm;
  std::optional<double> bottom;
  Print print;
  std::vector<StationToMeasure> stations;  ///< from the top down, without those that are only interpolated
  double coating_to_strip = 0;
  /// What a CSV that is a job alone has above its header, "units" apart: of a CSV its own rows, of a job file its values.
  std::vector<KeyOfTable> keys;
  std::vector<std::string> not_in_a_table;  ///< of a job file: what a CSV has no place for, in words
};

/// The job in that file, whether it has readings or not; those that it has are not looked at. How a station is measured
/// and is not told follows from the columns of its CSV, where there is one.
Outcome<ToMeasure> read_to_measure(const std::string& path);

/// The words for "measured_by" and "x_from", and the other way round.
std::string_view name_of(MeasuredBy method);
std::string_view name_of(XFrom origin);
std::optional<MeasuredBy> measured_by_named(std::string_view word);

}  // namespace fairblade::job
