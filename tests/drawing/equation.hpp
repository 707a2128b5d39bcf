// The section's equations, coded here on their own, and how far a drawn line misses a curve.
#pragma once
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "lines.hpp"

namespace equation {

using lines::Point;

/// The 4-digit form (NACA Report 460, 1933) with a chosen nose radius and edge thickness: the deformation of the nose
/// vanishes with two derivatives at the place m of greatest thickness, where its coefficients, solved by hand, are
/// g = sqrt(m) (s - 15/8 s2 + 5/4 s4 - 3/8 s6) with s = sqrt(x/m); the tail's is a cubic from m.
struct Equation {
  double chord, t;
  std::optional<double> radius, edge;  // mm
  double m = 0;

  static double form(double t, double x) {
    return 5 * t * (0.2969 * std::sqrt(x) + x * (-0.1260 + x * (-0.3516 + x * (0.2843 - x * 0.1015))));
  }
  void find_m() {
    const auto slope = [](double x) {
      return 0.2969 / (2 * std::sqrt(x)) - 0.1260 - 2 * 0.3516 * x + 3 * 0.2843 * x * x - 4 * 0.1015 * x * x * x;
    };
    double low = 0.25, high = 0.35;
    for (int k = 0; k < 60; ++k) (slope((low + high) / 2) > 0 ? low : high) = (low + high) / 2;
    m = low;
  }
  double at(double x) const {  // mm aft of the leading edge
    const double f = x / chord, s = std::sqrt(f / m);
    double y = form(t, f);
    if (radius && f < m) {
      const double gain = std::sqrt(2 * *radius / chord) - 5 * 0.2969 * t;
      y += gain * std::sqrt(m) * (s - 15.0 / 8 * s * s + 5.0 / 4 * s * s * s * s - 3.0 / 8 * std::pow(s, 6));
    }
    if (edge && f > m) y += (*edge / chord / 2 - form(t, 1)) * std::pow((f - m) / (1 - m), 3);
    return chord * y;
  }
};

/// The greatest distance from fine samples of the equation to the drawn line, searched near each sample's own place.
inline double worst_miss(const std::vector<Point>& drawn, const std::vector<Point>& fine) {
  double worst = 0;
  std::size_t near = 1;
  for (const Point& p : fine) {
    while (near + 1 < drawn.size() && drawn[near].x() < p.x()) ++near;
    double best = 1e9;
    for (std::size_t k = near > 3 ? near - 3 : 1; k < std::min(near + 4, drawn.size()); ++k) {
      best = std::min(best, lines::to_segment(p, drawn[k - 1], drawn[k]));
    }
    worst = std::max(worst, best);
  }
  return worst;
}

}  // namespace equation
