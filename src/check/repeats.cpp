// What repeated readings and the caliper tell: one's own error, and where two readings of one thing disagree.
#include <algorithm>
#include <cmath>

#include "base/units.hpp"
#include "check/readings.hpp"
#include "job/own_error.hpp"

namespace fairblade::check {

std::optional<EdgeThickness> edge_thickness(const job::Station& station, double sigma) {
  constexpr double at_edge = 2e-4;  // of the chord: a sharp nose of 8 mm radius is 2.3 mm thick there
  EdgeThickness out{0, 0};
  double times = 0;
  for (const job::Reading& r : station.readings) {
    if (r.x > at_edge * station.chord) break;
    const bool sides = r.port && r.starboard;
    if (!sides && !r.caliper) continue;
    out.mm += sides ? *r.port + *r.starboard : *r.caliper;
    out.error = std::max(out.error, sides ? std::sqrt(2.0) * sigma : sigma);
    times += 1;
  }
  if (times == 0) return std::nullopt;
  return EdgeThickness{out.mm / times, out.error / std::sqrt(times)};
}

OwnError own_error_of(const job::Job& job) {
  OwnError out;
  out.told_by_owner =
      std::none_of(job.defaults.begin(), job.defaults.end(), [](const DefaultUsed& one) { return one.key == "reading_error"; });
  // What was not told may have been learnt from the repeats already: they are not to count twice.
  out.told = out.told_by_owner ? job.reading_error : job::Job{}.reading_error;
  const job::Repeats all = job::repeats_of(job.stations, out.told, out.told_by_owner);
  out.repeats = all.more;
  out.left_out = all.left_out;
  out.mm = out.told;
  if (out.repeats == 0) return out;
  out.from_repeats = std::sqrt(all.square / out.repeats);
  out.mm = job::own_error(out.told, out.told_by_owner, all);
  return out;
}

namespace {

/// How much greater a station's numbers of one kind are the second time than the first, all along; nothing where they scatter.
std::optional<double> second_time_greater(const job::Station& station, Kind kind, int& line) {
  constexpr std::size_t enough = 5;
  std::vector<Seen> seen = seen_at(station);
  std::erase_if(seen, [&](const Seen& one) { return one.kind != kind; });
  std::vector<double> more;
  int first_line = 0;
  for (std::size_t k = 0; k + 1 < seen.size(); ++k) {
    if (seen[k + 1].x - seen[k].x > job::same_place) continue;
    const bool in_order = seen[k].line <= seen[k + 1].line;
    more.push_back((seen[k + 1].value - seen[k].value) * (in_order ? 1 : -1));
    const int second = std::max(seen[k].line, seen[k + 1].line);
    first_line = first_line == 0 ? second : std::min(first_line, second);
    ++k;  // of three at one place the first two
  }
  if (more.size() < enough) return std::nullopt;
  const auto n = static_cast<double>(more.size());
  double mean = 0, square = 0;
  for (const double one : more) mean += one / n;
  for (const double one : more) square += (one - mean) * (one - mean) / (n - 1);
  const double scatter = std::sqrt(square);
  constexpr double clear = 1.5, sure = 5;
  if (std::abs(mean) < std::max(job::Job{}.reading_error, clear * scatter) || std::abs(mean) * std::sqrt(n) < sure * scatter)
    return std::nullopt;
  line = first_line;
  return mean;
}

/// Read twice with the boards, or the zero, elsewhere: no scatter of the hand, and no greater reading error.
bool judge_second_time(const job::Job& job, const job::Station& station, std::vector<Finding>& out) {
  std::string words;
  int line = 0;
  for (const Kind kind : {Kind::port, Kind::starboard, Kind::caliper}) {
    const auto more = second_time_greater(station, kind, line);
    if (!more) continue;
    words += (words.empty() ? "" : ", ") + std::string(name_of(kind)) + " is " + in_unit(std::abs(*more), job.units) +
             (*more > 0 ? " more" : " less");
  }
  if (words.empty()) return false;
  out.push_back({"second-time-shifted",
                 Rank::sides,
                 Sureness::certain,
                 station.name,
                 "",
                 std::nullopt,
                 {station.readings_from, line},
                 "read twice, and the second time " + words +
                     " all along the chord: the boards stood elsewhere, or the zero was another; that is no reading error",
                 "find out which time is right, and take the other's rows out"});
  return true;
}

}  // namespace

void judge_repeats(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out) {
  if (judge_second_time(job, station, out)) return;
  for (const job::RepeatedPlace& place : job::repeated_places(station)) {
    if (!place.disagrees(sigma)) continue;
    std::string side;  // where it is one alone
    const auto kinds = place.kinds_apart(sigma);
    if (kinds.size() == 1) side = name_of(static_cast<Kind>(kinds.front()));
    out.push_back({"repeats-disagree",
                   Rank::reading,
                   Sureness::likely,
                   station.name,
                   std::move(side),
                   place.x,
                   {station.readings_from, place.lines.back()},
                   job::apart_words(place, sigma, job.units) + ": one of the two, or its x, is a slip",
                   "look at the sheet; measure this place once more"});
  }
}

void judge_calipers(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out) {
  struct Row {
    const job::Reading* reading;
    double off;
  };
  std::vector<Row> rows;
  for (const job::Reading& r : station.readings) {
    if (!r.port || !r.starboard || !r.caliper) continue;
    rows.push_back({&r, *r.port + *r.starboard - *r.caliper});
  }
  if (rows.empty()) return;
  const double one_row = beyond * std::sqrt(3.0) * sigma, many = static_cast<double>(rows.size());
  std::vector<double> offs;
  for (const Row& row : rows) offs.push_back(row.off);
  std::sort(offs.begin(), offs.end());
  const double middle = (offs[(offs.size() - 1) / 2] + offs[offs.size() / 2]) / 2;
  // All rows by the same: not the readings, but where the boards stood (or the caliper's zero).
  const double bias_limit = std::max(1.5 * sigma, one_row / std::sqrt(many) * 1.2533);
  const bool bias = rows.size() >= 4 && std::abs(middle) > bias_limit;
  const auto say = [&](const Row& row, std::string side, std::string what, std::string remedy, Sureness sure, bool with_place) {
    out.push_back({"caliper-disagrees",
                   Rank::caliper,
                   sure,
                   station.name,
                   std::move(side),
                   with_place ? std::optional(row.reading->x) : std::nullopt,
                   {station.readings_from, row.reading->line},
                   std::move(what),
                   std::move(remedy)});
  };
  if (bias) {
    say(rows.front(), "",
        "port + starboard is " + in_unit(std::abs(middle), job.units) + (middle > 0 ? " more" : " less") +
            " than the caliper all along the chord",
        "measure between the boards again, and the caliper's zero", Sureness::likely, false);
  }
  for (const Row& row : rows) {
    const double off = row.off - (bias ? middle : 0);
    if (std::abs(off) < one_row) continue;
    say(row, "",
        "port + starboard is " + in_unit(std::abs(row.off), job.units) + (row.off > 0 ? " more" : " less") + " than the caliper",
        "measure this place again: one of the three has slipped",
        std::abs(off) > 8 * std::sqrt(3.0) * sigma ? Sureness::certain : Sureness::likely, true);
  }
}

}  // namespace fairblade::check
