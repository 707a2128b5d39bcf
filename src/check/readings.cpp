// judge_readings: slipped digits, places and columns, rows whose sides changed places, short hollows.
#include "check/readings.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/units.hpp"
#include "check/digits.hpp"
#include "check/set_aside.hpp"
#include "check/shifts.hpp"
#include "check/swaps.hpp"

namespace fairblade::check {
namespace {

constexpr std::size_t most_at_once = 60;  // numbers; a scanned station is judged in interleaved parts
constexpr double nose_gain = 7;           // of the log probability
constexpr double fits_within = 3;         // standard deviations

class StationJudge {
 public:
  StationJudge(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out)
      : job_(job), station_(station), frame_{station.chord, station.skeg, sigma}, out_(out) {
    judged_.station = station;
  }

  StationJudged run() {
    const auto all = seen_at(station_);
    std::vector<std::size_t> rows;  // where each begins: a row's numbers stay together
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (k == 0 || all[k].row != all[k - 1].row) rows.push_back(k);
    }
    rows.push_back(all.size());
    const std::size_t parts = (all.size() + most_at_once - 1) / most_at_once;
    for (std::size_t part = 0; part < parts; ++part) {
      std::vector<Seen> seen;
      for (std::size_t r = part; r + 1 < rows.size(); r += parts) {
        for (std::size_t k = rows[r]; k < rows[r + 1]; ++k) seen.push_back(all[k]);
      }
      judge_part(std::move(seen), parts == 1);
    }
    tell();
    return std::move(judged_);
  }

 private:
  void judge_part(std::vector<Seen> seen, bool whole) {
    if (seen.size() < 6) return;
    if (whole) {
      const auto rows = swapped_rows(station_, seen, frame_);
      auto column = shifted_column(station_, seen, frame_);
      if (column && !(rows && rows->gained > column->gained)) tell_column(std::move(*column), seen);
      else if (rows) set_right(*rows, seen);
    }
    sorted_ = first_ ? sort_out(seen, frame_) : sort_out(seen, frame_, sorted_.smooth);
    first_ = false;
    if (whole) {
      if (auto rows = exchanged_rows(seen, sorted_)) exchange(std::move(*rows), seen);
    }
    if (whole && station_.skeg == 0 && nose_in_question()) find_lost_nose(seen);
    judged_.scatter = sorted_.scatter;
    suspects_.insert(suspects_.end(), sorted_.suspects.begin(), sorted_.suspects.end());
  }

  // Not where the very leading edge was read, and is sharp.
  bool nose_in_question() const {
    const auto edge = edge_thickness(station_, frame_.sigma);
    return !edge || edge->flat();
  }

  // A nose worn flat is a form that begins ahead of where x is counted from.
  void find_lost_nose(const std::vector<Seen>& seen) {
    const double as_it_is = sorted_.probability;
    for (const double share : {0.004, 0.007, 0.01, 0.015, 0.02, 0.03, 0.045}) {
      Frame worn = frame_;
      worn.skeg = share * station_.chord;
      Sorted one = sort_out(seen, worn);
      if (one.probability < std::max(sorted_.probability, as_it_is + nose_gain)) continue;
      judged_.nose_lost = worn.skeg;
      sorted_ = std::move(one);
    }
  }

  void set_right(const SwappedRows& rows, std::vector<Seen>& seen) {
    for (std::size_t r = rows.first; r <= rows.last; ++r) {
      auto& reading = judged_.station.readings[r];
      if (reading.port && reading.starboard) std::swap(reading.port, reading.starboard);
    }
    seen = seen_at(judged_.station);
    const auto& a = station_.readings[rows.first];
    const auto& b = station_.readings[rows.last];
    const std::string where = a.x == b.x ? "at x " + shown(a.x) : "from x " + shown(a.x) + " to " + shown(b.x);
    out_.push_back({"sides-swapped",
                    Rank::sides,
                    Sureness::likely,
                    station_.name,
                    "",
                    a.x,
                    {station_.readings_from, a.line},
                    "port and starboard have changed places " + where + ": set right, they follow the other rows",
                    "look at the sheet, and exchange the two columns there"});
  }

