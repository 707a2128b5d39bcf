// Private to the job room. Product: which cell of a CSV's row holds what.
// Verbs: title_of, unit_of_word, find_columns.
#pragma once
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/units.hpp"
#include "job/csv.hpp"
#include "job/faults.hpp"
#include "job/job.hpp"

namespace fairblade::job {

/// A column's title: lower case, blanks and hyphens as underscores; a unit behind it ("Port [mm]", "x / mm") apart.
struct ColumnTitle {
  std::string name, unit;
};
ColumnTitle title_of(std::string_view cell);

/// "mm", "in.", "(inches)", "\"": the unit that a title or a row of units means.
std::optional<LengthUnit> unit_of_word(std::string_view word);

/// Does a column of that name mean anything here?
bool is_column(std::string_view name);
/// The column that a name seems meant as ("stbd", "port (half)", "starbord"); empty where it seems meant as none.
std::string column_meant(std::string_view name);
std::optional<std::size_t> column_of(std::span<const std::string> columns, std::string_view name);

/// Where each thing stands; nothing where there is no such column.
struct Columns {
  std::size_t station = 0, x = 0;
  std::optional<std::size_t> first, second, caliper;          ///< port and starboard, or their gaps
  std::vector<std::pair<std::string_view, std::size_t>> own;  ///< a station's own keys, in a CSV alone
  MeasuredBy holds = MeasuredBy::half_breadths;
  std::size_t last = 0;  ///< the furthest column that means anything
};

/// `header` has station and x. `new_heights`: nothing else tells where a station lies, so that down and chord are needed in
/// a CSV alone. Nothing, and faults, where the columns cannot be used.
std::optional<Columns> find_columns(const CsvHeader& header, bool alone, bool new_heights, const std::string& file,
                                    Faults& faults);

}  // namespace fairblade::job
