// Private to the target room. Product: the curves of a rebuilt nose and a rebuilt tail, one face each.
// Verbs: NoseCurve's and TailCurve's own, fair_radii. Units: mm.
#pragma once
#include <optional>

#include "target/kept_body.hpp"

namespace fairblade::target {

/// y = a0 √ξ + a1 ξ + a2 ξ² + a3 ξ³, ξ from the leading edge, a0 = √(2r); meets the body at ξ = length with equal
/// ordinate, slope and curvature. On a flat side of half-breadth b it is b(1 - (1 - s)³) + √(2rL)(√s - 1.875 s +
/// 1.25 s² - 0.375 s³), s = ξ/L, whose bracket tends to 0.3125(1 - s)³: nowhere hollow up to r = 5.12 b²/L.
class NoseCurve {
 public:
  NoseCurve() = default;
  NoseCurve(const BodyPoint& joint, double length, double radius);
  double at(double xi) const;
  double slope(double xi) const;   ///< +inf at a round nose
  double second(double xi) const;  ///< d²y/dξ²
  double radius() const { return a0_ * a0_ / 2; }
  /// The greatest 4 ξ^1.5 y'' over the nose, as a share of what the shape has of it: positive where it is hollow.
  double hollowness() const;
  bool fair() const { return hollowness() <= slack; }
  static constexpr double slack = 1e-9;  ///< rounding

 private:
  double length_ = 0, a0_ = 0, a1_ = 0, a2_ = 0, a3_ = 0, scale_ = 1;
};

struct Radii {
  double least = 0, most = 0;
};
/// The radii with which the nose is nowhere hollow; nothing when there are none.
std::optional<Radii> fair_radii(const BodyPoint& joint, double length);

/// A parabola from the body's ordinate and slope, z from the joint, to `end` at z = length. Never hollow while `end`
/// does not exceed where the tangent runs out.
struct TailCurve {
  BodyPoint joint;
  double length = 1, end = 0;
  double at(double z) const;
  double slope(double z) const;
  static double tangent(const BodyPoint& joint, double length) { return joint.half_breadth + joint.slope * length; }
};

}  // namespace fairblade::target
