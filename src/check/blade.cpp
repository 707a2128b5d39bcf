// Noses, and stations whose sides changed places.
#include "check/blade.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.hpp"
#include "check/readings.hpp"
#include "check/span.hpp"
#include "target/twist.hpp"

namespace fairblade::check {
using section::MeasuredSection;

Finding at_station(const Stations& blade, std::size_t k, std::string code, Rank rank, Sureness sure, std::string what,
                   std::string remedy) {
  const job::Station& station = blade.job.stations[k];
  return {std::move(code), rank, sure, station.name, "", std::nullopt, station.place, std::move(what), std::move(remedy)};
}

bool both_sides(const MeasuredSection& measured) { return !measured.thickness_only && !measured.one_side_only; }

double CentreEnds::degrees(double chord) const { return std::atan2(trailing - leading, chord) * 180 / std::numbers::pi; }

std::optional<CentreEnds> centre_ends(const Stations& blade, std::size_t k, double sigma) {
  const MeasuredSection& measured = blade.measured[k];
  if (!both_sides(measured)) {
    const auto twist = target::find_twist(blade.job, blade.measured, blade.fitted);
    if (!twist.stations[k].known) return std::nullopt;
    return CentreEnds{twist.stations[k].leading_edge_off, twist.stations[k].trailing_edge_off, sigma};
  }
  double level = 0, slope = 0, about = 0;
  constexpr int places = 9;
  for (int i = 1; i <= places; ++i) {
    const double share = i / 10.0, x = share * measured.chord;
    const double middle = (measured.port.at(x) - measured.starboard.at(x)) / 2;
    level += middle / places;
    slope += (share - 0.5) * middle;
    about += (share - 0.5) * (share - 0.5);
  }
  slope /= about;
  // Places between readings share them: an edge of a line through n halves of two readings, n some six to nine.
  return CentreEnds{level - slope / 2, level + slope / 2,
                    sigma / std::sqrt(2.0) * std::sqrt(1.0 / 6 + 0.25 / (about * 6.0 / places))};
}

void judge_noses(const Stations& blade, const std::vector<double>& lost, double sigma, std::vector<Finding>& out) {
  for (std::size_t k = 0; k < blade.job.stations.size(); ++k) {
    const job::Station& station = blade.job.stations[k];
    if (station.skeg > 0 || station.target.leading_edge == job::LeadingEdgeWork::leave) continue;
    const auto edge = edge_thickness(station, sigma);
    const bool flat = edge && edge->flat();
    if (!flat && lost[k] == 0) continue;
    std::string what = flat ? "the leading edge is flat, " + in_unit(edge->mm, blade.job.units) + " wide"
                            : "the nose is fuller than a leading edge at x = 0 can be";
    if (lost[k] > 0) what += "; some " + in_unit(lost[k], blade.job.units) + " of it seems to be gone";
    // With `ahead` the worn edge has its place by the stock already, and x from it is as good.
    const std::string count_from = station.ahead ? "" : "count x from the stock, not from the worn edge; ";
    auto finding = at_station(blade, k, "leading-edge-worn", Rank::blade, flat ? Sureness::certain : Sureness::likely,
                              std::move(what), count_from + "ask for the nose to be built out (--extend-leading-edge)");
    if (flat) finding.x = 0;
    if (!station.readings.empty()) finding.place = {station.readings_from, station.readings.front().line};
    out.push_back(std::move(finding));
  }
}

namespace {

// The trailing edge was also measured from the centre plane.
void judge_edges_off_centre(const Stations& blade, double sigma, std::vector<Finding>& out) {
  for (std::size_t k = 0; k < blade.measured.size(); ++k) {
    if (!both_sides(blade.measured[k])) continue;
    const job::Station& station = blade.job.stations[k];
    const job::Reading& last = station.readings.back();
    if (!station.trailing_edge_off_centre || !last.port || !last.starboard || last.x < 0.98 * station.chord) continue;
    const double off = (*last.port - *last.starboard) / 2, said = *station.trailing_edge_off_centre;
    const double error = std::sqrt(1.5) * sigma;
    if (std::abs(off - said) < beyond * error) continue;
    const bool turned = std::abs(off + said) < 3 * error;
    auto finding = at_station(
        blade, k, turned ? "sides-swapped" : "edge-off-centre-disagrees", Rank::sides, Sureness::likely,
        "by its readings the trailing edge stands " + to_side(off, blade.job.units) + ", by trailing_edge_off_centre " +
            to_side(said, blade.job.units),
        turned ? "port and starboard have changed places, or the sign of trailing_edge_off_centre" : "measure the edge again");
    out.push_back(std::move(finding));
  }
}

/// A row of one station: what port is fuller by, and what the other stations make of it, by a straight line through them.
struct Row {
  double x, off, by_others, error;
  int line;
};

std::vector<Row> rows_of(const Stations& blade, const std::vector<std::size_t>& told, std::size_t k, double sigma) {
  constexpr double from = 0.03, to = 0.97;
  const MeasuredSection& mine = blade.measured[k];
  std::vector<Row> out;
  for (const job::Reading& r : blade.job.stations[k].readings) {
    const double share = r.x / mine.chord;
    if (!r.port || !r.starboard || share < from || share > to) continue;
    SpanNumbers others;
    for (const std::size_t j : told) {
      const MeasuredSection& other = blade.measured[j];
      const double x = share * other.chord;
      if (j != k) others.push_back({j, other.down, (other.port.at(x) - other.starboard.at(x)) * mine.chord / other.chord, 0});
    }
    const Straight line = straight_through(others);
    double about = 0;
    for (const SpanNumber& one : others) about += (one.down - line.mean) * (one.down - line.mean);
    const double apart = mine.down - line.mean, n = static_cast<double>(others.size());
    out.push_back({r.x, *r.port - *r.starboard, line.at(mine.down),
                   std::sqrt(2.0) * sigma * std::sqrt(1 + 1 / n + (n > 2 ? apart * apart / about : 0.5)), r.line});
  }
  return out;
}

/// A run of rows that would agree with the other stations if they were turned over.
struct Turned {
  std::size_t station = 0, first = 0, last = 0;
  double gain = 0, left = 0;  ///< of chi squared
  std::vector<Row> rows;
  bool whole() const { return last - first + 1 == rows.size(); }
};

double square_sum(double sum, const Row& row, double off) { return sum + (off / row.error) * (off / row.error); }

/// Chi squared of all rows, those of the run turned over.
double left_by(const Turned& one) {
  double out = 0;
  for (std::size_t i = 0; i < one.rows.size(); ++i) {
    const Row& row = one.rows[i];
    out = square_sum(out, row, i >= one.first && i <= one.last ? row.off + row.by_others : row.off - row.by_others);
  }
  return out;
}
/// The same where the station's boards stood askew or off the centre instead: a straight line is taken out.
double left_by_turning_boards(const std::vector<Row>& rows) {
  SpanNumbers misses;
  for (const Row& row : rows) misses.push_back({0, row.x, row.off - row.by_others, row.error});
  const Straight line = straight_through(misses);
  double out = 0;
  for (const Row& row : rows) out = square_sum(out, row, row.off - row.by_others - line.at(row.x));
  return out;
}

Turned best_turned(std::size_t station, std::vector<Row> rows) {
  Turned best;
  best.station = station;
  double whole_gain = 0, whole_left = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    double gain = 0, left = 0;
    for (std::size_t j = i; j < rows.size(); ++j) {
      const double as_is = (rows[j].off - rows[j].by_others) / rows[j].error,
                   over = (rows[j].off + rows[j].by_others) / rows[j].error;
      gain += as_is * as_is - over * over;
      left += over * over;
      if (i == 0 && j + 1 == rows.size()) {
        whole_gain = gain;
        whole_left = left;
      }
      if (gain > best.gain) best = {station, i, j, gain, left, {}};
    }
  }
  if (whole_gain > 0.75 * best.gain) best = {station, 0, rows.size() - 1, whole_gain, whole_left, {}};
  best.rows = std::move(rows);
  if (!best.whole() && left_by_turning_boards(best.rows) < left_by(best) + 15) best.gain = 0;
  return best;
}

bool convinces(const Turned& one) {
  constexpr double enough = 40;
  return one.gain > enough && one.left < 0.3 * (one.gain + one.left);
}

}  // namespace

