// Private to the check room. Which unit numbers are in that do not fit where they stand.
// Verbs: other_units, units_of_heights, nearest_unit.
#pragma once
#include <optional>
#include <vector>

#include "base/units.hpp"

namespace fairblade::check {

struct Unit {
  const char* code;
  const char* words;
  double factor;  ///< from the number as it was taken to what it would be
};
/// Units that a section may have been written in, in a job of that unit.
std::vector<Unit> other_units(LengthUnit unit);
/// The same for stations' heights, which are measured with another rule than sections.
std::vector<Unit> units_of_heights(LengthUnit unit);

/// The unit whose factor turns `found` into what is nearest to `usual`, if that is within the ratio `slack`.
std::optional<Unit> nearest_unit(double found, double usual, double slack, const std::vector<Unit>& units);

}  // namespace fairblade::check
