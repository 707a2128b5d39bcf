#include "drawing/hatch.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_linestring.hpp>
#include <cmath>

namespace bg = boost::geometry;

namespace fairblade::drawing {
namespace {

constexpr double root_half = 0.70710678118654752440;

void hatch_one(const Polygon& area, double spacing, bool rising, Path& path) {
  Box box;
  bg::envelope(area, box);
  const double left = box.min_corner().x() - 1, right = box.max_corner().x() + 1;
  // On a rising line x + y is constant (y runs down the paper), on a falling one x - y.
  const double sense = rising ? 1 : -1;
  const double low = box.min_corner().x() + (rising ? box.min_corner().y() : -box.max_corner().y());
  const double high = box.max_corner().x() + (rising ? box.max_corner().y() : -box.min_corner().y());
  const double step = spacing / root_half;
  for (double k = std::ceil(low / step); k * step <= high; ++k) {
    // Only the part of the line that passes the box's own heights.
    const double sum = k * step;
    const double top = box.min_corner().y() - 1, bottom = box.max_corner().y() + 1;
    const double x1 = std::max(left, std::min(sum - sense * top, sum - sense * bottom));
    const double x2 = std::min(right, std::max(sum - sense * top, sum - sense * bottom));
    if (x2 <= x1) continue;
    const Polyline line{Point(x1, sense * (sum - x1)), Point(x2, sense * (sum - x2))};
    bg::model::multi_linestring<Polyline> pieces;
    bg::intersection(line, area, pieces);
    for (const Polyline& piece : pieces) {
      if (piece.size() >= 2 && bg::length(piece) > 0.02) path.runs.push_back({piece.front(), piece.back()});
    }
  }
}

}  // namespace

Path hatch(const MultiPolygon& area, double spacing, bool rising) {
  Path path;
  path.pen = Pen::hatch;
  for (const Polygon& each : area) hatch_one(each, spacing, rising, path);
  return path;
}

}  // namespace fairblade::drawing