  void tell_column(ShiftedColumn column, std::vector<Seen>& seen) {
    const job::Reading &first = station_.readings[column.first], &unread = station_.readings[column.unread];
    std::string names;
    const Columns& columns = column.columns;
    for (const auto& [is, name] :
         {std::pair{columns.port, "port"}, {columns.starboard, "starboard"}, {columns.caliper, "caliper"}})
      if (is) names += (names.empty() ? "" : " and ") + std::string(name);
    const bool one = !columns.starboard || !columns.port;
    const std::string where = column.too_low ? "a row too low" : "a row too high";
    out_.push_back({"column-slipped",
                    Rank::sides,
                    column.plain ? Sureness::likely : Sureness::look,
                    station_.name,
                    "",
                    first.x,
                    {station_.readings_from, first.line},
                    "from x " + shown(first.x) + " on the " + names + (one ? " column stands " : " columns stand ") + where +
                        ": each number fits the row " + (column.too_low ? "before" : "after") + " its own",
                    "look at the sheet, and move " + std::string(one ? "it " : "them ") + (column.too_low ? "up" : "down") +
                        " a row from there; then x " + shown(unread.x) + " has none: measure that place again"});
    if (!column.plain) return;
    judged_.station = std::move(column.set_right);
    seen = seen_at(judged_.station);
  }

  void exchange(ExchangedRows rows, std::vector<Seen>& seen) {
    auto &a = judged_.station.readings[rows.first], &b = judged_.station.readings[rows.second];
    std::swap(a.port, b.port);
    std::swap(a.starboard, b.starboard);
    std::swap(a.caliper, b.caliper);
    seen = seen_at(judged_.station);
    sorted_ = std::move(rows.sorted);
    out_.push_back({"rows-exchanged",
                    Rank::reading,
                    Sureness::likely,
                    station_.name,
                    "",
                    a.x,
                    {station_.readings_from, a.line},
                    "what was read at x " + shown(a.x) + " and at x " + shown(b.x) +
                        " have changed places: each fits where the other stands",
                    "look at the sheet, and exchange the readings of the two rows there"});
  }

  void tell() {
    std::sort(suspects_.begin(), suspects_.end(), [](const Suspect& a, const Suspect& b) {
      return a.seen.row != b.seen.row ? a.seen.row < b.seen.row : a.seen.kind < b.seen.kind;
    });
    for (const Suspect& one : suspects_) forget(one.seen);
    tell_hollows();
    while (!suspects_.empty()) {
      std::vector<Suspect> row;
      const std::size_t at = suspects_.front().seen.row;
      while (!suspects_.empty() && suspects_.front().seen.row == at) {
        row.push_back(suspects_.front());
        suspects_.erase(suspects_.begin());
      }
      tell_row(row);
    }
  }

  void forget(const Seen& seen) {
    auto& reading = judged_.station.readings[seen.row];
    if (seen.kind == Kind::port) reading.port.reset();
    else if (seen.kind == Kind::starboard) reading.starboard.reset();
    else reading.caliper.reset();
  }

  // Neighbours on one side that miss to one side are a place of the blade, not slips of the pen.
  void tell_hollows() {
    for (const Kind kind : {Kind::port, Kind::starboard, Kind::caliper}) {
      std::vector<std::size_t> rows;  // with this kind of reading
      for (std::size_t r = 0; r < station_.readings.size(); ++r) {
        const auto& reading = station_.readings[r];
        if (kind == Kind::port ? reading.port : kind == Kind::starboard ? reading.starboard : reading.caliper) rows.push_back(r);
      }
      std::vector<Suspect> run;
      for (std::size_t k = 0; k <= rows.size(); ++k) {
        const auto here = std::find_if(suspects_.begin(), suspects_.end(), [&](const Suspect& s) {
          return k < rows.size() && s.seen.row == rows[k] && s.seen.kind == kind;
        });
        const auto one = here != suspects_.end() ? std::optional(*here) : std::nullopt;
        if (!one || (!run.empty() && one->off() * run.front().off() <= 0)) {
          if (run.size() >= 2 && run.front().seen.x != run.back().seen.x) tell_hollow(run);  // not one place read twice
          run.clear();
        }
        if (one) run.push_back(*one);
      }
    }
  }

