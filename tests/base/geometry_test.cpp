#include "base/geometry.hpp"

#include "base/polyline.hpp"
#include "catch.hpp"

using namespace fairblade;

TEST_CASE("areas of rectangles and of their differences") {
  const Polygon a = polygon_of({{0, 0}, {4, 0}, {4, 2}, {0, 2}});
  const Polygon b = polygon_of({{1, 1}, {1, 5}, {3, 5}, {3, 1}, {1, 1}});
  CHECK(area(a) == 8);
  CHECK(area(b) == 8);
  CHECK(area(difference(a, b)) == Approx(6));
  CHECK(area(difference(b, a)) == Approx(6));
}

TEST_CASE("an ordinate is read off a line, its ends held beyond it") {
  const Polyline line{{0, 1}, {0, 2}, {2, 4}, {5, 1}};  // upright at its beginning, as a blunt edge is
  CHECK(ordinate_at(line, -1) == 1);
  CHECK(ordinate_at(line, 1) == Approx(3));
  CHECK(ordinate_at(line, 2) == Approx(4));
  CHECK(ordinate_at(line, 4) == Approx(2));
  CHECK(ordinate_at(line, 9) == 1);
}
