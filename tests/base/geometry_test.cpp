#include "base/geometry.hpp"

#include <boost/geometry.hpp>
#include <cmath>

#include "base/polyline.hpp"
#include "catch.hpp"

using namespace fairblade;

namespace {

namespace bg = boost::geometry;

/// The library's own buffer: what `offset` must be, whichever way it goes.
MultiPolygon buffer_of(const Polygon& polygon, double distance) {
  MultiPolygon out;
  namespace by = bg::strategy::buffer;
  bg::buffer(polygon, out, by::distance_symmetric<double>(distance), by::side_straight(), by::join_miter(20), by::end_flat(),
             by::point_square());
  return out;
}

/// The furthest that a corner of one lies from the outline of the other, both ways.
double apart(const MultiPolygon& a, const MultiPolygon& b) {
  double out = 0;
  for (const auto& [one, other] : {std::pair{&a, &b}, {&b, &a}}) {
    for (const Polygon& polygon : *one) {
      for (const Point& corner : polygon.outer()) {
        double nearest = 1e9;
        for (const Polygon& to : *other)
          nearest = std::min(nearest, bg::distance(corner, Polyline(to.outer().begin(), to.outer().end())));
        out = std::max(out, nearest);
      }
    }
  }
  return out;
}

double mitred_area(const Polygon& polygon, double distance) {
  const auto& ring = polygon.outer();
  double tangents = 0;
  for (std::size_t k = 0; k + 1 < ring.size(); ++k) {
    const Point &a = ring[k == 0 ? ring.size() - 2 : k - 1], &b = ring[k], &c = ring[k + 1];
    const double ux = b.x() - a.x(), uy = b.y() - a.y(), vx = c.x() - b.x(), vy = c.y() - b.y();
    tangents += std::tan(std::atan2(uy * vx - ux * vy, ux * vx + uy * vy) / 2);  // clockwise turns count positive
  }
  return area(polygon) + distance * perimeter(polygon) + distance * distance * tangents;
}

/// NACA Report 460 (1933), half-breadth in chords.
double naca(double t, double x) {
  return 5 * t * (0.2969 * std::sqrt(x) - 0.1260 * x - 0.3516 * x * x + 0.2843 * x * x * x - 0.1015 * x * x * x * x);
}

/// A 4-digit section with an edge; `hollow` mm taken off both faces at seven tenths of the chord.
Polygon section(double t, double edge, double hollow) {
  std::vector<Point> corners;
  const double chord = 300;
  const auto half = [&](double x) {
    return chord * (naca(t, x) - naca(t, 1) * x) + edge / 2 * x - hollow * std::exp(-40 * (x - 0.7) * (x - 0.7));
  };
  for (int k = 0; k <= 150; ++k) corners.emplace_back(chord * k * k / 22500.0, half(k * k / 22500.0));
  for (int k = 150; k-- > 1;) corners.emplace_back(chord * k * k / 22500.0, -half(k * k / 22500.0));
  if (edge > 0) corners.insert(corners.begin() + 151, Point(chord, -edge / 2));
  return polygon_of(corners);
}

}  // namespace

TEST_CASE("an offset is the library's buffer, in closed form or not") {
  int compared = 0;
  for (const double t : {0.06, 0.12, 0.18}) {
    for (const double edge : {0.0, 3.0, 6.0}) {
      for (const double hollow : {0.0, 1.5}) {
        for (const double distance : {-2.0, -0.5, 0.7, 4.0}) {
          const Polygon polygon = section(t, edge, hollow);
          const auto own = offset(polygon, distance), library = buffer_of(polygon, distance);
          INFO(t << " edge " << edge << " hollow " << hollow << " by " << distance);
          REQUIRE(own.size() == library.size());
          // Round a corner that opens, the library cuts the mitres of nearly straight lines off; where none does, it is exact.
          const double cut = distance > 0 ? distance : hollow > 0 ? -distance : 0.1;
          CHECK(area(own) == Approx(area(library)).epsilon(3e-4));
          CHECK(apart(own, library) < 1.2e-3 * cut);
          // Where no edge vanishes: area + d x perimeter + d² x sum of tangents of half the turns. The 0006 is left out: its
          // nose of 1.2 mm vanishes, and its sharp tail of 8 degrees is the library's to cut.
          if (edge > -2.5 * distance && t > 0.06) CHECK(area(own) == Approx(mitred_area(polygon, distance)).epsilon(1e-9));
          ++compared;
        }
      }
    }
  }
  CHECK(compared == 72);
}

TEST_CASE("an offset may close a shape up, part it, or lose an edge") {
  // By hand: a bar of 10 x 4, two squares of 6 at its ends. 2.5 inwards the bar is gone and squares of 1 are left.
  const Polygon dumbbell =
      polygon_of({{0, -3}, {6, -3}, {6, -2}, {16, -2}, {16, -3}, {22, -3}, {22, 3}, {16, 3}, {16, 2}, {6, 2}, {6, 3}, {0, 3}});
  const auto parted = offset(dumbbell, -2.5);
  REQUIRE(parted.size() == 2);
  CHECK(area(parted) == Approx(2));
  CHECK(offset(dumbbell, -3.5).empty());
  // A square with a corner cut off by 1: 2 inwards the cut is gone, and a square of 6 is left.
  const auto square = offset(polygon_of({{0, 0}, {10, 0}, {10, 10}, {1, 10}, {0, 9}}), -2);
  REQUIRE(square.size() == 1);
  CHECK(area(square) == Approx(36));
  CHECK(square.front().outer().size() == 5);
  // A U, which no two lines enclose: 1 outwards the arms meet over the gap of 2.
  CHECK(area(offset(polygon_of({{0, 0}, {0, 8}, {3, 8}, {3, 2}, {4.5, 2}, {4.5, 8}, {8, 8}, {8, 0}}), 1)) == Approx(100));
}

TEST_CASE("areas of rectangles and of their differences") {
  const Polygon a = polygon_of({{0, 0}, {4, 0}, {4, 2}, {0, 2}});
  const Polygon b = polygon_of({{1, 1}, {1, 5}, {3, 5}, {3, 1}, {1, 1}});
  CHECK(area(a) == 8);
  CHECK(area(b) == 8);
  CHECK(area(difference(a, b)) == Approx(6));
  CHECK(area(difference(b, a)) == Approx(6));
  CHECK(area(apart(a, b).a) == Approx(6));
  CHECK(area(apart(b, polygon_of({{1, 0}, {1, 3}, {3, 3}, {3, 0}})).a) == Approx(4));
}

TEST_CASE("an ordinate is read off a line, its ends held beyond it") {
  const Polyline line{{0, 1}, {0, 2}, {2, 4}, {5, 1}};  // upright at its beginning, as a blunt edge is
  CHECK(ordinate_at(line, -1) == 1);
  CHECK(ordinate_at(line, 1) == Approx(3));
  CHECK(ordinate_at(line, 2) == Approx(4));
  CHECK(ordinate_at(line, 4) == Approx(2));
  CHECK(ordinate_at(line, 9) == 1);
}
