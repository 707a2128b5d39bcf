// Private to the job room. Product: checked stations, their readings as half-breadths (or caliper) against x aft of
// the leading edge. Verbs: read_station, read_method, read_inline_readings, take_csv_readings, gaps_to_breadths,
// settle_readings.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "job/csv_readings.hpp"
#include "job/job.hpp"
#include "job/reader.hpp"
#include "job/to_measure.hpp"

namespace fairblade::job {

/// A station while its readings are still as they were read.
struct StationDraft {
  Station station;
  XFrom x_from = XFrom::leading_edge;
  std::optional<double> board_port, board_starboard;  ///< mm from the centre plane
  bool method_told = false;                           ///< "measured_by" was written
  bool rows_refused = false;                          ///< readings are lacking that were refused already
  bool method_known = true;                           ///< false: "measured_by" was refused
  bool as_written = false;                            ///< readings stay where and what they are, however unlikely
  bool sound = true;                                  ///< its own keys make sense, so its readings can be judged
};

/// How a station was measured: measured_by, x_from, board.
void read_method(const Reader& reader, const Node& node, StationDraft& draft);
/// The keys of one station, without its readings and target. `number` counts from 1.
StationDraft read_station(const Reader& reader, const Node& node, std::size_t number);
/// Inline readings, as they were read, in mm.
bool read_inline_readings(const Reader& reader, const Node& list, StationDraft& draft);
/// Readings of a CSV for that station.
bool take_csv_readings(const Reader& reader, CsvStation&& from, const CsvContent& content, StationDraft& draft);
/// A gap is what lacks between the blade and the straightedge; the draft has both boards.
void gaps_to_breadths(const StationDraft& draft, Reading& reading);
/// Gaps become half-breadths, x is counted from the leading edge and checked, readings are sorted.
/// `reader.file` is where the readings stand.
void settle_readings(const Reader& reader, StationDraft& draft, double reading_error, std::vector<Warning>& warnings);

/// Keys that a station has besides those of "target".
std::span<const std::string_view> station_keys();

}  // namespace fairblade::job
