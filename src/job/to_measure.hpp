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
};

struct ToMeasure {
  std::string job;
  LengthUnit units = LengthUnit::mm;
  std::optional<double> bottom;
  Print print;
  std::vector<StationToMeasure> stations;  ///< from the top down, without those that are only interpolated
  /// Of a CSV: its rows above the header, "units" apart, as they were written.
  std::vector<std::pair<std::string, std::vector<std::string>>> keys;
};

/// The job in that file, whether it has readings or not; those that it has are not looked at. How a station is measured
/// and is not told follows from the columns of its CSV, where there is one.
Outcome<ToMeasure> read_to_measure(const std::string& path);

/// The words for "measured_by" and "x_from", and the other way round.
std::string_view name_of(MeasuredBy method);
std::string_view name_of(XFrom origin);
std::optional<MeasuredBy> measured_by_named(std::string_view word);

}  // namespace fairblade::job
