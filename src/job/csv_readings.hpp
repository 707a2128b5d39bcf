// Private to the job room. Product: the readings of a CSV by station, and what else it says of the job.
// Verbs: read_csv, anything_read.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/csv.hpp"
#include "job/faults.hpp"
#include "job/job.hpp"
#include "job/tree.hpp"

namespace fairblade::job {

/// Readings as they were read, in mm: x from wherever the station says, port and starboard perhaps still gaps.
struct CsvStation {
  std::string name;
  int line = 0;  ///< of its first row
  Node node;     ///< the station's own keys (down, ahead, chord, ...) of a CSV that is a job alone
  std::vector<Reading> readings;
  int not_read = 0;  ///< rows with an x and nothing else
};

struct CsvContent {
  std::string file;
  MeasuredBy measured_by = MeasuredBy::half_breadths;  ///< what the columns hold
  LengthUnit unit = LengthUnit::mm;
  CsvHeader header;
  bool whole = true;                 ///< no row was refused
  std::vector<CsvStation> stations;  ///< in the order of their first rows
};

/// `alone`: the CSV is the whole job; else `unit` is the job's, unless the CSV has a row "units,...".
/// `known` are the stations that may appear (none when alone). Both together, alone and known stations: readings of a
/// later round, which may be of other heights too, and need no columns down and chord. Nothing when it cannot be used at all.
std::optional<CsvContent> read_csv(std::string_view text, const std::string& file, LengthUnit unit, bool alone,
                                   const std::vector<std::string>& known, Faults& faults);

/// A measuring sheet comes with its x filled in and nothing else. False, and a fault, where no row holds a reading.
bool anything_read(const CsvContent& content, Faults& faults);

}  // namespace fairblade::job
