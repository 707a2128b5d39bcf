// The offsets of one published form at one chord, no blade needed. Verbs: offsets_of. mm.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "base/units.hpp"
#include "target/target.hpp"

namespace fairblade::target {

struct FormAsked {
  form::Form form;
  double chord = 0;                    ///< mm
  std::optional<double> radius, edge;  ///< mm; the form's own where not asked
  std::vector<double> more_places;     ///< mm aft of the leading edge, besides the published ones
  LengthUnit units = LengthUnit::mm;   ///< in which it is told
};

struct FormOffset {
  double x = 0, half_breadth = 0;  ///< mm
};

struct FormOffsets {
  FormAsked asked;
  TargetSection section;                ///< its curve, radius, edge, area and girth
  std::string name;                     ///< "0012, edge 4.0 mm"
  double max_thickness = 0;             ///< mm
  double own_radius = 0, own_edge = 0;  ///< mm, of the published form
  std::vector<FormOffset> rows;         ///< at the places of the published tables and those asked for, from the leading edge aft
  std::vector<Warning> warnings;
};

/// Refused where the curve would dip, overshoot or flare, at the option that asks for it.
Outcome<FormOffsets> offsets_of(const FormAsked& asked);

}  // namespace fairblade::target
