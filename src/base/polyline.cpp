#include "base/polyline.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade {

double ordinate_at(const Polyline& line, double x) {
  const auto next = std::upper_bound(line.begin(), line.end(), x, [](double v, const Point& p) { return v < p.x(); });
  if (next == line.begin()) return line.front().y();
  if (next == line.end()) return line.back().y();
  const Point &a = *(next - 1), &b = *next;
  return a.y() + (b.y() - a.y()) * (x - a.x()) / (b.x() - a.x());
}

double length_of(const std::vector<Point>& line) {
  double out = 0;
  for (std::size_t k = 1; k < line.size(); ++k) out += std::hypot(line[k].x() - line[k - 1].x(), line[k].y() - line[k - 1].y());
  return out;
}

}  // namespace fairblade
