#include "check/findings.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/side_by_side.hpp"
#include "base/units.hpp"
#include "check/blade.hpp"
#include "check/readings.hpp"
#include "check/sheet.hpp"

namespace fairblade::check {

const char* name_of(Sureness sureness) {
  switch (sureness) {
    case Sureness::certain: return "almost certain";
    case Sureness::likely: return "likely";
    case Sureness::look: break;
  }
  return "worth a look";
}

std::string Slip::shown(double mm, LengthUnit unit) const {
  return in_unit(mm, unit) + (board ? " (a gap of " + in_unit(*board - mm, unit) + ")" : "");
}

bool spoils(const Finding& finding) { return finding.rank < Rank::blade; }

std::vector<Finding> almost_certain_slips(const Findings& findings) {
  std::vector<Finding> out;
  for (const Finding& one : findings.list) {
    if (spoils(one) && one.sure == Sureness::certain) out.push_back(one);
  }
  return out;
}

namespace {

/// A scan's stations are held against each other by some of their rows: no pen slipped there, and each row is weighed against
/// every other station.
void thin(std::vector<job::Reading>& readings) {
  constexpr std::size_t most = 150;
  if (readings.size() <= most) return;
  for (std::size_t k = 0; k < most; ++k) readings[k] = readings[k * (readings.size() - 1) / (most - 1)];
  readings.resize(most);
}

/// The stations that the section room takes; those that it refuses were named by the sheet's judges, or are now.
Stations measure(const job::Job& job, const std::vector<StationJudged>& judged, const std::vector<bool>& aside,
                 std::vector<double>& lost, std::vector<Finding>& out) {
  Stations blade;
  blade.job = job;
  blade.job.stations.clear();
  blade.job.coating_to_strip = 0;  // the readings are judged as they were read
  for (std::size_t k = 0; k < job.stations.size(); ++k) {
    if (aside[k]) continue;
    job::Station station = judged[k].station;
    std::erase_if(station.readings, [](const job::Reading& r) { return !r.port && !r.starboard && !r.caliper; });
    for (job::Reading& r : station.readings) r.x = std::clamp(r.x, 0.0, station.chord);
    if (station.readings.size() < 3) continue;
    thin(station.readings);
    auto measured = section::measure_section(blade.job, station);
    if (!measured) {
      const Fault& fault = measured.faults().front();
      out.push_back({"sides-disagree", Rank::sides, Sureness::certain, station.name, "", std::nullopt, fault.place, fault.what,
                     fault.remedy});
      continue;
    }
    blade.fitted.push_back(form::fit_form(*measured, job.reading_error));
    blade.measured.push_back(std::move(*measured));
    blade.job.stations.push_back(std::move(station));
    lost.push_back(judged[k].nose_lost);
  }
  return blade;
}

std::size_t places_read(const job::Station& station) {
  std::size_t out = 0;
  for (std::size_t k = 0; k < station.readings.size(); ++k) {
    if (k == 0 || station.readings[k].x > station.readings[k - 1].x + job::same_place) ++out;
  }
  return out;
}

// Where one reading of a place was found wrong by the fair line, what its repeats and the caliper say of the place is told with
// it, not twice: the line of the reading that is wrong is worth more than the lines of those that disagree.
void say_once(std::vector<Finding>& list) {
  const auto same_place = [](const Finding& a, const Finding& b) {
    return a.station == b.station && a.x && b.x && std::abs(*a.x - *b.x) < job::same_place;
  };
  std::vector<Finding> kept;
  for (const Finding& one : list) {
    const bool misplaced = one.code == "x-out-of-order" && std::any_of(list.begin(), list.end(), [&](const Finding& s) {
                             return s.code == "x-slipped" && same_place(s, one);
                           });
    if (misplaced) continue;
    const auto twice = std::find_if(list.begin(), list.end(), [&](const Finding& r) {
      return r.code == "repeats-disagree" && same_place(r, one) && (r.side.empty() || r.side == one.side);
    });
    const bool in_row = one.code == "slipped-digit" && twice != list.end();
    const bool told_better = std::any_of(list.begin(), list.end(), [&](const Finding& s) {
      if (s.code != "slipped-digit" || !same_place(s, one)) return false;
      return one.code == "caliper-disagrees" || (one.code == "repeats-disagree" && (one.side.empty() || one.side == s.side));
    });
    if (told_better) continue;
    kept.push_back(one);
    if (in_row) {
      kept.back().what += "; " + twice->what.substr(0, twice->what.find(": "));
      kept.back().sure = std::min(one.sure, twice->sure);
    }
    if (one.code != "slipped-digit" || one.side != "caliper") continue;
    const auto caliper = std::find_if(list.begin(), list.end(),
                                      [&](const Finding& c) { return c.code == "caliper-disagrees" && same_place(c, one); });
    if (caliper == list.end()) continue;
    kept.back().code = "caliper-disagrees";
    kept.back().what = "the caliper says " + one.what;
  }
  // Readings of one face found low or high by their neighbours and by the other stations: the first is enough.
  std::vector<Finding> out;
  for (const Finding& one : kept) {
    const bool shape = one.code == "hollow" || one.code == "bump";
    const bool told = shape && std::any_of(out.begin(), out.end(), [&](const Finding& o) {
                        return o.code == one.code && o.station == one.station && (o.side.empty() || o.side == one.side);
                      });
    if (!told) out.push_back(one);
  }
  list = std::move(out);
}

void notes_on(const job::Job& job, Findings& findings) {
  if (job.stations.size() < 3) findings.notes.push_back("three stations or more tell twist, lean and hollows along the span");
  if (findings.own.left_out > 0)
    findings.notes.push_back(
        (findings.own.left_out == 1 ? std::string("a place was") : std::to_string(findings.own.left_out) + " places were") +
        " read more than once with readings too far apart to be scatter: left out of your own error");
  else if (findings.own.repeats == 0)
    findings.notes.push_back("read a few places twice: it tells your own error, here taken as " +
                             in_unit(findings.own.mm, job.units));
  const bool caliper = std::any_of(job.stations.begin(), job.stations.end(), [](const job::Station& s) {
    return std::any_of(s.readings.begin(), s.readings.end(), [](const job::Reading& r) { return r.caliper.has_value(); });
  });
  if (!caliper) findings.notes.push_back("put a caliper over some places too: port + starboard should be what it reads");
}

}  // namespace

Findings find(const job::Job& job) {
  Findings out;
  out.own = own_error_of(job);
  const double sigma = out.own.mm;
  out.stations = static_cast<int>(job.stations.size());
  for (const job::Station& station : job.stations) out.readings += static_cast<int>(seen_at(station).size());

  std::vector<bool> aside(job.stations.size(), false);
  judge_units(job, aside, out.list);
  const bool other_units = std::find(aside.begin(), aside.end(), false) == aside.end();
  if (!other_units) judge_heights(job, out.list);
  judge_extents(job, sigma, aside, out.list);
  std::vector<StationJudged> judged(job.stations.size());
  std::vector<Findings> each(job.stations.size());
  side_by_side(each.size(), [&](std::size_t k) {
    if (aside[k]) return;
    const job::Station& station = job.stations[k];
    judge_coverage(job, k, each[k].list, each[k].notes);
    judge_order(job, station, each[k].list);
    judge_calipers(job, station, sigma, each[k].list);
    judge_repeats(job, station, sigma, each[k].list);
    if (places_read(station) < 3) judged[k].station = station;
    else judged[k] = judge_readings(job, station, sigma, each[k].list);
  });
  std::vector<double> scatters;
  for (std::size_t k = 0; k < each.size(); ++k) {
    // What was not read is not judged by how it looks when it is carried on.
    const auto half_read = [](const Finding& one) { return one.code == "tail-not-read"; };
    if (std::any_of(each[k].list.begin(), each[k].list.end(), half_read)) aside[k] = true;
    out.list.insert(out.list.end(), each[k].list.begin(), each[k].list.end());
    out.notes.insert(out.notes.end(), each[k].notes.begin(), each[k].notes.end());
    if (judged[k].scatter > 0) scatters.push_back(judged[k].scatter * sigma);
  }
  if (!scatters.empty()) out.own.about_fair_lines = median(scatters);

  std::vector<double> lost;
  const Stations blade = measure(job, judged, aside, lost, out.list);
  judge_noses(blade, lost, sigma, out.list);
  judge_swapped_stations(blade, sigma, out.list);
  const bool swapped =
      std::any_of(out.list.begin(), out.list.end(), [](const Finding& one) { return one.code == "sides-swapped"; });
  if (!swapped) {
    judge_twist(blade, sigma, out.list);
    judge_lean(blade, sigma, out.list);
  }
  const bool heights =
      std::any_of(out.list.begin(), out.list.end(), [](const Finding& one) { return one.rank == Rank::heights; });
  if (!swapped && !heights) judge_along_the_span(blade, sigma, out.list);

  say_once(out.list);
  notes_on(job, out);
  std::stable_sort(out.list.begin(), out.list.end(),
                   [](const Finding& a, const Finding& b) { return a.rank != b.rank ? a.rank < b.rank : a.sure < b.sure; });
  return out;
}

}  // namespace fairblade::check
