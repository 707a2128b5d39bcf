#include "check/swaps.hpp"

#include <algorithm>
#include <utility>

#include "check/set_aside.hpp"
#include "check/weighed.hpp"

namespace fairblade::check {
namespace {

/// With port and starboard exchanged in the rows of a run that have both: see seen_at for the order.
std::vector<Seen> turned(std::vector<Seen> seen, const SwappedRows& rows) {
  for (std::size_t k = 0; k + 1 < seen.size(); ++k) {
    const bool pair = seen[k].kind == Kind::port && seen[k + 1].kind == Kind::starboard && seen[k].row == seen[k + 1].row;
    if (pair && seen[k].row >= rows.first && seen[k].row <= rows.last) std::swap(seen[k].value, seen[k + 1].value);
  }
  return seen;
}

/// A stiff centre line; the shape of the section as free as it may be.
constexpr Smoothness stiff{0.01, 0.002, 1.2};

}  // namespace

std::optional<SwappedRows> swapped_rows(const job::Station& station, const std::vector<Seen>& seen, const Frame& frame) {
  std::vector<std::size_t> rows;
  for (std::size_t r = 0; r < station.readings.size(); ++r) {
    if (station.readings[r].port && station.readings[r].starboard) rows.push_back(r);
  }
  if (rows.size() < 5 || rows.size() > most_rows) return std::nullopt;
  SwappedRows best;
  const Weighed line = Links(seen, frame).weighed(stiff);
  if (!line.known()) return std::nullopt;
  const double as_stiff = line.log_likelihood();
  double best_stiff = as_stiff;
  bool any = false;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t j = i; j < rows.size() && 2 * (j - i + 1) <= rows.size(); ++j) {
      const SwappedRows run{rows[i], rows[j], 0};
      const double here = line.log_likelihood(turned(seen, run));
      if (here <= best_stiff) continue;
      best_stiff = here;
      best = run;
      any = true;
    }
  }
  if (!any || best_stiff < as_stiff + 5) return std::nullopt;
  const Sorted as_written = sort_out(seen, frame), turned_over = sort_out(turned(seen, best), frame);
  const bool slips_inside = std::any_of(turned_over.suspects.begin(), turned_over.suspects.end(),
                                        [&](const Suspect& s) { return s.seen.row >= best.first && s.seen.row <= best.last; });
  if (slips_inside || turned_over.probability < as_written.probability + gain_needed) return std::nullopt;
  best.gained = turned_over.probability - as_written.probability;
  return best;
}

std::optional<ExchangedRows> exchanged_rows(const std::vector<Seen>& seen, const Sorted& as_written) {
  struct Row {
    std::size_t begin, count;  // of `seen`
  };
  std::vector<Row> rows;
  for (std::size_t k = 0; k < seen.size(); ++k) {
    if (k == 0 || seen[k].row != seen[k - 1].row) rows.push_back({k, 0});
    ++rows.back().count;
  }
  if (rows.size() < 6 || rows.size() > most_rows) return std::nullopt;
  const Weighed line = Links(seen, as_written.frame).weighed(old_blade);
  if (!line.known()) return std::nullopt;
  const auto alike = [&](const Row& a, const Row& b) {
    if (a.count != b.count || seen[a.begin].x == seen[b.begin].x) return false;
    for (std::size_t k = 0; k < a.count; ++k) {
      if (seen[a.begin + k].kind != seen[b.begin + k].kind) return false;
    }
    return true;
  };
  double best = gain_needed;
  std::optional<std::pair<Row, Row>> found;
  std::vector<std::pair<std::size_t, double>> more;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t j = i + 1; j < rows.size(); ++j) {
      if (!alike(rows[i], rows[j])) continue;
      more.clear();
      for (std::size_t k = 0; k < rows[i].count; ++k) {
        const std::size_t a = rows[i].begin + k, b = rows[j].begin + k;
        more.emplace_back(a, seen[b].value - seen[a].value);
        more.emplace_back(b, seen[a].value - seen[b].value);
      }
      const double gained = line.gained_by(more);
      if (gained <= best) continue;
      best = gained;
      found = {rows[i], rows[j]};
    }
  }
  if (!found) return std::nullopt;
  const auto [a, b] = *found;
  std::vector<Seen> exchanged = seen;
  for (std::size_t k = 0; k < a.count; ++k) std::swap(exchanged[a.begin + k].value, exchanged[b.begin + k].value);
  ExchangedRows out{seen[a.begin].row, seen[b.begin].row, sort_out(exchanged, as_written.frame)};
  const bool slips_inside = std::any_of(out.sorted.suspects.begin(), out.sorted.suspects.end(),
                                        [&](const Suspect& s) { return s.seen.row == out.first || s.seen.row == out.second; });
  if (slips_inside || out.sorted.probability < as_written.probability + gain_needed) return std::nullopt;
  return out;
}

}  // namespace fairblade::check
