// A measuring sheet as it was written, in each way of measuring and unit, for tests that spoil what stands on it.
#pragma once
#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "blade.hpp"
#include "job/job.hpp"

namespace written_sheet {

using namespace fairblade;
using job::MeasuredBy;

struct Yard {
  const char* name;
  MeasuredBy way;
  LengthUnit unit;
  double step;  ///< what is written, in the unit: the last place
  double in(double mm) const { return std::round(mm / millimetres_in(unit) / step) * step; }
};

inline const std::vector<Yard> yards{{"half-breadths in inches", MeasuredBy::half_breadths, LengthUnit::inch, 0.01},
                                     {"half-breadths in centimetres", MeasuredBy::half_breadths, LengthUnit::cm, 0.01},
                                     {"thickness in millimetres", MeasuredBy::thickness, LengthUnit::mm, 0.1},
                                     {"thickness in inches", MeasuredBy::thickness, LengthUnit::inch, 0.01},
                                     {"gaps in millimetres", MeasuredBy::gaps, LengthUnit::mm, 0.1},
                                     {"gaps in centimetres", MeasuredBy::gaps, LengthUnit::cm, 0.01},
                                     {"gaps in inches", MeasuredBy::gaps, LengthUnit::inch, 0.01}};

/// As written; `first` is port, the port gap or the caliper, `second` starboard; a caliper besides on station C.
struct Written {
  double x = 0, first = 0, second = 0;
  std::optional<double> caliper;
};
struct SheetStation {
  std::string name;
  double down = 0, chord = 0, board = 0;
  std::vector<Written> rows;
};
struct Sheet {
  Yard yard;
  std::vector<SheetStation> stations;
  bool sides() const { return yard.way != MeasuredBy::thickness; }
};

constexpr double port_fuller = 0.006, starboard_fuller = -0.002;
inline double half(double x, bool port) {
  return blade::naca(0.125, x) + (port ? port_fuller : starboard_fuller) * x * (1 - x) * 4;
}

inline Sheet good(const Yard& yard, unsigned seed) {
  std::mt19937 random(seed);
  std::normal_distribution<double> noise(0, 0.5);
  Sheet out{yard, {}};
  const double chords[] = {420, 391, 362, 334, 305};
  for (int k = 0; k < 5; ++k) {
    SheetStation station{std::string(1, static_cast<char>('A' + k)), yard.in(240.0 * k), yard.in(chords[k]), yard.in(75), {}};
    for (const double x : blade::places14()) {
      Written row;
      row.x = std::min(yard.in(x * chords[k]), station.chord);
      const double at = row.x * millimetres_in(yard.unit) / chords[k];
      const double port = chords[k] * half(std::min(1.0, at), true), starboard = chords[k] * half(std::min(1.0, at), false);
      if (yard.way == MeasuredBy::thickness) {
        row.first = yard.in(port + starboard + noise(random));
      } else {
        const bool gaps = yard.way == MeasuredBy::gaps;
        row.first = yard.in((gaps ? 75 - port : port) + noise(random));
        row.second = yard.in((gaps ? 75 - starboard : starboard) + noise(random));
        if (k == 2) row.caliper = yard.in(port + starboard + noise(random));
      }
      station.rows.push_back(row);
    }
    out.stations.push_back(std::move(station));
  }
  return out;
}

inline job::Job job_of(const Sheet& sheet) {
  const double mm = millimetres_in(sheet.yard.unit);
  std::vector<job::Station> stations;
  int line = 0;
  for (const SheetStation& from : sheet.stations) {
    job::Station station = blade::exact(from.name, from.down * mm, from.chord * mm, 0.12);
    station.ahead = 0.17 * station.chord;
    station.measured_by = sheet.yard.way;
    station.readings.clear();
    for (const Written& row : from.rows) {
      job::Reading r;
      r.x = row.x * mm;
      r.line = ++line;
      if (sheet.yard.way == MeasuredBy::thickness) r.caliper = row.first * mm;
      else if (sheet.yard.way == MeasuredBy::gaps)
        r.port = (from.board - row.first) * mm, r.starboard = (from.board - row.second) * mm;
      else r.port = row.first * mm, r.starboard = row.second * mm;
      if (row.caliper) r.caliper = *row.caliper * mm;
      station.readings.push_back(r);
    }
    std::stable_sort(station.readings.begin(), station.readings.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
    stations.push_back(std::move(station));
  }
  std::stable_sort(stations.begin(), stations.end(), [](const auto& a, const auto& b) { return a.down < b.down; });
  auto job = blade::job_of(std::move(stations));
  job.units = sheet.yard.unit;
  return job;
}

/// Two neighbouring digits of what is written change places, so that it moves by `least` of a millimetre at least.
inline bool exchange_digits(double& value, const Yard& yard, double least) {
  for (double place = 10 * yard.step; place < 1000; place *= 10) {
    const auto whole = std::llround(value / (place / 10));  // in the lower place
    const auto low = whole % 10, high = whole / 10 % 10;
    const double moved = static_cast<double>(low - high) * (place - place / 10);
    if (std::abs(moved) * millimetres_in(yard.unit) < least || high == 0) continue;
    value += moved;
    return true;
  }
  return false;
}

/// How much the first value grows where the blade does by so many mm.
inline double written(const Yard& yard, double mm) {
  return (yard.way == MeasuredBy::gaps ? -1 : 1) * mm / millimetres_in(yard.unit);
}
inline double other_unit(const Yard& yard) {
  return yard.unit == LengthUnit::mm ? 1 / 25.4 : yard.unit == LengthUnit::cm ? 1 / 2.54 : 25.4;
}

inline void thicker(Sheet& sheet, std::size_t station, double mm, double from, double to, bool port, bool starboard) {
  SheetStation& s = sheet.stations[station];
  const bool both_in_one = !sheet.sides();
  for (Written& row : s.rows) {
    const double w = (row.x / s.chord - from) / (to - from);
    if (w < 0 || w > 1) continue;
    const double off = mm * std::sin(3.14159265 * w);
    if (port) row.first += written(sheet.yard, off * (both_in_one ? 2 : 1));
    if (starboard && !both_in_one) row.second += written(sheet.yard, off);
    if (row.caliper) *row.caliper += off * (port + starboard) / millimetres_in(sheet.yard.unit);
  }
}
inline void move_sideways(Sheet& sheet, std::size_t station, double mm, double degrees) {
  SheetStation& s = sheet.stations[station];
  for (Written& row : s.rows) {
    const double off = written(sheet.yard, mm) + written(sheet.yard, 1) * std::tan(degrees / 57.29578) *
                                                     (row.x - 0.17 * s.chord) * millimetres_in(sheet.yard.unit);
    row.first += off;
    row.second -= off;
  }
}
inline void wear(Sheet& sheet, std::size_t station, double mm) {
  SheetStation& s = sheet.stations[station];
  const double unit = millimetres_in(sheet.yard.unit), chord = s.chord * unit;
  for (Written& row : s.rows) {
    const double x = row.x * unit,
                 off = chord * (blade::naca(0.125, std::min(1.0, (x + mm) / chord)) - blade::naca(0.125, x / chord));
    row.first += written(sheet.yard, off * (sheet.sides() ? 1 : 2));
    row.second += written(sheet.yard, off);
    if (row.caliper) *row.caliper += 2 * off / unit;
  }
}

}  // namespace written_sheet
