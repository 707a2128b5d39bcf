// Private to the check room. Product: a run of rows in which port and starboard changed places, and two rows that did. Verbs:
// swapped_rows, exchanged_rows.
#pragma once
#include <optional>
#include <vector>

#include "check/fair_line.hpp"
#include "check/set_aside.hpp"

namespace fairblade::check {

struct SwappedRows {
  std::size_t first = 0, last = 0;  ///< in Station::readings
  double gained = 0;                ///< of the log probability
};

/// The run of at most half the rows that, turned over, makes the station's centre line fair; nothing where no run is
/// worth it. A whole station turned over cannot be told from within.
std::optional<SwappedRows> swapped_rows(const job::Station& station, const std::vector<Seen>& seen, const Frame& frame);

struct ExchangedRows {
  std::size_t first = 0, second = 0;  ///< in Station::readings
  Sorted sorted;                      ///< with each one's numbers in the other's place
};

/// Two rows of which each has what was read at the other's x; nothing where the others do not say so plainly.
std::optional<ExchangedRows> exchanged_rows(const std::vector<Seen>& seen, const Sorted& as_written);

}  // namespace fairblade::check
