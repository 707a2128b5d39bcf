#include "section/side.hpp"

#include <algorithm>
#include <math.h>  // Boost 1.74 calls ::isnan without it

#include <boost/math/interpolators/pchip.hpp>
#include <cassert>
#include <cmath>
#include <limits>

#include "base/plain_form.hpp"

namespace fairblade::section {

Side::Side(double chord, const std::vector<Node>& nodes) : chord_(chord), nodes_(nodes) {
  assert(chord > 0 && nodes.size() >= 2 && nodes.front().x == 0);
  double product = 0;
  double square = 0;
  u_.reserve(nodes.size());
  for (const Node& node : nodes_) {
    u_.push_back(std::sqrt(std::min(1.0, node.x / chord_)));
    const double form = chord_ * plain_form(u_.back());
    product += form * node.half_breadth;
    square += form * form;
  }
  thickness_ = square > 0 ? product / square : 0;
  left_.reserve(nodes_.size());
  for (std::size_t k = 0; k < nodes_.size(); ++k) {
    left_.push_back(nodes_[k].half_breadth - thickness_ * chord_ * plain_form(u_[k]));
  }
  left_slope_.resize(u_.size());
  if (u_.size() >= 4) {
    auto u = u_;
    auto left = left_;
    const boost::math::interpolators::pchip<std::vector<double>> curve(std::move(u), std::move(left));
    for (std::size_t k = 0; k < u_.size(); ++k) left_slope_[k] = curve.prime(u_[k]);
  } else {  // too few for Boost's: straight lines' mean slope, held flat where they turn
    for (std::size_t k = 0; k < u_.size(); ++k) {
      const auto pitch = [&](std::size_t i) { return (left_[i + 1] - left_[i]) / (u_[i + 1] - u_[i]); };
      const double before = k > 0 ? pitch(k - 1) : pitch(0);
      const double after = k + 1 < u_.size() ? pitch(k) : before;
      left_slope_[k] = before * after > 0 ? 2 * before * after / (before + after) : 0;
    }
  }
}

double Side::residual(double u, double* slope) const {
  const auto above = std::upper_bound(u_.begin() + 1, u_.end() - 1, u);
  const auto k = static_cast<std::size_t>(above - u_.begin()) - 1;
  const double h = u_[k + 1] - u_[k];
  const double w = (u - u_[k]) / h;
  const double y0 = left_[k], y1 = left_[k + 1];
  const double s0 = left_slope_[k] * h, s1 = left_slope_[k + 1] * h;
  const double c2 = 3 * (y1 - y0) - 2 * s0 - s1;
  const double c3 = 2 * (y0 - y1) + s0 + s1;
  if (slope != nullptr) *slope = (s0 + w * (2 * c2 + w * 3 * c3)) / h;
  return y0 + w * (s0 + w * (c2 + w * c3));
}

double Side::at_u(double u) const {
  u = std::clamp(u, 0.0, 1.0);
  return thickness_ * chord_ * plain_form(u) + residual(u, nullptr);
}

double Side::slope_u(double u) const {
  u = std::clamp(u, 0.0, 1.0);
  double slope = 0;
  residual(u, &slope);
  return thickness_ * chord_ * plain_form_slope_u(u) + slope;
}

double Side::at(double x) const { return at_u(std::sqrt(std::clamp(x / chord_, 0.0, 1.0))); }

double Side::slope(double x) const {
  const double u = std::sqrt(std::clamp(x / chord_, 0.0, 1.0));
  if (u == 0) return std::numeric_limits<double>::infinity();
  return slope_u(u) / (2 * u * chord_);
}

}  // namespace fairblade::section
