// rows_by_line and judge_order: x as the rows of a sheet follow each other.
#include <algorithm>
#include <numeric>
#include <optional>

#include "base/units.hpp"
#include "check/digits.hpp"
#include "check/sheet.hpp"
#include "job/own_error.hpp"

namespace fairblade::check {
namespace {

/// In the order of the sheet, from the nose aft; none where lines do not tell it, or there are too few rows to have an order.
std::vector<const job::Reading*> rows_of(const job::Station& station) {
  constexpr std::size_t fewest = 6;
  std::vector<const job::Reading*> rows;
  for (const std::size_t k : rows_by_line(station)) rows.push_back(&station.readings[k]);
  if (rows.size() < fewest) return {};
  std::size_t falls = 0;
  for (std::size_t k = 1; k < rows.size(); ++k) falls += rows[k]->x < rows[k - 1]->x ? 1 : 0;
  if (2 * falls > rows.size()) std::reverse(rows.begin(), rows.end());  // written from the trailing edge forward
  return rows;
}

}  // namespace

std::vector<std::size_t> rows_by_line(const job::Station& station) {
  const auto& rows = station.readings;
  std::vector<std::size_t> out(rows.size());
  std::iota(out.begin(), out.end(), std::size_t{0});
  std::sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) { return rows[a].line < rows[b].line; });
  const auto same_line = [&](std::size_t a, std::size_t b) { return rows[a].line == rows[b].line; };
  return std::adjacent_find(out.begin(), out.end(), same_line) == out.end() ? out : std::vector<std::size_t>{};
}

void judge_order(const job::Job& job, const job::Station& station, std::vector<Finding>& out) {
  const auto rows = rows_of(station);
  std::vector<std::size_t> falls;  // before these the order breaks
  for (std::size_t k = 1; k < rows.size(); ++k) {
    if (rows[k]->x < rows[k - 1]->x - job::same_place) falls.push_back(k);
  }
  if (falls.size() != 1) return;
  // Either row beside the break may be the odd one. At an end of the sheet it is one that was added, and no slip.
  const auto odd = [&](std::size_t k) { return k > 0 && k + 1 < rows.size() && rows[k - 1]->x < rows[k + 1]->x; };
  const auto meant = [&](std::size_t k) {
    return meant_by(rows[k]->x, job.units, [&](double x) { return x > rows[k - 1]->x && x < rows[k + 1]->x; });
  };
  const std::size_t before = falls.front() - 1, after = falls.front();
  if (before == 0 || after + 1 == rows.size() || (!odd(before) && !odd(after))) return;
  std::optional<Meant> would_fit;
  std::size_t at = odd(before) ? before : after;
  for (const std::size_t k : {before, after}) {
    if (!odd(k) || would_fit) continue;
    would_fit = meant(k);
    if (would_fit) at = k;
  }
  const auto shown = [&](double mm) { return in_unit(mm, job.units); };
  out.push_back({"x-out-of-order",
                 Rank::reading,
                 would_fit ? Sureness::likely : Sureness::look,
                 station.name,
                 "",
                 rows[at]->x,
                 {station.readings_from, rows[at]->line},
                 "x stands between " + shown(rows[at - 1]->x) + " and " + shown(rows[at + 1]->x) +
                     " on the sheet, where the other rows are in order" +
                     (would_fit ? "; " + shown(would_fit->mm) + " would fit (" + would_fit->how + ")" : ""),
                 "look at the sheet, and correct x if it slipped"});
}

}  // namespace fairblade::check
