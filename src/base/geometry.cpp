#include "base/geometry.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>
#include <limits>
#include <optional>

#include "base/polyline.hpp"

namespace bg = boost::geometry;

namespace fairblade {

Polygon polygon_of(const std::vector<Point>& corners) {
  Polygon out;
  out.outer().assign(corners.begin(), corners.end());
  bg::unique(out);
  bg::correct(out);
  return out;
}

namespace {

/// mm²: an area may miss another way to it by so much and be taken for whole.
double allowed_miss(double area) { return 0.05 + 1e-3 * area; }

}  // namespace

// Boost 1.74 loses a piece of a difference on one in twenty of the ragged outlines of a trial of 3000, yet never of what
// two outlines share. So the difference is weighed against that, and asked again of an outline moved by a hair.
MultiPolygon difference(const Polygon& a, const Polygon& b) {
  MultiPolygon shared;
  bg::intersection(a, b, shared);
  const double wanted = area(a) - area(shared);
  MultiPolygon best;
  double best_miss = std::numeric_limits<double>::infinity();
  for (int hair = 0; hair < 8; ++hair) {
    Polygon moved;
    bg::strategy::transform::translate_transformer<double, 2, 2> shift(1.3e-5 * hair, -0.7e-5 * hair);
    bg::transform(b, moved, shift);
    MultiPolygon out;
    bg::difference(a, moved, out);
    const double miss = std::abs(area(out) - wanted);
    if (miss < best_miss) {
      best_miss = miss;
      best = std::move(out);
    }
    if (best_miss <= allowed_miss(wanted)) break;
  }
  return best;
}

// A piece lost on one side alone shows: what a has alone less what b has alone is a less b.
Apart apart(const Polygon& a, const Polygon& b) {
  Apart out;
  bg::difference(a, b, out.a);
  bg::difference(b, a, out.b);
  const double of_a = area(out.a), of_b = area(out.b);
  if (std::abs((of_a - of_b) - (area(a) - area(b))) <= allowed_miss(std::min(of_a, of_b))) return out;
  return {difference(a, b), difference(b, a)};
}

MultiPolygon intersection(const MultiPolygon& a, const MultiPolygon& b) {
  MultiPolygon out;
  bg::intersection(a, b, out);
  return out;
}

double area(const Polygon& polygon) { return std::abs(bg::area(polygon)); }
double area(const MultiPolygon& polygons) { return std::abs(bg::area(polygons)); }

double perimeter(const Polygon& polygon) { return bg::perimeter(polygon); }

namespace {

// Every edge moved along its normal, corners where neighbours meet: what a buffer with mitred joins is where no edge vanishes.
// Nothing where one does, or where a corner is so sharp that the buffer would cut its mitre.
std::optional<std::vector<Point>> edges_moved(const Polygon& polygon, double distance) {
  constexpr double sharpest = 0.01;  // square of the cosine of half the turn: a corner of 11 degrees
  std::vector<Point> ring;
  for (const Point& p : polygon.outer()) {
    if (ring.empty() || p.x() != ring.back().x() || p.y() != ring.back().y()) ring.push_back(p);
  }
  if (ring.size() > 1 && ring.front().x() == ring.back().x() && ring.front().y() == ring.back().y()) ring.pop_back();
  const std::size_t count = ring.size();
  if (count < 3) return std::nullopt;
  std::vector<Point> normal(count), out(count);  // of the edge that starts at each corner; clockwise: to the left is outside
  for (std::size_t k = 0; k < count; ++k) {
    const Point &a = ring[k], &b = ring[(k + 1) % count];
    const double dx = b.x() - a.x(), dy = b.y() - a.y(), length = std::sqrt(dx * dx + dy * dy);
    normal[k] = Point(-dy / length, dx / length);
  }
  for (std::size_t k = 0; k < count; ++k) {
    const Point &before = normal[(k + count - 1) % count], &after = normal[k];
    const double twice = 1 + before.x() * after.x() + before.y() * after.y();
    if (!(twice > 2 * sharpest)) return std::nullopt;
    out[k] = Point(ring[k].x() + (before.x() + after.x()) * distance / twice,
                   ring[k].y() + (before.y() + after.y()) * distance / twice);
  }
  for (std::size_t k = 0; k < count; ++k) {
    const Point &a = out[k], &b = out[(k + 1) % count];
    if (!(normal[k].y() * (b.x() - a.x()) - normal[k].x() * (b.y() - a.y()) > 0)) return std::nullopt;
  }
  return out;
}

// Does the clockwise ring run from its foremost corner aft, and back below itself, never turning nor crossing on the way?
bool lies_between_two_lines(const std::vector<Point>& ring) {
  const auto by_x = [](const Point& a, const Point& b) { return a.x() < b.x(); };
  const std::size_t count = ring.size();
  const auto first = static_cast<std::size_t>(std::min_element(ring.begin(), ring.end(), by_x) - ring.begin());
  Polyline upper, lower;
  std::size_t k = 0;
  for (; k < count; ++k) {
    const Point& p = ring[(first + k) % count];
    if (!upper.empty() && p.x() < upper.back().x()) break;
    upper.push_back(p);
  }
  for (lower.push_back(upper.back()); k <= count; ++k) {
    const Point& p = ring[(first + k) % count];
    if (p.x() > lower.back().x()) return false;
    lower.push_back(p);
  }
  std::reverse(lower.begin(), lower.end());
  const double fore = upper.front().x(), aft = upper.back().x();
  const auto within = [&](const Point& p) { return p.x() > fore && p.x() < aft; };
  return std::all_of(upper.begin(), upper.end(),
                     [&](const Point& p) { return !within(p) || p.y() > ordinate_at(lower, p.x()); }) &&
         std::all_of(lower.begin(), lower.end(), [&](const Point& p) { return !within(p) || p.y() < ordinate_at(upper, p.x()); });
}

}  // namespace

MultiPolygon offset(const Polygon& polygon, double distance) {
  // A blade's section is nearly always so plain, and a buffer's search for crossings takes a hundred times as long.
  if (polygon.inners().empty()) {
    if (const auto ring = edges_moved(polygon, distance); ring && lies_between_two_lines(*ring)) return {polygon_of(*ring)};
  }
  namespace buffer = bg::strategy::buffer;
  MultiPolygon out;
  bg::buffer(polygon, out, buffer::distance_symmetric<double>(distance), buffer::side_straight(), buffer::join_miter(20),
             buffer::end_flat(), buffer::point_square());
  return out;
}

Polyline thinned(const Polyline& line, double tolerance) {
  Polyline out;
  bg::simplify(line, out, tolerance);
  return out;
}

}  // namespace fairblade
