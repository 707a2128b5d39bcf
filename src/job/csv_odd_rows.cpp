#include "job/csv_odd_rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

std::vector<std::size_t> columns_of_lengths(const Columns& columns) {
  std::vector<std::size_t> out{columns.x};
  for (const auto& column : {columns.first, columns.second, columns.caliper}) {
    if (column) out.push_back(*column);
  }
  for (const auto& [name, at] : columns.own) out.push_back(at);
  return out;
}

}  // namespace

std::optional<LengthUnit> unit_row(const Columns& columns, const std::vector<std::string_view>& cells, LengthUnit unit) {
  static constexpr std::array<std::string_view, 4> not_a_station{"unit", "units", "name", "(name)"};
  const std::string station = lower_case(cells[columns.station]);
  if (!station.empty() && !is_dash(station) && !unit_of_word(station) &&
      std::find(not_a_station.begin(), not_a_station.end(), station) == not_a_station.end()) {
    return std::nullopt;
  }
  std::optional<LengthUnit> out;
  for (const std::size_t at : columns_of_lengths(columns)) {
    if (cells[at].empty() || is_dash(cells[at])) continue;
    const auto found = unit_of_word(cells[at]);
    if (!found) return std::nullopt;
    if (!out || *out == unit) out = found;
  }
  return out;
}

std::optional<std::string_view> total_word(const Columns& columns, const std::vector<std::string_view>& cells) {
  static constexpr std::array<std::string_view, 21> words{
      "total",   "totals",   "grand_total", "subtotal", "sub_total", "sum",    "sums",
      "average", "averages", "avg",         "mean",     "means",     "median", "max",
      "min",     "maximum",  "minimum",     "count",    "std",       "stdev",  "standard_deviation"};
  constexpr std::size_t longest = 24;
  const auto says = [&](std::string_view cell) {
    if (cell.empty() || cell.size() > longest || cell.front() < 'A') return false;  // most are numbers
    const std::string plain = title_of(cell).name;
    return std::find(words.begin(), words.end(), plain) != words.end();
  };
  for (const std::size_t at : {columns.station, columns.x}) {
    if (says(cells[at])) return cells[at];
  }
  // The word may stand in a column of the owner's own, where the station's cell is empty.
  if (!cells[columns.station].empty()) return std::nullopt;
  const auto found = std::find_if(cells.begin(), cells.end(), says);
  if (found == cells.end()) return std::nullopt;
  return *found;
}

bool adds_up(const std::vector<std::span<const Reading>>& above, const Reading& last) {
  constexpr std::size_t fewest = 4;  // and the row itself; fewer may agree by chance
  constexpr double rounding = 0.06;  // mm: sums of readings to a tenth are exact, means are rounded to a tenth
  double sum[4] = {0, 0, 0, 0};
  int count[4] = {0, 0, 0, 0};
  std::size_t rows = 0;
  const auto values = [](const Reading& r) { return std::array<std::optional<double>, 4>{r.x, r.port, r.starboard, r.caliper}; };
  for (const auto& some : above) {
    rows += some.size();
    for (const Reading& one : some) {
      const auto row = values(one);
      for (std::size_t k = 0; k < 4; ++k) {
        if (!row[k]) continue;
        sum[k] += *row[k];
        ++count[k];
      }
    }
  }
  if (rows < fewest) return false;
  const auto told = values(last);
  bool all_sums = true, all_means = true;
  int filled = 0;
  for (std::size_t k = 0; k < 4; ++k) {
    if (!told[k] || count[k] == 0) continue;
    ++filled;
    all_sums = all_sums && std::abs(*told[k] - sum[k]) < rounding;
    all_means = all_means && std::abs(*told[k] - sum[k] / count[k]) < rounding;
  }
  return filled >= 3 && (all_sums || all_means);
}

}  // namespace fairblade::job
