// Private to the flow room. Product: Shape, an outline in chords, and Influence, what vorticity on it sends through its panels.
// Verbs: shape_of, Influence::add_row.
#pragma once
#include <Eigen/Dense>
#include <optional>
#include <vector>

#include "base/geometry.hpp"

namespace fairblade::flow {

using Vec = Eigen::Vector2d;

inline double cross(const Vec& a, const Vec& b) { return a[0] * b[1] - a[1] * b[0]; }
inline Vec left_of(const Vec& a) { return {-a[1], a[0]}; }

/// The outline in chords, its first node at the origin: so that neither unit nor origin reaches the arithmetic.
struct Shape {
  std::vector<Vec> node, middle, along;  // along: unit direction of each panel
  std::vector<double> length;
  double gap = 0;                // of the blunt base
  Vec base_along = Vec::Zero();  // from the first node to the last
  Vec bisector = Vec::Zero();    // the way the water leaves
  bool blunt() const { return gap > 1e-7; }
};

/// Nothing for fewer than 10 nodes, repeated or unfinite ones, and a wrong sense.
std::optional<Shape> shape_of(const std::vector<Point>& nodes, double chord);

/// Rows of influences: what the vorticity at each node sends through the middle of a panel, square to it. The shape must
/// outlive it.
class Influence {
 public:
  explicit Influence(const Shape& shape);
  /// Adds the row of panel `i`, one number for each node.
  void add_row(std::size_t i, Eigen::Ref<Eigen::ArrayXd> out);

 private:
  struct Pair;
  static bool far(const Pair& pair);
  static void settle_near(Pair& pair);
  void add_base(const Vec& point, const Vec& square, Eigen::Ref<Eigen::ArrayXd> out) const;

  using Row = Eigen::ArrayXd;
  const Shape& shape_;
  Eigen::Index count_;
  Row node_x_, node_y_, along_x_, along_y_, length_, row_;  // a panel of no direction makes their number even: it sends nothing
};

}  // namespace fairblade::flow
