// The symmetric Joukowski section, exact: circle centre -e, radius 1 + e, z = s + 1/s.
#pragma once
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

#include "flow/panel.hpp"

namespace joukowski {

using Complex = std::complex<double>;

inline Complex circle(double e, double theta) { return -e + (1 + e) * std::polar(1.0, theta); }
inline Complex mapped(const Complex& s) { return s + 1.0 / s; }
inline double leading_edge(double e) { return -(1 + 2 * e) - 1 / (1 + 2 * e); }
inline double chord(double e) { return 2 - leading_edge(e); }

/// (v/U)² = |2 (sin(theta - alpha) + sin alpha)/(1 - 1/s²)|².
inline double speed_squared(double e, double theta, double alpha) {
  const double v = 2 * std::abs(std::sin(theta - alpha) + std::sin(alpha)) / std::abs(1.0 - 1.0 / std::pow(circle(e, theta), 2));
  return v * v;
}
inline double lift(double e, double alpha) { return 2 * std::numbers::pi * (1 + 2 * e) / (1 + e) * std::sin(alpha); }
/// By Blasius about the circle's centre, moment -2 pi rho U² sin 2 alpha: x of the centre of pressure, in chords.
inline double centre_of_pressure(double e) { return (-e - leading_edge(e) - 1 / (1 + e)) / chord(e); }

inline double theta(int k, int panels) { return 2 * std::numbers::pi * k / panels; }

/// Nodes even in the circle's angle, chord 1 from 0.
inline std::vector<fairblade::Point> nodes(double e, int panels) {
  std::vector<fairblade::Point> out;
  for (int k = 0; k <= panels; ++k) {
    const Complex z = k == 0 || k == panels ? Complex(2, 0) : mapped(circle(e, theta(k, panels)));
    out.emplace_back((z.real() - leading_edge(e)) / chord(e), 2 * k == panels ? 0 : z.imag() / chord(e));
  }
  return out;
}

}  // namespace joukowski