  void tell_hollow(const std::vector<Suspect>& run) {
    const auto deepest = *std::max_element(
        run.begin(), run.end(), [](const Suspect& a, const Suspect& b) { return std::abs(a.off()) < std::abs(b.off()); });
    const bool low = deepest.off() < 0;
    out_.push_back({low ? "hollow" : "bump",
                    Rank::blade,
                    Sureness::likely,
                    station_.name,
                    name_of(deepest.seen.kind),
                    deepest.seen.x,
                    {station_.readings_from, deepest.seen.line},
                    std::to_string(run.size()) + " readings side by side, x " + shown(run.front().seen.x) + " to " +
                        shown(run.back().seen.x) + ", are up to " + shown(std::abs(deepest.off())) + (low ? " low" : " high"),
                    "lay a batten there: the blade may be so, or the rule stood askew"});
    std::erase_if(suspects_, [&](const Suspect& s) {
      return std::any_of(run.begin(), run.end(),
                         [&](const Suspect& r) { return r.seen.row == s.seen.row && r.seen.kind == s.seen.kind; });
    });
  }

  void tell_row(const std::vector<Suspect>& row) {
    if (row.size() >= 2 && one_way(row)) return tell_place(row);
    for (const Suspect& one : row) {
      if (row.size() == 1 && out_of_order(one.seen.row) && place_that_fits(one.seen.row)) return tell_place(row);
      tell_slip(one);
    }
  }

  static bool one_way(const std::vector<Suspect>& row) {
    return std::all_of(row.begin(), row.end(), [&](const Suspect& s) { return s.off() * row.front().off() > 0; });
  }

  // Rows in the order of the file; lines tell it, where each row has its own.
  bool out_of_order(std::size_t row) const {
    const auto [before, after] = neighbours(row);
    const double x = station_.readings[row].x;
    return before && after && *before < *after && (x < *before || x > *after);
  }
  std::pair<std::optional<double>, std::optional<double>> neighbours(std::size_t row) const {
    const int line = station_.readings[row].line;
    const job::Reading *before = nullptr, *after = nullptr;
    for (const job::Reading& one : station_.readings) {
      if (one.line < line && (!before || one.line > before->line)) before = &one;
      if (one.line > line && (!after || one.line < after->line)) after = &one;
    }
    return {before ? std::optional(before->x) : std::nullopt, after ? std::optional(after->x) : std::nullopt};
  }

  // An x at which all of the row's readings would be right.
  std::optional<Meant> place_that_fits(std::size_t row) const {
    const job::Reading& reading = station_.readings[row];
    const auto near = neighbours(row);
    const bool ordered = near.first && near.second && *near.first < *near.second;
    const auto fits = [&](double x) {
      if (x < 0 || x > station_.chord || (ordered && (x <= *near.first || x >= *near.second))) return false;
      std::vector<Seen> asked;
      for (const Seen& one : seen_at(station_)) {
        if (one.row != row) continue;
        asked.push_back(one);
        asked.back().x = x;
      }
      const auto expected = expected_at(asked, sorted_.agreeing, sorted_.frame, sorted_.smooth);
      for (std::size_t k = 0; k < expected.size(); ++k) {
        if (std::abs(asked[k].value - expected[k].value) > fits_within * expected[k].error) return false;
      }
      return !expected.empty();
    };
    auto meant = meant_by(reading.x, job_.units, fits);
    if (!meant && ordered && fits((*near.first + *near.second) / 2))
      meant = Meant{(*near.first + *near.second) / 2, "it is out of the order of the rows"};
    return meant;
  }

