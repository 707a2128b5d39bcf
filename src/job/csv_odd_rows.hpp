// Private to the job room. Product: which rows of a CSV's table are no readings: units, totals, the header once more.
// Verbs: unit_row, total_word, adds_up.
#pragma once
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "job/csv_columns.hpp"
#include "job/job.hpp"

namespace fairblade::job {

/// A row of units under the titles: every cell of ours that is filled holds one (the station's: none, a dash, "unit").
/// The first that is not `unit`, or `unit` where all agree; nothing where the row is no row of units.
std::optional<LengthUnit> unit_row(const Columns& columns, const std::vector<std::string_view>& cells, LengthUnit unit);

/// The cell that says so, where a row is a spreadsheet's total or average: "Total", "mean:".
std::optional<std::string_view> total_word(const Columns& columns, const std::vector<std::string_view>& cells);

/// Is the last reading the sum or the mean of those above it in every value? A total's row without a word.
bool adds_up(const std::vector<std::span<const Reading>>& above, const Reading& last);

}  // namespace fairblade::job
