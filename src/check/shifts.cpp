#include "check/shifts.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "base/maybe_mm.hpp"
#include "check/set_aside.hpp"
#include "check/sheet.hpp"
#include "check/weighed.hpp"
#include "job/own_error.hpp"

namespace fairblade::check {
namespace {

constexpr std::size_t fewest_to_shift = 8;
constexpr std::size_t least_shifted = 3;  // fewer are slips of their own
constexpr double look_gain = 7;           // of the log probability, for what is worth a look
constexpr std::size_t looked_at = 6;      // of those that promise most

constexpr std::array<Columns, 5> moved_together{
    {{true, false, false}, {false, true, false}, {false, false, true}, {true, true, false}, {true, true, true}}};

using Cell = MaybeMm job::Reading::*;
std::vector<Cell> cells_of(const Columns& columns) {
  std::vector<Cell> out;
  if (columns.port) out.push_back(&job::Reading::port);
  if (columns.starboard) out.push_back(&job::Reading::starboard);
  if (columns.caliper) out.push_back(&job::Reading::caliper);
  return out;
}

/// Rows as they follow each other on the sheet; none where they do not go from one edge to the other.
std::vector<std::size_t> from_edge_to_edge(const job::Station& station) {
  auto out = rows_by_line(station);
  bool aft = true, forward = true;
  for (std::size_t k = 1; k < out.size(); ++k) {
    const double step = station.readings[out[k]].x - station.readings[out[k - 1]].x;
    aft = aft && step > job::same_place;
    forward = forward && step < -job::same_place;
  }
  if (!aft && !forward) out.clear();
  return out;
}

struct Guess {
  Columns columns;
  bool too_low;
  std::size_t from;  // in the order of the sheet
  double gained;
};

class Shifts {
 public:
  Shifts(const job::Station& station, const std::vector<Seen>& seen)
      : station_(station), seen_(seen), order_(from_edge_to_edge(station)) {}
  std::size_t rows() const { return order_.size(); }
  std::size_t row(std::size_t place) const { return order_[place]; }
  /// Where nothing is known any more once it is set right.
  std::size_t unread(const Guess& one) const { return row(one.too_low ? rows() - 1 : one.from); }

  /// What it tells, of the log probability, that the numbers it begins with stand in the row before as well.
  double written_twice(const Guess& one) const {
    constexpr double each = 4;  // by chance once in fifty
    double out = 0;
    for (const Cell cell : cells_of(one.columns)) {
      if (!one.too_low || one.from == 0) continue;
      const auto &here = station_.readings[row(one.from)].*cell, &before = station_.readings[row(one.from - 1)].*cell;
      if (here && before && *here == *before) out += each;
    }
    return out;
  }

  /// Its numbers where they belong; the one that nothing is known of as it was written. Nothing where a cell is empty on the way.
  std::optional<job::Station> set_right(const Guess& one) const {
    job::Station out = station_;
    for (const Cell cell : cells_of(one.columns)) {
      for (std::size_t k = one.from; k + 1 < rows(); ++k) {
        const std::size_t to = row(one.too_low ? k : k + 1), from = row(one.too_low ? k + 1 : k);
        const auto& value = station_.readings[from].*cell;
        if (!value || (one.too_low && !(station_.readings[to].*cell))) return std::nullopt;
        out.readings[to].*cell = value;
      }
    }
    return out;
  }

  /// What changes in `seen`; nothing where numbers appear or vanish.
  std::vector<std::pair<std::size_t, double>> changes(const job::Station& to) const {
    const auto then = seen_at(to);
    std::vector<std::pair<std::size_t, double>> out;
    if (then.size() != seen_.size()) return out;
    for (std::size_t k = 0; k < seen_.size(); ++k) {
      if (then[k].value != seen_[k].value) out.emplace_back(k, then[k].value - seen_[k].value);
    }
    return out;
  }

 private:
  const job::Station& station_;
  const std::vector<Seen>& seen_;
  std::vector<std::size_t> order_;
};

}  // namespace

std::optional<ShiftedColumn> shifted_column(const job::Station& station, const std::vector<Seen>& seen, const Frame& frame) {
  const Shifts shifts(station, seen);
  if (shifts.rows() < fewest_to_shift || shifts.rows() > most_rows) return std::nullopt;
  const Weighed line = Links(seen, frame).weighed(old_blade);
  if (!line.known()) return std::nullopt;
  std::vector<Guess> guesses;
  for (const Columns& columns : moved_together) {
    for (const bool too_low : {true, false}) {
      for (std::size_t from = 0; from + least_shifted < shifts.rows(); ++from) {
        Guess one{columns, too_low, from, 0};
        const auto right = shifts.set_right(one);
        if (!right) continue;
        const auto changes = shifts.changes(*right);
        if (changes.empty()) continue;
        one.gained = line.gained_by(changes);
        if (one.gained > 0) guesses.push_back(one);
      }
    }
  }
  std::stable_sort(guesses.begin(), guesses.end(), [](const Guess& a, const Guess& b) { return a.gained > b.gained; });
  if (guesses.size() > looked_at) guesses.resize(looked_at);
  if (guesses.empty()) return std::nullopt;
  std::optional<ShiftedColumn> best;
  double most = 0;
  for (const Guess& one : guesses) {
    // Without the place that nothing is known of, either way: as it was written it runs on from the others.
    job::Station right = *shifts.set_right(one), written = station;
    const std::size_t unread = shifts.unread(one);
    for (const Cell cell : cells_of(one.columns)) {
      (right.readings[unread].*cell).reset();
      (written.readings[unread].*cell).reset();
    }
    const Sorted sorted = sort_out(seen_at(right), frame);
    const double twice = shifts.written_twice(one);
    const double gained = sorted.probability - sort_out(seen_at(written), frame).probability + twice;
    const bool slips_inside = std::any_of(sorted.suspects.begin(), sorted.suspects.end(), [&](const Suspect& s) {
      return s.seen.kind == Kind::port        ? one.columns.port
             : s.seen.kind == Kind::starboard ? one.columns.starboard
                                              : one.columns.caliper;
    });
    const bool plain = gained >= gain_needed;
    if (slips_inside || gained < most || !(plain || (gained >= look_gain && twice > 0))) continue;
    most = gained;
    best = ShiftedColumn{one.columns, one.too_low, shifts.row(one.from), unread, std::move(right), gained, plain};
  }
  return best;
}

}  // namespace fairblade::check
