// Product of the worksheet room: what to measure on the blade and where, before anything has been read.
// Verbs: worksheet_of, evenly_spaced, suggested_places, on_rule. All mm.
//
// Places crowd to the nose, half of them in the first tenth of the chord, because a round nose is root-shaped: against
// the square root of x they lie about evenly; behind a skeg, where the edge is square, they are even in x. Three stations at
// least, five on a blade deeper than a metre, the first at the top and the last at the bottom (common practice, no source).
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "job/to_measure.hpp"

namespace fairblade::worksheet {

constexpr std::size_t places_a_side = 12;

struct Worksheet {
  job::ToMeasure job;
  std::vector<std::vector<double>> places;  ///< beside job.stations: x as written down, from x_from, the nose first
  std::size_t twice = 0;                    ///< the station that is measured a second time, to learn one's own error
  std::vector<Warning> advice;
};

/// At least one station.
Worksheet worksheet_of(job::ToMeasure job);

struct Spacing {
  int stations = 3;
  double span = 0;                  ///< from the top of the blade to its bottom
  double chord = 0, tip_chord = 0;  ///< at the top and at the bottom
  LengthUnit units = LengthUnit::mm;
};
/// Stations A, B, ... from the top to the bottom at round heights; a single one lies half-way. Chords run straight from
/// top to bottom. Refused: more stations than there are letters, or than the span has room for.
Outcome<std::vector<job::StationToMeasure>> evenly_spaced(const Spacing& spacing);

/// Where to read along a station, from its x_from: the leading edge first, the trailing edge last, between them round
/// numbers in that unit, each nearer to the trailing edge than the one before.
std::vector<double> suggested_places(const job::StationToMeasure& station, LengthUnit units);

/// A length as one finds it on a rule: "420", "42", "16 1/2"; where no rule has it, a decimal number.
std::string on_rule(double mm, LengthUnit units);
/// The same with the unit's name.
std::string on_rule_with_unit(double mm, LengthUnit units);

}  // namespace fairblade::worksheet
