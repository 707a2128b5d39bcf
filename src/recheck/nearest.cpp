#include "recheck/nearest.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fairblade::recheck {

FaceLine::FaceLine(const Polyline& face) : face_(face) {
  along_.push_back(0);
  for (std::size_t k = 1; k < face.size(); ++k)
    along_.push_back(along_.back() + std::hypot(face[k].x() - face[k - 1].x(), face[k].y() - face[k - 1].y()));
}

Nearest FaceLine::nearest(double x, double y) const {
  Nearest out;
  double best = std::numeric_limits<double>::infinity();
  const auto weigh = [&](std::size_t k) {  // the piece that ends at point k
    const Point &a = face_[k - 1], &b = face_[k];
    const double dx = b.x() - a.x(), dy = b.y() - a.y(), square = dx * dx + dy * dy;
    const double w = square > 0 ? std::clamp(((x - a.x()) * dx + (y - a.y()) * dy) / square, 0.0, 1.0) : 0;
    const double off = std::hypot(x - a.x() - w * dx, y - a.y() - w * dy);
    if (off >= best) return;
    best = off;
    out.girth = along_[k - 1] + w * (along_[k] - along_[k - 1]);
    out.steep = std::abs(dy) > dx / 2;
  };
  // The line rises in x: from where it passes the point, a piece is looked at while its x alone does not rule it out.
  const auto passes = std::upper_bound(face_.begin(), face_.end(), x, [](double v, const Point& point) { return v < point.x(); });
  const auto from = std::clamp<std::size_t>(static_cast<std::size_t>(passes - face_.begin()), 1, face_.size() - 1);
  for (std::size_t k = from; k >= 1 && x - face_[k].x() < best; --k) weigh(k);
  for (std::size_t k = from + 1; k < face_.size() && face_[k - 1].x() - x < best; ++k) weigh(k);
  const bool outside = x < face_.front().x() || y > ordinate_at(face_, x);
  out.depth = outside ? -best : best;
  return out;
}

}  // namespace fairblade::recheck
