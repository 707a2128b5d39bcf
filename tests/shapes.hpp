// Targets with faces known in closed form.
#pragma once
#include <cmath>
#include <functional>
#include <memory>

#include "target/target.hpp"

namespace shapes {

using namespace fairblade;

class Curve : public target::FaceShape {
 public:
  Curve(std::function<double(double)> at, std::function<double(double)> slope) : at_(std::move(at)), slope_(std::move(slope)) {}
  double at(double x) const override { return at_(x); }
  double slope(double x) const override { return slope_(x); }

 private:
  std::function<double(double)> at_, slope_;
};
using Shape = std::shared_ptr<const Curve>;

inline Shape parabola(double r) {
  return std::make_shared<const Curve>([r](double x) { return std::sqrt(2 * r * x); },
                                       [r](double x) { return std::sqrt(r / (2 * x)); });
}
/// From its leading end; semi-axes along and across.
inline Shape ellipse(double a, double b) {
  return std::make_shared<const Curve>([a, b](double x) { return b * std::sqrt(std::max(0.0, 1 - (a - x) * (a - x) / (a * a))); },
                                       [a, b](double x) {
                                         const double s = (a - x) / a;
                                         return b / a * s / std::sqrt(std::max(1e-300, 1 - s * s));
                                       });
}
/// Straight: half an edge at the trailing edge, growing by `taper` per mm ahead of it.
inline Shape wedge(double chord, double edge, double taper) {
  return std::make_shared<const Curve>([=](double x) { return edge / 2 + taper * (chord - x); }, [=](double) { return -taper; });
}

inline target::TargetSection both(const Shape& shape, double chord, double radius) {
  target::TargetSection out;
  out.station = "A";
  out.chord = chord;
  out.leading_edge_radius = radius;
  out.port_shape = out.starboard_shape = shape;
  return out;
}
/// The published form.
inline target::TargetSection naca(double chord, double t) {
  target::TargetSection out;
  out.station = "A";
  out.chord = chord;
  form::Form form;
  form.thickness_ratio = t;
  out.curve = form::SectionCurve(form);
  target::fill_in_figures(out);
  return out;
}

}  // namespace shapes
