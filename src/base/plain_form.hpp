// The unit plain 4-digit thickness form, which both the measured outlines and the forms are built on. Verbs: plain_form, and its
// slopes by u.
//
// NACA Report 460 (1933): y = 5t(0.2969 sqrt(x) - 0.1260 x - 0.3516 x² + 0.2843 x³ - 0.1015 x⁴), x and y in chords,
// t the thickness ratio. Here t = 1 and x = u².
#pragma once
#include <array>

namespace fairblade {

/// Coefficients of sqrt(x), x, x², x³, x⁴ for t = 1.
inline constexpr std::array<double, 5> plain_form_coefficients{5 * 0.2969, -5 * 0.1260, -5 * 0.3516, 5 * 0.2843, -5 * 0.1015};

/// Half-breadth of the form of t = 1 at x = u².
constexpr double plain_form(double u) {
  const auto& a = plain_form_coefficients;
  const double x = u * u;
  return a[0] * u + x * (a[1] + x * (a[2] + x * (a[3] + x * a[4])));
}

/// Its slope against u.
constexpr double plain_form_slope_u(double u) {
  const auto& a = plain_form_coefficients;
  const double x = u * u;
  return a[0] + u * (2 * a[1] + x * (4 * a[2] + x * (6 * a[3] + x * 8 * a[4])));
}

/// Its second derivative against u.
constexpr double plain_form_second_u(double u) {
  const auto& a = plain_form_coefficients;
  const double x = u * u;
  return 2 * a[1] + x * (12 * a[2] + x * (30 * a[3] + x * 56 * a[4]));
}

}  // namespace fairblade
