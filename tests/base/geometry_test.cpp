#include "base/geometry.hpp"
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
