// Private to the check room. Product: a run of rows in which port and starboard changed places. Verbs: swapped_rows.
#pragma once
#include <optional>
#include <vector>

#include "check/fair_line.hpp"

namespace fairblade::check {

struct SwappedRows {
  std::size_t first = 0, last = 0;  ///< in Station::readings
};

/// The run of at most half the rows that, turned over, makes the station's centre line fair; nothing where no run is
/// worth it. A whole station turned over cannot be told from within.
std::optional<SwappedRows> swapped_rows(const job::Station& station, const std::vector<Seen>& seen, const Frame& frame);

}  // namespace fairblade::check
