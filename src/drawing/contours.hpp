// Lines and areas of equal depth over a bent grid. Verbs: contour_lines, area_above.
//
// Marching squares: values are straight along each side of a cell; where a level crosses all four sides of one, the
// mean of its corners tells which crossings belong together. Areas end at the grid's own rim.
#pragma once
#include <vector>

#include "base/geometry.hpp"

namespace fairblade::drawing {

/// Places in rows of `columns`, neighbours in the grid being neighbours on paper, and a value at each.
struct Field {
  std::size_t columns = 0;
  std::vector<Point> places;
  std::vector<double> values;
  std::size_t rows() const { return columns == 0 ? 0 : places.size() / columns; }
};

/// Where the value is `level`; a closed line ends on its first point.
std::vector<std::vector<Point>> contour_lines(const Field& field, double level);
/// Where the value is `level` or more, with holes.
MultiPolygon area_above(const Field& field, double level);

}  // namespace fairblade::drawing
