#include "fill/stand_out.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

namespace fairblade::fill {
namespace {

// Of the distance from the point to a segment.
double square_to_segment(double px, double py, double ax, double ay, double bx, double by) {
  const double dx = bx - ax;
  const double dy = by - ay;
  const double square = dx * dx + dy * dy;
  const double w = square > 0 ? std::clamp(((px - ax) * dx + (py - ay) * dy) / square, 0.0, 1.0) : 0;
  const double x = px - ax - w * dx, y = py - ay - w * dy;
  return x * x + y * y;
}

// The faces are searched outward from the point's own x until x alone is farther than the best so far, or the best no
// farther than `at_least`.
double distance_to(const Outline& o, double px, double py, double at_least) {
  const std::size_t last = o.x.size() - 1;
  const double enough = at_least * at_least;
  double best = std::min(square_to_segment(px, py, o.x[0], o.port[0], o.x[0], -o.starboard[0]),
                         square_to_segment(px, py, o.x[last], o.port[last], o.x[last], -o.starboard[last]));
  const auto start = static_cast<std::size_t>(std::upper_bound(o.x.begin(), o.x.end(), px) - o.x.begin());
  const auto segment = [&](std::size_t k) {  // between k - 1 and k
    best = std::min({best, square_to_segment(px, py, o.x[k - 1], o.port[k - 1], o.x[k], o.port[k]),
                     square_to_segment(px, py, o.x[k - 1], -o.starboard[k - 1], o.x[k], -o.starboard[k])});
  };
  const auto within = [&](double along) { return best > enough && (along < 0 || along * along < best); };
  for (std::size_t k = std::max<std::size_t>(start, 1); k <= last && within(o.x[k - 1] - px); ++k) segment(k);
  for (std::size_t k = std::min(start, last + 1); k-- > 1 && within(px - o.x[k]);) segment(k);
  return best > enough ? std::sqrt(best) : 0;
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

constexpr double alike = 1e-9;  // mm

}  // namespace

double stands_out(const Outline& outline, double x, double y) {
  const auto across = beyond_faces(outline, x, y);
  return across && *across <= alike ? 0 : distance_to(outline, x, y, 0);
}

Deepest deepest_outside(const Outline& outline, const Outline& other) {
  struct Place {
    std::size_t order;  // foremost first, port before starboard
    double x, y, most;  // it stands out no further than `most`
  };
  std::vector<Place> places;
  for (std::size_t k = 0; k < outline.x.size(); ++k) {
    for (const std::size_t side : {0, 1}) {
      const double x = outline.x[k], y = side == 0 ? outline.port[k] : -outline.starboard[k];
      const double most = beyond_faces(other, x, y).value_or(std::numeric_limits<double>::infinity());
      if (most > alike) places.push_back({2 * k + side, x, y, most});
    }
  }
  // Those that may stand out furthest first: most of the others then need not be looked at.
  std::sort(places.begin(), places.end(),
            [](const Place& a, const Place& b) { return a.most != b.most ? a.most > b.most : a.order < b.order; });
  double deepest = 0;
  std::vector<std::pair<std::size_t, double>> deep;  // order and depth
  for (const Place& place : places) {
    if (place.most < deepest - alike) break;
    const double depth = distance_to(other, place.x, place.y, std::max(0.0, deepest - 2 * alike));
    if (depth <= alike) continue;
    deepest = std::max(deepest, depth);
    deep.emplace_back(place.order, depth);
  }
  const std::pair<std::size_t, double>* first = nullptr;
  for (const auto& one : deep) {
    if (one.second >= deepest - alike && (first == nullptr || one.first < first->first)) first = &one;
  }
  if (first == nullptr) return {};
  return {first->second, outline.x[first->first / 2], first->first % 2 == 0 ? Face::port : Face::starboard};
}

}  // namespace fairblade::fill
