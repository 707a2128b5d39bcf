// Private to the recheck room. Verbs: nearest, how far a point lies off a face, and where along it. mm.
#pragma once
#include "base/polyline.hpp"

namespace fairblade::recheck {

struct Nearest {
  double depth = 0;  ///< square to the face; + the point lies inside it (filler is lacking), - outside
  double girth = 0;  ///< of the nearest place along the face, from its first point
};
Nearest nearest(const Polyline& face, double x, double y);

}  // namespace fairblade::recheck
