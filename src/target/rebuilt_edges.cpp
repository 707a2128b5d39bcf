#include "target/rebuilt_edges.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/numerics.hpp"

namespace fairblade::target {

NoseCurve::NoseCurve(const BodyPoint& joint, double length, double radius) : length_(length), a0_(std::sqrt(2 * radius)) {
  const double root = std::sqrt(length);
  const double p = joint.half_breadth - a0_ * root;           // a1 L + a2 L² + a3 L³
  const double q = joint.slope - a0_ / (2 * root);            // a1 + 2 a2 L + 3 a3 L²
  const double w = joint.second + a0_ / (4 * length * root);  // 2 a2 + 6 a3 L
  a3_ = (p / length - q + w * length / 2) / (length * length);
  a2_ = (w - 6 * a3_ * length) / 2;
  a1_ = q - 2 * a2_ * length - 3 * a3_ * length * length;
  const double size = std::abs(joint.half_breadth) + std::abs(joint.slope) * length - joint.second * length * length;
  scale_ = std::max(1e-9, a0_ + size / root);
}

double NoseCurve::at(double xi) const {
  xi = std::max(xi, 0.0);
  return a0_ * std::sqrt(xi) + xi * (a1_ + xi * (a2_ + xi * a3_));
}

double NoseCurve::slope(double xi) const {
  if (xi <= 0) return a0_ > 0 ? std::numeric_limits<double>::infinity() : a1_;
  return a0_ / (2 * std::sqrt(xi)) + a1_ + xi * (2 * a2_ + xi * 3 * a3_);
}

double NoseCurve::second(double xi) const {
  if (xi <= 0) return a0_ > 0 ? -std::numeric_limits<double>::infinity() : 2 * a2_;
  return -a0_ / (4 * xi * std::sqrt(xi)) + 2 * a2_ + 6 * a3_ * xi;
}

double NoseCurve::hollowness() const {
  const auto bend = [&](double xi) { return -a0_ + xi * std::sqrt(xi) * (8 * a2_ + 24 * a3_ * xi); };
  double worst = std::max(bend(0), bend(length_));
  const double turn = a3_ != 0 ? -a2_ / (5 * a3_) : -1;  // where its derivative 12 a2 √ξ + 60 a3 ξ^1.5 is zero
  if (turn > 0 && turn < length_) worst = std::max(worst, bend(turn));
  return worst / scale_;
}

std::optional<Radii> fair_radii(const BodyPoint& joint, double length) {
  // For each place y'' is linear in a0, so the hollowness is convex in it and the fair a0 are one interval.
  const auto excess = [&](double a0) { return NoseCurve(joint, length, a0 * a0 / 2).hollowness() - NoseCurve::slack; };
  const double size = std::abs(joint.half_breadth) + std::abs(joint.slope) * length - joint.second * length * length;
  const double high = 20 * size / std::sqrt(length);
  if (!(high > 0)) return std::nullopt;
  double fair = 0;
  if (excess(0) > 0) fair = least_between(excess, 0, high);
  if (excess(fair) > 0) return std::nullopt;
  Radii out;
  if (fair > 0) {
    const auto least = root_between(excess, 0, fair);
    out.least = least ? *least * *least / 2 : 0;
  }
  const auto most = root_between(excess, fair, high);
  out.most = most ? *most * *most / 2 : high * high / 2;
  return out;
}

double TailCurve::at(double z) const {
  const double share = z / length;
  return joint.half_breadth + joint.slope * z + (end - tangent(joint, length)) * share * share;
}

double TailCurve::slope(double z) const { return joint.slope + 2 * (end - tangent(joint, length)) * z / (length * length); }

}  // namespace fairblade::target
