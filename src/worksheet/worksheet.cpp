#include "worksheet/worksheet.hpp"

#include <cassert>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::worksheet {
namespace {

constexpr int most_stations = 26;    // named by letters
constexpr double deep_blade = 1000;  // mm; below it three stations are enough

/// Heights that one finds on a tape: 5 mm, or a quarter of an inch; on a small model finer.
double height_step(const Spacing& spacing) {
  const double between = spacing.span / spacing.stations;
  constexpr double close = 40;  // mm
  if (spacing.units == LengthUnit::inch) return between > close ? mm_per_inch / 4 : mm_per_inch / 16;
  return between > close ? 5 : 1;
}

std::vector<Warning> advice_on(const job::ToMeasure& job) {
  const std::size_t count = job.stations.size();
  const double top = job.stations.front().down;
  const double depth = job.bottom.value_or(job.stations.back().down) - top;
  if (count < 3) {
    return {{"few-stations", "job",
             "three stations at least are wanted, better five: between them the blade is taken to run straight"}};
  }
  if (depth > deep_blade && count < 5) {
    return {{"few-stations", "job",
             "on a blade deeper than " + on_rule_with_unit(deep_blade, job.units) +
                 " five stations are wanted, and one at each kink of the outline"}};
  }
  return {};
}

}  // namespace

Worksheet worksheet_of(job::ToMeasure job) {
  assert(!job.stations.empty());
  Worksheet out;
  for (const job::StationToMeasure& station : job.stations) out.places.push_back(suggested_places(station, job.units));
  out.twice = job.stations.size() / 2;
  out.advice = advice_on(job);
  out.job = std::move(job);
  return out;
}

Outcome<std::vector<job::StationToMeasure>> evenly_spaced(const Spacing& spacing) {
  if (spacing.stations < 1 || spacing.stations > most_stations) {
    return Fault{{"--stations", 0},
                 "there cannot be " + std::to_string(spacing.stations) + " stations",
                 "give 1 to " + std::to_string(most_stations) + "; three at least are wanted, five above a metre"};
  }
  const double step = height_step(spacing);
  constexpr double nearest = 10;  // mm; nobody's boards stand closer
  if (spacing.span < nearest * spacing.stations) {
    return Fault{
        {"--span", 0},
        on_rule_with_unit(spacing.span, spacing.units) + " is too short for " + std::to_string(spacing.stations) + " stations",
        "give fewer stations, or check the unit"};
  }
  std::vector<job::StationToMeasure> out;
  for (int k = 0; k < spacing.stations; ++k) {
    job::StationToMeasure station;
    station.name = std::string(1, static_cast<char>('A' + k));
    const double share = spacing.stations == 1 ? 0.5 : static_cast<double>(k) / (spacing.stations - 1);
    const bool end = share == 0 || share == 1;
    station.down = end ? share * spacing.span : std::round(share * spacing.span / step) * step;
    const double chord = spacing.chord + (spacing.tip_chord - spacing.chord) * station.down / spacing.span;
    const double fine = spacing.units == LengthUnit::inch ? mm_per_inch / 16 : 1;
    station.chord = end ? chord : std::round(chord / fine) * fine;
    out.push_back(station);
  }
  return out;
}

}  // namespace fairblade::worksheet
