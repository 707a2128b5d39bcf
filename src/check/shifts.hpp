// Private to the check room. Product: a column that slipped by a row on the sheet. Verbs: shifted_column.
#pragma once
#include <cstddef>
#include <optional>

#include "check/fair_line.hpp"

namespace fairblade::check {

struct Columns {
  bool port = false, starboard = false, caliper = false;
};

struct ShiftedColumn {
  Columns columns;         ///< that slipped together
  bool too_low = true;     ///< each number stands a row further down the sheet than it belongs; else a row further up
  std::size_t first = 0;   ///< in Station::readings: from this row on
  std::size_t unread = 0;  ///< the row for which there then is no number
  job::Station set_right;  ///< without that one
  double gained = 0;       ///< of the log probability
  bool plain = false;      ///< else worth a look: numbers that stand in two rows speak for it, and the rest does not against it
};

/// A column, or the columns of both sides, whose numbers from some row to the last one each fit the row before or after it on the
/// sheet; nothing where the rows do not go from one edge to the other, and where too little speaks for it.
std::optional<ShiftedColumn> shifted_column(const job::Station& station, const std::vector<Seen>& seen, const Frame& frame);

}  // namespace fairblade::check
