// Half-breadth curves of unit chord: the published forms, and the same with a chosen nose radius and edge thickness.
// Verbs: SectionCurve's own, plain_max_thickness_at.
#pragma once
#include <array>
#include <optional>

#include "form/form.hpp"

namespace fairblade::form {

/// y(x) = form(x) + (sqrt(2r) - a0) g(x) + (e/2 - form(1)) h(x): a deformation that leaves the form itself alone when
/// r and e are its own, and keeps the place and the curvature of its greatest thickness.
/// x, y, r and e in chords. For x < m: g = sqrt(x) + g1 x + g2 x² + g3 x³ with g = g' = g'' = 0 at m;
/// for x > m: h = ((x - m)/(1 - m))³.
class SectionCurve {
 public:
  SectionCurve() : SectionCurve(Form{}) {}
  explicit SectionCurve(const Form& form) : SectionCurve(form, std::nullopt, std::nullopt) {}
  /// `radius` and `edge` in chords; nothing: the form's own.
  SectionCurve(const Form& form, std::optional<double> radius, std::optional<double> edge);

  double at(double x) const;        ///< half-breadth, x in [0, 1]
  double at_u(double u) const;      ///< at x = u²
  double slope(double x) const;     ///< dy/dx, +inf at 0
  double slope_u(double u) const;   ///< dy/du
  double second_u(double u) const;  ///< d²y/du²
  double second(double x) const;    ///< d²y/dx²
  double radius() const;            ///< r
  double edge() const;              ///< e, full thickness at the trailing edge
  double max_thickness_at() const { return m_; }
  const Form& form() const { return form_; }

  /// Ahead of m: y = n[0] s + n[1] s² + n[2] s⁴ + n[3] s⁶ + n[4] s⁸ with s = sqrt(x).
  const std::array<double, 5>& nose() const { return nose_; }
  /// Aft of m, of a modified form with its own edge: y = t[0] + t[1] z + t[2] z² + t[3] z³ with z = 1 - x.
  const std::array<double, 4>& tail() const { return tail_; }
  /// Does the nose stay convex (never flat or hollow) and the tail never hollow? Tested on the curve.
  bool nose_convex() const;
  bool tail_convex() const;
  bool nose_overshoots() const;  ///< thicker ahead of m than at m
  bool tail_flares() const;      ///< thickens again towards the edge
  /// Does curvature, having fallen behind the nose, rise again by more than half before m?
  bool nose_shoulders() const;

 private:
  Form form_;
  double m_ = 0.3;
  double nose_gain_ = 0, tail_gain_ = 0;  // sqrt(2r) - a0, e/2 - form(1)
  std::array<double, 5> base_nose_{};     // the form's own
  std::array<double, 5> nose_{};
  std::array<double, 3> g_{};     // g1, g2, g3
  std::array<double, 4> tail_{};  // d0..d3, modified forms only
};

/// Place of the plain form's greatest half-breadth, to the last bit.
double plain_max_thickness_at();

}  // namespace fairblade::form