  void tell_place(const std::vector<Suspect>& row) {
    const job::Reading& reading = station_.readings[row.front().seen.row];
    const auto meant = place_that_fits(row.front().seen.row);
    std::string what = "all that was read at x " + shown(reading.x) + " is about " + shown(std::abs(row.front().off())) +
                       (row.front().off() > 0 ? " too much" : " too little");
    what += meant ? "; it would fit at x " + shown(meant->mm) + " (" + meant->how + ")" : ": x itself may be wrong";
    out_.push_back({"x-slipped",
                    Rank::reading,
                    meant ? Sureness::likely : Sureness::look,
                    station_.name,
                    "",
                    reading.x,
                    {station_.readings_from, reading.line},
                    std::move(what),
                    meant ? "look at the sheet, and correct x" : "look at the sheet; measure this place again"});
  }

  /// What the row's other two readings make of it, port + starboard being what calipers read; nothing where one of them
  /// was not taken, or is in doubt itself.
  std::optional<double> by_the_other_two(const Seen& seen) const {
    const job::Reading& row = judged_.station.readings[seen.row];
    if (seen.kind == Kind::caliper) return row.port && row.starboard ? std::optional(*row.port + *row.starboard) : std::nullopt;
    const auto& other = seen.kind == Kind::port ? row.starboard : row.port;
    return other && row.caliper ? std::optional(*row.caliper - *other) : std::nullopt;
  }
  static const char* names_of_other_two(Kind kind) {
    return kind == Kind::caliper ? "both sides" : kind == Kind::port ? "starboard and the caliper" : "port and the caliper";
  }

  std::optional<double> board_of(Kind kind) const {
    if (station_.measured_by != job::MeasuredBy::gaps || kind == Kind::caliper) return std::nullopt;
    return kind == Kind::port ? station_.board_port : station_.board_starboard;
  }
  /// What was probably meant, judged by the digits as they were written; of a gap whose board is not known, nothing.
  std::optional<Meant> as_written(const Slip& slip, const std::function<bool(double)>& fits, std::optional<double> third) const {
    if (!slip.board) return meant_by(slip.read, job_.units, fits, third);
    const double board = *slip.board;
    if (third) third = board - *third;
    auto gap = meant_by(
        board - slip.read, job_.units, [&](double mm) { return fits(board - mm); }, third);
    if (gap) gap->mm = board - gap->mm;
    return gap;
  }

  void tell_slip(const Suspect& one) {
    const double size = one.size();
    const auto fits = [&](double mm) { return std::abs(mm - one.expected.value) < fits_within * one.expected.error; };
    Slip slip{one.seen.value, one.expected.value, {}, {}, board_of(one.seen.kind)};
    auto third = by_the_other_two(one.seen);
    if (third && !fits(*third)) third.reset();
    const auto meant = as_written(slip, fits, third);
    if (meant) slip.fits = meant->mm, slip.how = meant->how;
    const auto length = [&](double mm) { return slip.shown(mm, job_.units); };
    std::string what = length(one.seen.value) + " where the others say " + length(one.expected.value) + ", give or take " +
                       shown(one.expected.error);
    if (meant) what += "; " + length(meant->mm) + " would fit (" + meant->how + ")";
    if (third) what += "; by " + std::string(names_of_other_two(one.seen.kind)) + " it is " + length(*third);
    out_.push_back({"slipped-digit",
                    Rank::reading,
                    size > 8     ? Sureness::certain
                    : size > 5.5 ? Sureness::likely
                                 : Sureness::look,
                    station_.name,
                    name_of(one.seen.kind),
                    one.seen.x,
                    {station_.readings_from, one.seen.line},
                    std::move(what),
                    "look at the sheet; measure this place again",
                    std::move(slip)});
  }

  std::string shown(double mm) const { return in_unit(mm, job_.units); }

  const job::Job& job_;
  const job::Station& station_;
  Frame frame_;
  std::vector<Finding>& out_;
  StationJudged judged_;
  bool first_ = true;
  Sorted sorted_;  ///< of the part judged last
  std::vector<Suspect> suspects_;
};

}  // namespace

StationJudged judge_readings(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out) {
  return StationJudge(job, station, sigma, out).run();
}

}  // namespace fairblade::check
