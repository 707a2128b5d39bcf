// Product: the flow without friction past one closed section. Verbs: PanelFlow::solve, then at and pressures.
// Angles in degrees, lengths in any one unit, pressures as Cp = 1 - (v/U)².
//
// Method: straight panels, vorticity linear between nodes; no flow through the middle of any panel; Kutta: equal speed on
// both faces at the trailing edge (Kuethe and Chow, Foundations of Aerodynamics; recalled). On the surface the speed *is*
// the vorticity, so Cp comes from the nodes and never from a velocity worked out beside a panel. A blunt base is one more
// panel which lets the still water's jet out: source and vorticity such that the water leaves along the bisector as
// fast as it slides off both faces (M. Drela 1989, the treatment of a gap; recalled).
// Seen, 320 panels even in the circle's angle, symmetric Joukowski at 0, 4 and 8°, all but the last 1 % of chord: Cp
// within 0.0036 for epsilon = 0.1 and 0.15, 0.015 for 0.05; lift within 0.016 % with 160; each falls by 3.3 or more with
// twice the panels. In a cusp, where the method alone would be lost, the last few nodes' speeds are in line with those ahead.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "base/geometry.hpp"

namespace fairblade::flow {

/// One section at one angle. Coefficients on the frame's chord; port is +y.
struct AtAngle {
  double degrees = 0;            ///< positive: the water comes from the -y side, lift and suction go to +y
  double lift = 0;               ///< from the circulation
  double normal = 0, axial = 0;  ///< pressure force square to the chord (to +y) and along it (aft)
  double moment = 0;             ///< of the pressures about the leading edge, positive where the force acts aft of it to +y
  std::optional<double> centre_of_pressure;   ///< moment / normal, in chords aft; nothing where |normal| < 0.01
  double lowest_pressure = 0, lowest_at = 0;  ///< least Cp at a node, and its x in chords
  /// Greatest mean of -Cp over a stretch of surface of half a per cent of the chord: a corner has an endless peak on
  /// paper and none in water, and readings do not resolve less.
  double suction = 0, suction_at = 0;
};

/// What x and coefficients are counted from and in.
struct Frame {
  double leading_edge_x = 0, chord = 1;
};

class PanelFlow {
 public:
  /// Nodes from the trailing edge's +y corner along +y to the nose and back along -y to the other corner. Nothing for
  /// fewer than 10 nodes, repeated or unfinite ones, a wrong sense, or an outline that the method cannot resolve.
  static std::optional<PanelFlow> solve(std::vector<Point> nodes, Frame frame);

  const std::vector<Point>& nodes() const { return nodes_; }
  const Frame& frame() const { return frame_; }
  AtAngle at(double degrees) const;
  double suction(double degrees) const;                 ///< at(degrees).suction, and nothing else worked out
  std::vector<double> pressures(double degrees) const;  ///< Cp at every node
  /// Surface speed over the stream's, positive from the -y corner round the nose to the +y corner.
  std::vector<double> speeds(double degrees) const;
  double zero_lift_degrees() const;  ///< where the lift is nothing
  double lift_slope() const;         ///< lift = lift_slope sin(angle - zero_lift)

  static constexpr double suction_stretch = 0.005;  ///< chords

 private:
  double circulation_lift(const std::vector<double>& speeds) const;
  std::vector<Point> nodes_;
  Frame frame_;
  double base_vorticity_ = 0;           // the base panel's vorticity x length per (first - last) node, in chords
  std::vector<double> along_, across_;  // surface speed in a stream along x and along y
  std::vector<Point> in_chords_;        // the nodes, from the frame's leading edge
  std::vector<double> length_;          // of each panel, in chords
};

}  // namespace fairblade::flow
