#include "recheck/nearest.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::recheck {

Nearest nearest(const Polyline& face, double x, double y) {
  Nearest out;
  double best = -1, along = 0;
  for (std::size_t k = 1; k < face.size(); ++k) {
    const Point &a = face[k - 1], &b = face[k];
    const double dx = b.x() - a.x(), dy = b.y() - a.y(), length = std::hypot(dx, dy);
    const double w = length > 0 ? std::clamp(((x - a.x()) * dx + (y - a.y()) * dy) / (length * length), 0.0, 1.0) : 0;
    const double off = std::hypot(x - a.x() - w * dx, y - a.y() - w * dy);
    if (best < 0 || off < best) {
      best = off;
      out.girth = along + w * length;
    }
    along += length;
  }
  const bool outside = x < face.front().x() || y > ordinate_at(face, x);
  out.depth = outside ? -best : best;
  return out;
}

}  // namespace fairblade::recheck
