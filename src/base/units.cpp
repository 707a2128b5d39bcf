#include "base/units.hpp"

#include <cmath>

#include "base/text.hpp"

namespace fairblade {

double millimetres_in(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm: return 1.0;
    case LengthUnit::cm: return 10.0;
    case LengthUnit::inch: return mm_per_inch;
  }
  return 1.0;
}

std::string_view name_of(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm: return "mm";
    case LengthUnit::cm: return "cm";
    case LengthUnit::inch: return "in";
  }
  return "mm";
}

std::optional<LengthUnit> length_unit(std::string_view name) {
  for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::cm, LengthUnit::inch}) {
    if (name == name_of(unit)) return unit;
  }
  return std::nullopt;
}

namespace {

int decimals_of(LengthUnit unit) { return unit == LengthUnit::mm ? 1 : unit == LengthUnit::cm ? 2 : 3; }
double last_figure(LengthUnit unit) { return unit == LengthUnit::inch ? 1000 / mm_per_inch : 10; }  // in a mm
constexpr double in_binary = 1e-9;  // of the last figure: what is one already stays

}  // namespace

std::string number_in_unit(double mm, LengthUnit unit) { return fixed(mm / millimetres_in(unit), decimals_of(unit)); }

double last_figure_down(double mm, LengthUnit unit) { return std::floor(mm * last_figure(unit) + in_binary) / last_figure(unit); }

double last_figure_up(double mm, LengthUnit unit) { return std::ceil(mm * last_figure(unit) - in_binary) / last_figure(unit); }

std::string in_unit(double mm, LengthUnit unit) { return number_in_unit(mm, unit) + " " + std::string(name_of(unit)); }

std::string both_units(double mm, LengthUnit unit) {
  const std::string metric = in_unit(mm, LengthUnit::mm);
  return unit == LengthUnit::mm ? metric : metric + " (" + in_unit(mm, unit) + ")";
}

std::string to_side(double mm, LengthUnit unit) { return in_unit(std::abs(mm), unit) + (mm >= 0 ? " to port" : " to starboard"); }

}  // namespace fairblade
