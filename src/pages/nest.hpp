// Private to the pages room. Small pieces side by side on shared pages. Verbs: nest. mm.
#pragma once
#include <cstddef>
#include <vector>

#include "base/geometry.hpp"

namespace fairblade::pages {

struct Nested {
  std::size_t piece = 0;
  Point at;  ///< its upper left corner in the window
};

/// Which piece (width, height; each fits the window) lies where, page by page: shelves, the highest pieces first, each on
/// the first shelf with room (first fit, decreasing height). `gap` between neighbours, to cut along.
std::vector<std::vector<Nested>> nest(const std::vector<Point>& sizes, double width, double height, double gap);

}  // namespace fairblade::pages
