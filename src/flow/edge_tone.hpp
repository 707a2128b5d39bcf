// Product: the tone of a trailing edge. Verbs: edge_of, shedding_band, humming_speeds, edge_options. mm, knots, Hz.
//
// T. F. Brooks, D. S. Pope and M. A. Marcolini, NASA RP-1218 (1989), equation 72 (shedding from a blunt edge):
//   St = f h/V = (0.212 - 0.0045 P)/(1 + 0.235 d/h - 0.0132 (d/h)²)   for h/d >= 0.2,
//   St = 0.1 h/d + 0.095 - 0.00243 P                                  below,
// h the edge's thickness, P its solid angle in degrees, d the boundary layer's displacement thickness. The report tried
// P = 0 and 14 degrees; beyond 14 the value at 14 is used, and said. Whether a tone is heard is another matter: it takes a
// blade that answers to it.
// d = 0.046 x Re^(-1/5), the turbulent flat plate with the 1/7-power profile (Schlichting, Boundary-Layer Theory; recalled):
// d/x = 0.37/8. A real blade, fouled or under helm, differs: every frequency is a band from 0.7 to 1.5 times that.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::flow {

constexpr double sea_water_viscosity = 1.19e-6;        ///< m²/s at 15 °C (ITTC 7.5-02-01-03; recalled)
constexpr double thin_layer = 0.7, thick_layer = 1.5;  ///< the band, times the plate's displacement thickness
constexpr double least_edge = 0.1;                     ///< mm; thinner sheds nothing that this equation knows
constexpr double widest_tried = 14;                    ///< degrees between the faces, in the equation's tests
constexpr double slowest_knots = 0.5, fastest_knots = 20;

double shedding_strouhal(double thickness_over_displacement, double solid_angle);
/// Metres, after `metres` of run at so many m/s.
double displacement_thickness(double metres, double metres_per_second);

struct Edge {
  double thickness = 0;             ///< mm
  double solid_angle = 0;           ///< degrees between the faces, over the last 5 % of the chord
  double run = 0;                   ///< mm of water's way along the section: its chord, with the skeg where there is one
  bool angle_beyond_tried = false;  ///< more than 14 degrees (or the faces spread): the nearest that was tried is used
};
Edge edge_of(const section::MeasuredSection& measured);
Edge edge_of(const target::TargetSection& target);

struct Band {
  double low = 0, high = 0;
};
/// Hz at that speed; nothing for an edge thinner than `least_edge`.
std::optional<Band> shedding_band(const Edge& edge, double knots);
/// Knots at which the band holds that frequency, cut to slowest_knots .. fastest_knots; nothing where it never does.
std::optional<Band> humming_speeds(const Edge& edge, double hertz);

/// What yards do about a tone. Common practice, no source, and none of them certain.
struct EdgeOption {
  std::string name, words;
  std::optional<Band> frequency;  ///< Hz at the speed asked; nothing where no equation covers the shape
};
std::vector<EdgeOption> edge_options(const Edge& target, double knots);

}  // namespace fairblade::flow
