#include "check/sheet.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "base/numerics.hpp"
#include "base/units.hpp"
#include "check/other_units.hpp"
#include "job/own_error.hpp"

namespace fairblade::check {
namespace {

using job::Station;

constexpr double usual_depth = 2.3;  // of a blade, by its chord; common practice, no source

}  // namespace

Finding of_station(const Station& station, const char* code, Rank rank, std::string what, std::string remedy) {
  return {code, rank, Sureness::certain, station.name, "", std::nullopt, station.place, std::move(what), std::move(remedy)};
}

std::vector<double> chords_of(const job::Job& job) {
  std::vector<double> out;
  for (const Station& station : job.stations) out.push_back(station.chord);
  return out;
}

double furthest_aft(const Station& station) {
  double out = 0;
  for (const job::Reading& r : station.readings) out = std::max(out, r.x);
  return out;
}

double half_thickness(const Station& station) {
  std::vector<double> sizes;
  for (const job::Reading& r : station.readings) {
    if (r.port && r.starboard) sizes.push_back((*r.port + *r.starboard) / 2);
    else if (r.caliper) sizes.push_back(*r.caliper / 2);
    else if (r.port) sizes.push_back(*r.port);
    else if (r.starboard) sizes.push_back(*r.starboard);
  }
  if (sizes.empty()) return 0;
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  return sizes[sizes.size() >= 9 ? 2 : 0];
}

namespace {

// The thickness read furthest aft, and what there was before it; nothing without both sides (or a caliper).
std::optional<double> thickness_of(const job::Reading& r) {
  if (r.port && r.starboard) return *r.port + *r.starboard;
  if (r.caliper) return *r.caliper;
  return std::nullopt;
}

struct Tail {
  double x = 0, thickness = 0, before_x = 0, before = 0;
};
std::optional<Tail> tail_of(const Station& station) {
  std::vector<std::pair<double, double>> thick;
  for (const job::Reading& r : station.readings) {
    const auto t = thickness_of(r);
    if (t && (thick.empty() || r.x > thick.back().first)) thick.emplace_back(r.x, *t);
  }
  if (thick.size() < 3) return std::nullopt;
  return Tail{thick.back().first, thick.back().second, thick[thick.size() - 2].first, thick[thick.size() - 2].second};
}

bool ends_at_chord(const Station& station, double slack) { return std::abs(furthest_aft(station) - station.chord) <= slack; }

void tell_chord(const Station& station, const job::Job& job, std::string why, Sureness sure, std::vector<Finding>& out) {
  auto finding = of_station(station, "chord-disagrees", Rank::outline,
                            "the chord is " + in_unit(station.chord, job.units) + ", but " + std::move(why),
                            "measure the chord again, and look at the last x");
  finding.sure = sure;
  finding.x = furthest_aft(station);
  out.push_back(std::move(finding));
}

/// The readings run on past the chord's end: a wrong chord, or one slip of x.
void tell_beyond_chord(const job::Job& job, const Station& station, double last, double slack, std::vector<Finding>& out) {
  const auto tail = tail_of(station);
  std::size_t outside = 0;
  for (const auto& r : station.readings) outside += r.x > station.chord + slack ? 1 : 0;
  // One place that is thick, while the others keep within the chord, is a slip of x.
  if (outside != 1 || !tail || tail->x != last || tail->thickness <= 0.35 * 2 * half_thickness(station)) {
    return tell_chord(station, job, "the readings run to " + in_unit(last, job.units), Sureness::certain, out);
  }
  const auto& r = *std::find_if(station.readings.begin(), station.readings.end(), [&](const auto& one) { return one.x == last; });
  out.push_back({"x-slipped",
                 Rank::reading,
                 Sureness::certain,
                 station.name,
                 "",
                 last,
                 {station.readings_from, r.line},
                 "x lies " + in_unit(last - station.chord, job.units) + " beyond the chord, and the blade is " +
                     in_unit(tail->thickness, job.units) + " thick there",
                 "look at the sheet, and correct x"});
}

}  // namespace

void judge_extents(const job::Job& job, double sigma, std::vector<bool>& aside, std::vector<Finding>& out) {
  const double slack = std::max(3 * sigma, 1.0);  // a tape's, at each end
  for (std::size_t k = 0; k < job.stations.size(); ++k) {
    const Station& station = job.stations[k];
    if (aside[k]) continue;
    const double last = furthest_aft(station);
    const auto tail = tail_of(station);
    const auto most = 2 * half_thickness(station);
    const auto ahead = std::min_element(station.readings.begin(), station.readings.end(), [](const auto& a, const auto& b) {
                         return a.x < b.x;
                       })->x;
    if (ahead < -slack) {
      tell_chord(station, job, "a reading lies " + in_unit(-ahead, job.units) + " ahead of the leading edge", Sureness::certain,
                 out);
      out.back().x = ahead;
      out.back().remedy = "look at the chord, \"ahead\" and where x is counted from";
      aside[k] = true;
      continue;
    }
    if (last > station.chord + slack) {
      tell_beyond_chord(job, station, last, slack, out);
      aside[k] = true;
      continue;
    }
    if (!tail || last > station.chord - slack) continue;
    std::size_t ending = 0, others = 0;
    for (std::size_t j = 0; j < job.stations.size(); ++j) {
      if (j == k) continue;
      ++others;
      ending += ends_at_chord(job.stations[j], slack) ? 1u : 0u;
    }
    const bool others_end = others >= 2 && ending == others;
    // Straight on from the last two readings, the two faces would have met long before the chord's end.
    const double fall = (tail->before - tail->thickness) / (tail->x - tail->before_x);
    const double left = tail->thickness - fall * (station.chord - tail->x);
    const double reach = (station.chord - tail->x) / (tail->x - tail->before_x);
    const double left_error = sigma * std::sqrt(2.0) * std::hypot(1 + reach, reach);
    if (left < -4.5 * left_error || (others_end && tail->thickness < 0.25 * most)) {
      tell_chord(station, job,
                 "the last reading is at " + in_unit(last, job.units) +
                     (left < -4.5 * left_error ? ", where the faces all but meet"
                                               : "; the other stations are read to the end of theirs"),
                 left < -4.5 * left_error ? Sureness::likely : Sureness::look, out);
      aside[k] = true;
    }
  }
}

namespace {

/// How unevenly heights follow each other: their widest step over their narrowest.
double unevenness(std::vector<double> downs) {
  std::sort(downs.begin(), downs.end());
  double least = 1e300, most = 0;
  for (std::size_t k = 1; k < downs.size(); ++k) {
    least = std::min(least, downs[k] - downs[k - 1]);
    most = std::max(most, downs[k] - downs[k - 1]);
  }
  return least > 0 ? most / least : 1e300;
}

/// The code of heights in that unit.
std::string heights_in(const Unit& unit) {
  const std::string name = unit.code;
  return "heights-in-" + (name == "centimetres" ? "cm" : name);
}

}  // namespace

void judge_heights(const job::Job& job, std::vector<Finding>& out) {
  if (job.stations.size() < 2) return;
  std::vector<double> downs;
  for (const Station& station : job.stations) downs.push_back(station.down);
  const double span = downs.back() - downs.front(), chord = median(chords_of(job));
  const bool far_bottom = job.bottom && *job.bottom - downs.front() > 5 * span;
  if (span < 0.3 * chord || far_bottom) {
    const double share = far_bottom ? span / (*job.bottom - downs.front()) : span / chord;
    const auto found = nearest_unit(share, far_bottom ? 0.96 : usual_depth, 4, units_of_heights(job.units));
    const std::string like = found ? found->words : "another unit";
    out.push_back({found ? heights_in(*found) : "heights-close", Rank::heights, Sureness::likely, "", "", std::nullopt,
                   job.stations.front().place,
                   "the stations lie within " + in_unit(span, job.units) + " of each other, on a chord of " +
                       in_unit(chord, job.units) +
                       (far_bottom ? " and a blade that ends at " + in_unit(*job.bottom, job.units) : std::string()) +
                       ": their heights look like " + like,
                   "write \"down\" in " + std::string(name_of(job.units)) + "; leave it if they are that close"});
    return;
  }
  // One station whose height has slipped: set right, all steps are nearly even.
  if (job.stations.size() < 4) return;
  const double now = unevenness(downs);
  std::vector<Unit> meant = other_units(job.units);
  for (const double factor : {10.0, 0.1}) meant.push_back({"", "a slipped point", factor});  // after the units: cm among mm
  for (std::size_t k = 0; k < downs.size(); ++k) {
    for (const Unit& unit : meant) {
      auto other = downs;
      other[k] *= unit.factor;
      if (other[k] == downs[k] || now < 4 || unevenness(other) > std::min(1.5, now / 4)) continue;
      const Station& station = job.stations[k];
      auto finding = of_station(station, "height-slipped", Rank::heights,
                                "its height " + in_unit(station.down, job.units) + " looks like " + unit.words + ": " +
                                    in_unit(other[k], job.units) + " would stand evenly among the others",
                                "look at the sheet, and correct \"down\"");
      if (*unit.code != '\0') finding.code = heights_in(unit);
      finding.sure = Sureness::likely;
      out.push_back(std::move(finding));
      return;
    }
  }
}

void judge_coverage(const job::Job& job, std::size_t k, std::vector<Finding>& out, std::vector<std::string>& notes) {
  constexpr std::size_t fewest = 7;    // practice: eight to twelve
  constexpr double widest_gap = 0.35;  // of the chord
  const Station& station = job.stations[k];
  const auto has = [&](const job::Reading& r, int side) {
    return r.caliper.has_value() || (side == 0 ? r.port.has_value() : r.starboard.has_value());
  };
  std::array<std::vector<double>, 2> places;
  for (int side = 0; side < 2; ++side) {
    for (const job::Reading& r : station.readings) {
      auto& mine = places[static_cast<std::size_t>(side)];
      if (has(r, side) && (mine.empty() || r.x > mine.back() + job::same_place)) mine.push_back(r.x);
    }
  }
  const bool alike = places[0] == places[1];
  for (std::size_t side = 0; side < (alike ? 1u : 2u); ++side) {
    const auto& mine = places[side];
    const std::string on = alike ? "" : side == 0 ? "port" : "starboard";
    const auto add = [&](const char* code, Sureness sure, std::string what, std::string remedy, std::optional<double> x) {
      auto finding = of_station(station, code, Rank::coverage, std::move(what), std::move(remedy));
      finding.side = on;
      finding.sure = sure;
      finding.x = x;
      out.push_back(std::move(finding));
    };
    if (mine.empty()) {
      add("one-side-only", Sureness::certain, "nothing was read on this side", "read it too, or put a caliper over both",
          std::nullopt);
      continue;
    }
    if (section::tail_unread(mine.back(), station.chord)) {
      add("tail-not-read", Sureness::certain,
          "nothing was read aft of x " + in_unit(mine.back(), job.units) + " of the " + in_unit(station.chord, job.units) +
              " chord",
          "read on to the trailing edge, and at the edge itself", mine.back());
      out.back().rank = Rank::outline;
    }
    if (mine.size() < fewest) {
      add("too-few-readings", Sureness::certain,
          "only " + std::to_string(mine.size()) + " places were read" + (alike ? "" : " on this side"),
          "read eight to twelve a side, crowded toward the nose", std::nullopt);
      continue;
    }
    const auto in_tenth =
        std::count_if(mine.begin(), mine.end(), [&](double x) { return x > job::same_place && x <= 0.1 * station.chord; });
    if (in_tenth == 0 && station.skeg == 0) {
      add("first-tenth-empty", Sureness::certain,
          "no reading in the first tenth of the chord (" + in_unit(station.chord / 10, job.units) + "), where the nose is",
          "read three or four places there", std::nullopt);
    }
    for (std::size_t j = 1; j < mine.size(); ++j) {
      if (mine[j] - mine[j - 1] < widest_gap * station.chord) continue;
      add("gap-in-readings", Sureness::certain,
          "nothing was read between x " + in_unit(mine[j - 1], job.units) + " and " + in_unit(mine[j], job.units),
          "read a place or two in between", mine[j - 1]);
    }
    if (station.skeg == 0 && mine.front() > job::same_place) {
      const std::string note = "read x = 0 too: it tells whether the leading edge is worn";
      if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
    }
  }
}

}  // namespace fairblade::check
