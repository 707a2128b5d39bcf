// Product: a station's section in the water, before or after. Verbs: nodes_of, section_in_water, cp_curve. mm, degrees.
//
// Angles: the water meets the blade from starboard at so many degrees, so that lift and suction go to port; helm to the
// other side is the same with the sign turned. Behind a fixed skeg the two lie in line and the angle is the boat's leeway.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "flow/panel.hpp"
#include "form/curve.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::flow {

constexpr std::size_t usual_panels = 320;  ///< both faces together; a flat nose adds its own
constexpr std::size_t quick_panels = 240;  ///< suction within 0.3 % of that of 320: what `plan` takes
constexpr int greatest_helm = 12;          ///< degrees: one row for each whole degree from 0

/// A section as the panel method takes it. x in the measured section's frame.
struct SectionNodes {
  std::vector<Point> nodes;
  Frame frame;      ///< of skeg and rudder together, where there is a skeg
  double skeg = 0;  ///< mm of it that is skeg
  /// mm: the most by which the two faces had to be parted where readings make them touch or nearly so. The method needs
  /// 0.05 % of the chord between them (nothing is asked in the first 1 %, where a nose closes).
  double parted = 0;
};

/// Where nodes lie close: at both edges, for all figures; or at the nose alone, growing to the tail, where two sections' noses
/// are compared. What reading errors add to suction then comes out within 19 % with 96 panels (mean 7 %), and within 25 % (mean
/// 15 %) with 160 of the former: seen against 640 of those, same draws, nine stations of two demos.
enum class Crowd { both_edges, nose };

/// Nodes even in the angle of a circle over the chord, so crowded to both edges; a flat nose face gets nodes of its own.
/// A skeg is not measured: both before and after it is the target's own curve, brought to meet the edge behind it.
SectionNodes nodes_of(const section::MeasuredSection& measured, const target::TargetSection& target,
                      std::size_t panels = usual_panels, Crowd crowd = Crowd::both_edges);
SectionNodes nodes_of(const target::TargetSection& target, std::size_t panels = usual_panels);
/// A form of unit chord; for recomputing with another nose or thickness.
SectionNodes nodes_of(const form::SectionCurve& curve, std::size_t panels = usual_panels);

struct SectionWater {
  bool known = false;
  std::string why_not;            ///< where it is not
  std::optional<PanelFlow> flow;  ///< any other angle, and the pressures
  double skeg = 0;                ///< mm
  /// With a skeg: lift of a degree of helm over that of a degree of leeway, 1 - (a - sin a)/pi, cos a = 2 (rudder/chord) - 1
  /// turned about its front edge (thin-section theory, Glauert 1927); 1 without.
  double helm_effect = 1;
  double parted = 0;                           ///< mm, as above
  bool sides_known = true;                     ///< calipers and one side alone cannot tell a pull
  double lift_slope = 0;                       ///< lift = slope sin(angle - zero lift)
  double lift_at_zero_helm = 0;                ///< coefficient, to port; 0 where the sides are not known
  double helm_to_cancel = 0;                   ///< degrees of helm that cancel it; the sign of the angle as above
  std::vector<AtAngle> to_port, to_starboard;  ///< 0, 1 .. 12 degrees; the second at 0, -1 .. -12
};

/// See SectionWater::helm_effect.
double helm_effect(const SectionNodes& nodes);
SectionWater section_in_water(const SectionNodes& nodes, bool sides_known);

/// The greater of the two sides' suctions at so many degrees of helm (see AtAngle::suction).
double worse_suction(const PanelFlow& flow, double helm);

/// One face's pressures for a picture, from the leading edge aft.
struct CpPoint {
  double x = 0;  ///< chord fraction of the frame
  double cp = 0;
};
struct CpCurve {
  std::vector<CpPoint> port, starboard;
};
CpCurve cp_curve(const PanelFlow& flow, double degrees);

}  // namespace fairblade::flow