void judge_swapped_stations(const Stations& blade, double sigma, std::vector<Finding>& out) {
  judge_edges_off_centre(blade, sigma, out);
  std::vector<std::size_t> told;  // stations whose two sides were read
  for (std::size_t k = 0; k < blade.measured.size(); ++k) {
    if (both_sides(blade.measured[k])) told.push_back(k);
  }
  if (told.size() < 3) return;
  std::vector<Turned> cases;
  for (const std::size_t k : told) {
    auto rows = rows_of(blade, told, k, sigma);
    if (!rows.empty()) cases.push_back(best_turned(k, std::move(rows)));
  }
  const auto best =
      std::max_element(cases.begin(), cases.end(), [](const Turned& a, const Turned& b) { return a.gain < b.gain; });
  if (best == cases.end() || !convinces(*best)) return;
  std::string others;
  for (const Turned& one : cases) {
    if (&one != &*best && one.gain > 0.6 * best->gain && convinces(one))
      others += " (or station " + blade.measured[one.station].station + ")";
  }
  const Row &first = best->rows[best->first], &last = best->rows[best->last];
  const auto unit = blade.job.units;
  auto finding =
      at_station(blade, best->station, "sides-swapped", Rank::sides, others.empty() ? Sureness::certain : Sureness::likely,
                 "port and starboard seem to have changed places" +
                     (best->whole() ? std::string() : " from x " + in_unit(first.x, unit) + " to " + in_unit(last.x, unit)) +
                     others + ": turned over, it agrees with the other stations",
                 best->whole() ? "look at the sheet, and exchange the two columns of this station"
                               : "look at the sheet, and exchange the two columns there");
  if (!best->whole()) finding.x = first.x;
  finding.place = {blade.job.stations[best->station].readings_from, first.line};
  out.push_back(std::move(finding));
}

}  // namespace fairblade::check
