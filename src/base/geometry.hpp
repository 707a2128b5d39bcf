// The plane: points and polygons in millimetres, by Boost.Geometry. Verbs: polygon_of, difference, apart, intersection, area,
// perimeter, offset, thinned.
// x runs aft along the chord; y runs to port of the centre plane.
// Only the shapes are declared here; what needs Boost's algorithms includes <boost/geometry.hpp> in its own .cpp.
#pragma once
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <vector>

namespace fairblade {

using Point = boost::geometry::model::d2::point_xy<double>;  ///< mm
using Polyline = boost::geometry::model::linestring<Point>;
using Polygon = boost::geometry::model::polygon<Point>;  ///< clockwise, closed
using MultiPolygon = boost::geometry::model::multi_polygon<Polygon>;

/// The polygon with these corners, in either sense, closed or not; repeated points dropped.
Polygon polygon_of(const std::vector<Point>& corners);
/// a without b; b may have been moved by up to 0.0001 mm for it.
MultiPolygon difference(const Polygon& a, const Polygon& b);
/// What a and what b has alone: both differences, sooner than one after the other.
struct Apart {
  MultiPolygon a, b;
};
Apart apart(const Polygon& a, const Polygon& b);
/// What a and b share.
MultiPolygon intersection(const MultiPolygon& a, const MultiPolygon& b);
/// mm²; never negative.
double area(const Polygon& polygon);
double area(const MultiPolygon& polygons);
/// mm, all edges of the outer ring.
double perimeter(const Polygon& polygon);
/// The polygon moved outwards along its normals by `distance` mm, inwards where negative; corners stay sharp. Boost's
/// buffer with mitred joins, or where no edge vanishes the same in closed form. More than one piece, or none, where it closes up.
MultiPolygon offset(const Polygon& polygon, double distance);
/// The polyline with points dropped that lie within `tolerance` mm of what remains (Douglas-Peucker).
Polyline thinned(const Polyline& line, double tolerance);

}  // namespace fairblade
