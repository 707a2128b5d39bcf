// How far points are from polylines: for tests that hold a drawn line against a curve.
#pragma once
#include <algorithm>
#include <cmath>
#include <vector>

#include "base/geometry.hpp"

namespace lines {

using fairblade::Point;

inline double to_segment(const Point& p, const Point& a, const Point& b) {
  const double dx = b.x() - a.x(), dy = b.y() - a.y(), size = dx * dx + dy * dy;
  const double w = size == 0 ? 0 : std::clamp(((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / size, 0.0, 1.0);
  return std::hypot(p.x() - a.x() - w * dx, p.y() - a.y() - w * dy);
}

template <class Line>
double to_line(const Point& p, const Line& line) {
  double best = 1e9;
  for (std::size_t k = 1; k < line.size(); ++k) best = std::min(best, to_segment(p, line[k - 1], line[k]));
  return best;
}

}  // namespace lines
