#include "section/side.hpp"

#include <math.h>  // Boost 1.74 calls ::isnan without it

#include <algorithm>
#include <boost/math/interpolators/pchip.hpp>
#include <cassert>
#include <cmath>
#include <limits>

#include "base/plain_form.hpp"

namespace fairblade::section {

double Side::place(double x) const { return std::sqrt(std::clamp((x + lead_) / (chord_ + lead_), 0.0, 1.0)); }

Side::Side(double chord, const std::vector<Node>& nodes, double lead, bool with_form)
    : chord_(chord), lead_(lead), with_form_(with_form), nodes_(nodes) {
  assert(chord > 0 && lead >= 0 && nodes.size() >= 2 && nodes.front().x == 0);
  const double whole = chord_ + lead_;
  double product = 0;
  double square = 0;
  v_.reserve(nodes.size());
  for (const Node& node : nodes_) {
    v_.push_back(place(node.x));
    const double form = whole * plain_form(v_.back());
    product += form * node.half_breadth;
    square += form * form;
  }
  thickness_ = square > 0 ? product / square : 0;
  if (!with_form) thickness_ = 0;
  left_.reserve(nodes_.size());
  for (std::size_t k = 0; k < nodes_.size(); ++k) {
    left_.push_back(nodes_[k].half_breadth - thickness_ * whole * plain_form(v_[k]));
  }
  left_slope_.resize(v_.size());
  if (v_.size() >= 4) {
    auto v = v_;
    auto left = left_;
    const boost::math::interpolators::pchip<std::vector<double>> curve(std::move(v), std::move(left));
    for (std::size_t k = 0; k < v_.size(); ++k) left_slope_[k] = curve.prime(v_[k]);
  } else {  // too few for Boost's: straight lines' mean slope, held flat where they turn
    for (std::size_t k = 0; k < v_.size(); ++k) {
      const auto pitch = [&](std::size_t i) { return (left_[i + 1] - left_[i]) / (v_[i + 1] - v_[i]); };
      const double before = k > 0 ? pitch(k - 1) : pitch(0);
      const double after = k + 1 < v_.size() ? pitch(k) : before;
      left_slope_[k] = before * after > 0 ? 2 * before * after / (before + after) : 0;
    }
  }
}

std::size_t Side::piece_at(double v) const {
  const auto above = std::upper_bound(v_.begin() + 1, v_.end() - 1, v);
  return static_cast<std::size_t>(above - v_.begin()) - 1;
}

double Side::residual(std::size_t k, double v, double* slope) const {
  const double h = v_[k + 1] - v_[k];
  const double w = (v - v_[k]) / h;
  const double y0 = left_[k], y1 = left_[k + 1];
  const double s0 = left_slope_[k] * h, s1 = left_slope_[k + 1] * h;
  const double c2 = 3 * (y1 - y0) - 2 * s0 - s1;
  const double c3 = 2 * (y0 - y1) + s0 + s1;
  if (slope != nullptr) *slope = (s0 + w * (2 * c2 + w * 3 * c3)) / h;
  return y0 + w * (s0 + w * (c2 + w * c3));
}

double Side::at(double x) const {
  const double v = place(std::clamp(x, 0.0, chord_));
  return thickness_ * (chord_ + lead_) * plain_form(v) + residual(piece_at(v), v, nullptr);
}

double Side::Along::at(double x) {
  const double v = side_.place(std::clamp(x, 0.0, side_.chord_));
  if (v < side_.v_[piece_]) piece_ = side_.piece_at(v);
  while (piece_ + 2 < side_.v_.size() && side_.v_[piece_ + 1] <= v) ++piece_;
  return side_.thickness_ * (side_.chord_ + side_.lead_) * plain_form(v) + side_.residual(piece_, v, nullptr);
}

double Side::at_u(double u) const { return at(chord_ * u * u); }

double Side::slope_u(double u) const {
  u = std::clamp(u, 0.0, 1.0);
  const double x = chord_ * u * u;
  const double v = place(x);
  double slope = 0;
  residual(piece_at(v), v, &slope);
  slope += thickness_ * (chord_ + lead_) * plain_form_slope_u(v);
  // dv/du = u chord / (v (chord + lead)), which is 1 without a skeg, at the nose too.
  return lead_ == 0 ? slope : slope * u * chord_ / (v * (chord_ + lead_));
}

double Side::slope(double x) const {
  const double v = place(std::clamp(x, 0.0, chord_));
  if (v == 0) return std::numeric_limits<double>::infinity();
  double slope = 0;
  residual(piece_at(v), v, &slope);
  return (slope + thickness_ * (chord_ + lead_) * plain_form_slope_u(v)) / (2 * v * (chord_ + lead_));
}

}  // namespace fairblade::section
