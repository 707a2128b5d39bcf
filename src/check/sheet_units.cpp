// judge_units: sections, chords and sides in another unit than the job's.
#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/units.hpp"
#include "check/other_units.hpp"
#include "check/sheet.hpp"

namespace fairblade::check {

using job::Station;

namespace {

// What a blade of a yacht is, generously: thickness by chord, chord in mm. Common practice, no source.
constexpr double thinnest = 0.0135, thickest = 0.45, shortest_chord = 60, longest_chord = 2500;
constexpr double usual_thickness = 0.12;  // by chord

std::optional<Unit> unit_between(double found, double usual, double slack, LengthUnit unit) {
  return nearest_unit(found, usual, slack, other_units(unit));
}

/// The chord of one station by the straight line through the others, where there are three of them.
std::optional<double> chord_by_the_others(const job::Job& job, std::size_t k) {
  if (job.stations.size() < 4) return std::nullopt;
  double n = 0, x = 0, y = 0, xx = 0, xy = 0;
  for (std::size_t j = 0; j < job.stations.size(); ++j) {
    if (j == k) continue;
    const double down = job.stations[j].down - job.stations[k].down, chord = job.stations[j].chord;
    n += 1, x += down, y += chord, xx += down * down, xy += down * chord;
  }
  const double spread = n * xx - x * x;
  if (!(spread > 0)) return std::nullopt;
  return (xx * y - x * xy) / spread;  // where down is 0
}

/// Inches among centimetres are no seventh of them: a whole station is told by the line of the other chords.
std::optional<Unit> near_unit(const job::Job& job, std::size_t k) {
  if (job.units == LengthUnit::mm) return std::nullopt;
  const Station& station = job.stations[k];
  const auto others = chord_by_the_others(job, k);
  if (!others || *others < 0.3 * station.chord) return std::nullopt;
  const auto found = unit_between(station.chord, *others, 1.1, job.units);
  return found && (found->factor == 2.54 || found->factor == 1 / 2.54) ? found : std::nullopt;
}

double side_size(const Station& station, bool port) {
  std::vector<double> sizes;
  for (const job::Reading& r : station.readings) {
    const auto& value = port ? r.port : r.starboard;
    if (value) sizes.push_back(*value);
  }
  if (sizes.size() < 7) return 0;
  std::sort(sizes.begin(), sizes.end(), std::greater<>());
  return sizes[2];
}

Finding of_the_whole_job(const job::Job& job, const char* code, std::string what, std::string remedy) {
  return {code, Rank::units, Sureness::certain, "", "", std::nullopt, {job.file, 0}, std::move(what), std::move(remedy)};
}

}  // namespace

void judge_units(const job::Job& job, std::vector<bool>& aside, std::vector<Finding>& out) {
  const std::string unit(name_of(job.units));
  const double chord = median(chords_of(job));
  if (chord < shortest_chord && job.units == LengthUnit::mm) {
    // Inches run to some twenty, centimetres to some sixty.
    const bool inches = chord < 25;
    out.push_back(of_the_whole_job(job, inches ? "inches" : "centimetres",
                                   "a blade with a chord of " + in_unit(chord, job.units) + ": this looks like " +
                                       (inches ? "inches" : "centimetres") + " in a job in millimetres",
                                   std::string("say \"units\": \"") + (inches ? "in" : "cm") + "\", or write all lengths in mm"));
    aside.assign(aside.size(), true);
    return;
  }
  if (chord > longest_chord && job.units != LengthUnit::mm) {
    out.push_back(of_the_whole_job(job, "millimetres",
                                   "a blade with a chord of " + in_unit(chord, job.units) +
                                       ": this looks like millimetres in a job in " +
                                       (job.units == LengthUnit::inch ? "inches" : "centimetres"),
                                   "say \"units\": \"mm\", or write all lengths in " + unit));
    aside.assign(aside.size(), true);
    return;
  }
  for (std::size_t k = 0; k < job.stations.size(); ++k) {
    const Station& station = job.stations[k];
    const double extent = furthest_aft(station), half = half_thickness(station);
    const double by_chord = 2 * half / station.chord;
    if (job.stations.size() > 1 && (station.chord < chord / 7 || station.chord > chord * 7)) {
      if (const auto found = unit_between(station.chord, chord, 1.6, job.units)) {
        const bool all = extent < 1.05 * station.chord;  // the readings are small with it
        out.push_back(of_station(station, found->code, Rank::units,
                                 (all ? "chord and readings are " : "the chord is ") + std::string("in ") + found->words +
                                     ", as it seems: chord " + in_unit(station.chord, job.units) +
                                     " where the others have some " + in_unit(chord, job.units),
                                 "write them in " + unit));
        aside[k] = true;
        continue;
      }
    }
    if (const auto found = near_unit(job, k)) {
      auto finding = of_station(station, found->code, Rank::units,
                                "chord and readings look like " + std::string(found->words) + ": chord " +
                                    in_unit(station.chord, job.units) + " where the line of the others has " +
                                    in_unit(*chord_by_the_others(job, k), job.units),
                                "write them in " + unit + "; leave them if the outline is so");
      finding.sure = Sureness::likely;
      out.push_back(std::move(finding));
      aside[k] = true;
      continue;
    }
    if (extent > 3 * station.chord) {
      if (const auto found = unit_between(station.chord, extent, 1.2, job.units)) {
        out.push_back(of_station(station, found->code, Rank::units,
                                 "the chord looks like " + std::string(found->words) + ": " + in_unit(station.chord, job.units) +
                                     " where the readings run to " + in_unit(extent, job.units),
                                 "write it in " + unit));
        aside[k] = true;
        continue;
      }
    }
    const auto in_x = extent < station.chord / 5 || extent > 5 * station.chord
                          ? unit_between(extent, station.chord, 1.2, job.units)
                          : std::nullopt;
    const auto in_size = by_chord < thinnest   ? unit_between(by_chord, usual_thickness, 2.4, job.units)
                         : by_chord > thickest ? unit_between(by_chord, usual_thickness, 2.4, job.units)
                                               : std::nullopt;
    if (in_x || in_size) {
      const Unit found = in_x ? *in_x : *in_size;
      const std::string which = in_x && in_size ? "the readings look" : in_x ? "the places x look" : "the half-breadths look";
      const std::string numbers =
          in_x ? ": they run to " + in_unit(extent, job.units) + " on a chord of " + in_unit(station.chord, job.units)
               : ": the blade would be " + in_unit(2 * half, job.units) + " thick on a chord of " +
                     in_unit(station.chord, job.units);
      auto finding = of_station(station, found.code, Rank::units, which + " like " + found.words + numbers,
                                "write them in " + unit + ", or say \"units\"");
      finding.sure = in_x ? Sureness::certain : Sureness::likely;
      out.push_back(std::move(finding));
      aside[k] = true;
      continue;
    }
    const double port = side_size(station, true), starboard = side_size(station, false);
    if (port > 0 && starboard > 0 && std::max(port, starboard) > 5 * std::min(port, starboard)) {
      const bool port_small = port < starboard;
      if (const auto found = unit_between(std::min(port, starboard), std::max(port, starboard), 1.5, job.units)) {
        auto finding = of_station(station, found->code, Rank::units,
                                  std::string("one side looks like ") + found->words + ": at most " +
                                      in_unit(std::min(port, starboard), job.units) + " where the other has " +
                                      in_unit(std::max(port, starboard), job.units),
                                  "write it in " + unit);
        finding.side = port_small ? "port" : "starboard";
        out.push_back(std::move(finding));
        aside[k] = true;
      }
    }
  }
}

}  // namespace fairblade::check
