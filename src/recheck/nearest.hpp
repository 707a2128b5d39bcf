// Private to the recheck room. Product: FaceLine, a face ready to be asked how far points lie off it, and where along it. Verbs:
// nearest. mm.
#pragma once
#include <vector>

#include "base/polyline.hpp"

namespace fairblade::recheck {

struct Nearest {
  double depth = 0;    ///< square to the face; + the point lies inside it (filler is lacking), - outside
  double girth = 0;    ///< of the nearest place along the face, from its first point
  bool steep = false;  ///< the face rises or falls there by more than half of what it runs
};

/// Of a scan thousands of points are asked of one face, so only the pieces that can be nearest are looked at. The line must
/// outlive it.
class FaceLine {
 public:
  explicit FaceLine(const Polyline& face);
  Nearest nearest(double x, double y) const;
  double ordinate(double x) const { return ordinate_at(face_, x); }
  double girth() const { return along_.back(); }

 private:
  const Polyline& face_;
  std::vector<double> along_;  ///< girth at each point
};

}  // namespace fairblade::recheck
