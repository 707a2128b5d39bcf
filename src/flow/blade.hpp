// Product: the whole blade as a lifting surface, before or after. Verbs: outline_of, blade_in_water. mm, degrees, N, Nm.
//
// L. F. Whicker and L. F. Fehlner, David Taylor Model Basin Report 933 (1958), both recalled: lift slope per radian
// 1.8 pi a/(1.8 + cosL sqrt(a²/cos⁴L + 4)) and, at small angles, centre of pressure in mean chords
// 1/2 - (1.11 sqrt(a² + 4) + 2)/(4 (a + 2)); a the effective aspect ratio, L the sweep of the quarter-chord line.
// Comparisons of two shapes, not a design: the load is the straight line of small angles, without stall or cavitation.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::flow {

/// The effective aspect ratio is 1, 1.5 or 2 times the geometric.
using job::EndPlate;
const char* name_of(EndPlate choice);
double aspect_factor(EndPlate choice);

constexpr double sea_water_density = 1025;  ///< kg/m³
constexpr double metres_per_second_in_knot = 1852.0 / 3600;

double whicker_fehlner_slope(double effective_aspect, double sweep_degrees = 0);  ///< per radian
double whicker_fehlner_centre(double effective_aspect);                           ///< mean chords aft of the leading edge

/// A blade seen from the side: chords straight between stations, from the first to the bottom where that is given, the
/// last chord carried on; the same blade as fill::blade_figures weighs.
struct BladeOutline {
  struct Cut {
    double down = 0, chord = 0;
    std::optional<double> ahead;
  };
  std::vector<Cut> cuts;  ///< sorted by down; the ends included
};
BladeOutline outline_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured);
BladeOutline outline_of(const job::Job& job, const std::vector<target::TargetSection>& targets);

/// What follows from a speed, knots, and a helm, degrees.
struct Load {
  double knots = 0, helm = 0;
  double force = 0;              ///< N, square to the stream
  std::optional<double> torque;  ///< Nm about the stock; positive: the water pushes the helm back amidships
};

struct BladeWater {
  bool known = false;
  std::string why_not;  ///< no span, or a fixed skeg ahead: then only what stands above the line below holds
  double area = 0, span = 0, mean_chord = 0;  ///< mm², mm, mm (mean: integral c² / integral c)
  std::optional<double> balance_percent;      ///< area ahead of the stock over the area
  // --- only where known
  double geometric_aspect = 0, effective_aspect = 0, sweep_degrees = 0;
  double lift_slope = 0;          ///< per radian
  double centre_of_pressure = 0;  ///< mean chords aft of the mean chord's leading edge
  std::optional<double> lever;    ///< mm, centre of pressure aft of the stock; negative: ahead of it
  /// r = c (alpha - A_f/A), the class rules' lever, alpha = 0.33 going ahead and 0.66 astern (recalled); c mean breadth.
  std::optional<double> class_lever_ahead, class_lever_astern;
  Load load;
};

BladeWater blade_in_water(const BladeOutline& outline, bool behind_skeg, EndPlate end_plate, double knots, double helm);

}  // namespace fairblade::flow
