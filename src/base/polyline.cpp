#include "base/polyline.hpp"

#include <algorithm>

namespace fairblade {

double ordinate_at(const Polyline& line, double x) {
  const auto next = std::upper_bound(line.begin(), line.end(), x, [](double v, const Point& p) { return v < p.x(); });
  if (next == line.begin()) return line.front().y();
  if (next == line.end()) return line.back().y();
  const Point &a = *(next - 1), &b = *next;
  return a.y() + (b.y() - a.y()) * (x - a.x()) / (b.x() - a.x());
}

}  // namespace fairblade
