#include "base/geometry.hpp"

#include <boost/geometry.hpp>
#include <cmath>

namespace bg = boost::geometry;

namespace fairblade {

Polygon polygon_of(const std::vector<Point>& corners) {
  Polygon out;
  out.outer().assign(corners.begin(), corners.end());
  bg::unique(out);
  bg::correct(out);
  return out;
}

MultiPolygon difference(const Polygon& a, const Polygon& b) {
  MultiPolygon out;
  bg::difference(a, b, out);
  return out;
}

MultiPolygon intersection(const MultiPolygon& a, const MultiPolygon& b) {
  MultiPolygon out;
  bg::intersection(a, b, out);
  return out;
}

double area(const Polygon& polygon) { return std::abs(bg::area(polygon)); }
double area(const MultiPolygon& polygons) { return std::abs(bg::area(polygons)); }

double perimeter(const Polygon& polygon) { return bg::perimeter(polygon); }

Polyline thinned(const Polyline& line, double tolerance) {
  Polyline out;
  bg::simplify(line, out, tolerance);
  return out;
}

}  // namespace fairblade
