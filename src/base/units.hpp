// Lengths inside the program are millimetres; this is the one door where they change. Verbs: millimetres_in, name_of,
// length_unit, in_unit, both_units, to_side, number_in_unit, last_figure_down, last_figure_up.
#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace fairblade {

enum class LengthUnit { mm, cm, inch };

constexpr double mm_per_inch = 25.4;  ///< exact by definition
/// Millimetres in one unit: 1, 10, 25.4.
double millimetres_in(LengthUnit unit);
/// "mm", "cm", "in".
std::string_view name_of(LengthUnit unit);
/// The unit of that name, if there is one.
std::optional<LengthUnit> length_unit(std::string_view name);
/// A length in mm as the owner reads it in the job's unit: "12.3 mm", "1.23 cm", "0.484 in".
std::string in_unit(double mm, LengthUnit unit);
/// "4.2 mm", and where the job counts in another unit "4.2 mm (0.165 in)".
std::string both_units(double mm, LengthUnit unit);
/// "1.2 mm to port", to starboard where it is negative.
std::string to_side(double mm, LengthUnit unit);
/// The same as in_unit without the unit's name.
std::string number_in_unit(double mm, LengthUnit unit);
/// mm rounded to the last figure that in_unit prints: an upper bound down, a lower one up, so that what is told still holds when
/// it is typed in again.
double last_figure_down(double mm, LengthUnit unit);
double last_figure_up(double mm, LengthUnit unit);

}  // namespace fairblade
