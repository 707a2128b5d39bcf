#include "fill/stand_out.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fairblade::fill {
namespace {

double distance_to_segment(double px, double py, double ax, double ay, double bx, double by) {
  const double dx = bx - ax;
  const double dy = by - ay;
  const double square = dx * dx + dy * dy;
  const double w = square > 0 ? std::clamp(((px - ax) * dx + (py - ay) * dy) / square, 0.0, 1.0) : 0;
  return std::hypot(px - ax - w * dx, py - ay - w * dy);
}

// The faces are searched outward from the point's own x until x alone is farther than the best so far.
double distance_to(const Outline& o, double px, double py) {
  const std::size_t last = o.x.size() - 1;
  double best = std::min(distance_to_segment(px, py, o.x[0], o.port[0], o.x[0], -o.starboard[0]),
                         distance_to_segment(px, py, o.x[last], o.port[last], o.x[last], -o.starboard[last]));
  const auto start = static_cast<std::size_t>(std::upper_bound(o.x.begin(), o.x.end(), px) - o.x.begin());
  const auto segment = [&](std::size_t k) {  // between k - 1 and k
    best = std::min({best, distance_to_segment(px, py, o.x[k - 1], o.port[k - 1], o.x[k], o.port[k]),
                     distance_to_segment(px, py, o.x[k - 1], -o.starboard[k - 1], o.x[k], -o.starboard[k])});
  };
  for (std::size_t k = std::max<std::size_t>(start, 1); k <= last && o.x[k - 1] - px < best; ++k) segment(k);
  for (std::size_t k = std::min(start, last + 1); k-- > 1 && px - o.x[k] < best;) segment(k);
  return best;
}

// How far y lies beyond the faces at x, straight across; nothing where x lies beyond the outline.
std::optional<double> beyond_faces(const Outline& o, double x, double y) {
  if (x < o.x.front() || x > o.x.back()) return std::nullopt;
  auto k = static_cast<std::size_t>(std::lower_bound(o.x.begin(), o.x.end(), x) - o.x.begin());
  if (k == 0) k = 1;
  const double w = (x - o.x[k - 1]) / (o.x[k] - o.x[k - 1]);
  const double port = o.port[k - 1] + w * (o.port[k] - o.port[k - 1]);
  const double starboard = o.starboard[k - 1] + w * (o.starboard[k] - o.starboard[k - 1]);
  return std::max(y - port, -starboard - y);
}

}  // namespace

double stands_out(const Outline& outline, double x, double y, double at_least) {
  constexpr double rounding = 1e-9;
  const auto across = beyond_faces(outline, x, y);
  if (across && *across <= std::max(rounding, at_least)) return 0;
  return distance_to(outline, x, y);
}

}  // namespace fairblade::fill
