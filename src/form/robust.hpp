// Tukey's biweight and the scale it works with. Verbs: tukey_weight, tukey_slope, tukey_loss, robust_scale.
//
// Beaton & Tukey 1974; tuning constant 4.685 (95 % efficiency on normal errors); scale 1.4826 MAD, which is the
// standard deviation of a normal sample (both recalled from the standard literature).
#pragma once
#include <cmath>
#include <vector>

#include "base/numerics.hpp"

namespace fairblade::form {

constexpr double tukey_reach = 4.685;

/// Weight of a residual r at scale s: (1 - (r/cs)²)², zero beyond.
inline double tukey_weight(double r, double s) {
  const double z = r / (tukey_reach * s);
  return std::abs(z) < 1 ? (1 - z * z) * (1 - z * z) : 0.0;
}
/// d(weight · r)/dr.
inline double tukey_slope(double r, double s) {
  const double z = r / (tukey_reach * s);
  return std::abs(z) < 1 ? (1 - z * z) * (1 - 5 * z * z) : 0.0;
}
/// The loss itself, in units of s²: (c²/6)(1 - (1 - z²)³), at most c²/6.
inline double tukey_loss(double r, double s) {
  const double z = r / (tukey_reach * s);
  const double rest = std::abs(z) < 1 ? 1 - z * z : 0.0;
  return tukey_reach * tukey_reach / 6 * (1 - rest * rest * rest);
}
/// 1.4826 times the median of |r|, at least `floor` (the MAD of exact data is 0).
inline double robust_scale(const std::vector<double>& residuals, double floor) {
  std::vector<double> sizes;
  sizes.reserve(residuals.size());
  for (const double r : residuals) sizes.push_back(std::abs(r));
  return std::fmax(1.4826 * median(std::move(sizes)), floor);
}

}  // namespace fairblade::form
