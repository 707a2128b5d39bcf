#include "check/other_units.hpp"

#include <cmath>

namespace fairblade::check {

std::vector<Unit> other_units(LengthUnit unit) {
  if (unit == LengthUnit::inch)
    return {{"millimetres", "millimetres", 1 / mm_per_inch}, {"centimetres", "centimetres", 10 / mm_per_inch}};
  if (unit == LengthUnit::cm) return {{"inches", "inches", mm_per_inch / 10}, {"millimetres", "millimetres", 0.1}};
  return {{"inches", "inches", mm_per_inch}, {"centimetres", "centimetres", 10}};
}

std::vector<Unit> units_of_heights(LengthUnit unit) {
  if (unit == LengthUnit::inch) return {{"feet", "feet", 12}};
  if (unit == LengthUnit::cm) return {{"metres", "metres", 100}};
  auto out = other_units(unit);
  out.push_back({"metres", "metres", 1000});
  return out;
}

std::optional<Unit> nearest_unit(double found, double usual, double slack, const std::vector<Unit>& units) {
  std::optional<Unit> best;
  double best_miss = std::log(slack);
  for (const Unit& one : units) {
    const double miss = std::abs(std::log(found * one.factor / usual));
    if (miss < best_miss) {
      best_miss = miss;
      best = one;
    }
  }
  return best;
}

}  // namespace fairblade::check
