#include "flow/influence.hpp"

#include <cmath>
#include <numbers>

namespace fairblade::flow {

using std::numbers::pi;

std::optional<Shape> shape_of(const std::vector<Point>& nodes, double chord) {
  if (nodes.size() < 10 || !(chord > 0) || !std::isfinite(chord)) return std::nullopt;
  Shape out;
  double twice_area = 0;
  for (const Point& p : nodes) out.node.emplace_back((p.x() - nodes[0].x()) / chord, (p.y() - nodes[0].y()) / chord);
  for (std::size_t k = 0; k + 1 < nodes.size(); ++k) {
    const Vec step = out.node[k + 1] - out.node[k];
    const double length = step.norm();
    if (!(length > 1e-12) || !std::isfinite(length)) return std::nullopt;
    out.length.push_back(length);
    out.along.push_back(step / length);
    out.middle.push_back((out.node[k] + out.node[k + 1]) / 2);
    twice_area += cross(out.node[k], out.node[k + 1]);
  }
  if (!(twice_area > 0)) return std::nullopt;
  const Vec base = out.node.back() - out.node.front();
  out.gap = base.norm();
  if (out.blunt()) out.base_along = base / out.gap;
  const Vec leaving = out.along.back() - out.along.front();
  if (!(leaving.norm() > 1e-9)) return std::nullopt;
  out.bisector = leaving.normalized();
  return out;
}

namespace {

// Velocity at a point by a panel of unit strength, from its two ends as seen from the point: `lg` the logarithm of the
// ratio of their distances, `angle` the angle the panel fills (positive to its left). Clockwise vorticity, which counts
// positive, gives angle x along - lg x left; a source lg x along + angle x left. Wanted is what of it runs along `square`.

// The angle of (x, y), and half the logarithm of a/b: by their series where they are small, as for all panels but the
// nearest. Three times as quick, and a/b near 1 loses no digits. The first term left out is below 1e-15 of the whole.
constexpr double small = 0.1;
template <typename T>
auto angle_series(const T& t, const T& s) {
  return t * (1 - s * (1.0 / 3 - s * (1.0 / 5 - s * (1.0 / 7 - s * (1.0 / 9 - s * (1.0 / 11 - s / 13))))));
}
template <typename T>
auto half_log_series(const T& q, const T& s) {
  return q * (1 + s * (1.0 / 3 + s * (1.0 / 5 + s * (1.0 / 7 + s * (1.0 / 9 + s * (1.0 / 11 + s / 13))))));
}
double angle_of(double y, double x) {
  if (!(std::abs(y) < small * x)) return std::atan2(y, x);
  const double t = y / x, s = t * t;
  return angle_series(t, s);
}
double half_log_of(double a, double b) {
  const double q = (a - b) / (a + b), s = q * q;
  if (!(std::abs(q) < small)) return std::log(a / b) / 2;
  return half_log_series(q, s);
}

}  // namespace

Influence::Influence(const Shape& shape)
    : shape_(shape),
      count_(static_cast<Eigen::Index>(shape.length.size())),
      node_x_(count_ + 1),
      node_y_(count_ + 1),
      along_x_(count_),
      along_y_(count_),
      length_(count_) {
  for (Eigen::Index k = 0; k <= count_; ++k) {
    node_x_[k] = shape.node[static_cast<std::size_t>(k)][0];
    node_y_[k] = shape.node[static_cast<std::size_t>(k)][1];
  }
  for (Eigen::Index k = 0; k < count_; ++k) {
    along_x_[k] = shape.along[static_cast<std::size_t>(k)][0];
    along_y_[k] = shape.along[static_cast<std::size_t>(k)][1];
    length_[k] = shape.length[static_cast<std::size_t>(k)];
  }
}

void Influence::add_row(std::size_t i, Eigen::Ref<Eigen::ArrayXd> out) {
  const Vec& point = shape_.middle[i];
  const Vec square = left_of(shape_.along[i]);
  const auto own = static_cast<Eigen::Index>(i);
  from_x_ = point[0] - node_x_;
  from_y_ = point[1] - node_y_;
  distance_ = from_x_ * from_x_ + from_y_ * from_y_;
  x_ = from_x_.head(count_) * along_x_ + from_y_.head(count_) * along_y_;
  y_ = along_x_ * from_y_.head(count_) - along_y_ * from_x_.head(count_);
  y_[own] = 0;
  settle_angles(own);
  settle_logarithms();
  on_ = along_x_ * square[0] + along_y_ * square[1];
  left_ = along_x_ * square[1] - along_y_ * square[0];
  whole_ = angle_ * on_ - lg_ * left_;
  // The part that grows from the first end to the second: s/length, with s = x - a integrated over a.
  growing_ = (x_ * whole_ - (y_ * lg_ * on_ - (length_ - y_ * angle_) * left_)) / length_;
  out.head(count_) += (whole_ - growing_) / (2 * pi);
  out.tail(count_) += growing_ / (2 * pi);
  if (shape_.blunt()) add_base(point, square, out);
}

void Influence::settle_angles(Eigen::Index own) {
  rise_ = y_ * length_;
  run_ = y_ * y_ + x_ * (x_ - length_);
  ratio_ = rise_ / run_;
  square_ = ratio_ * ratio_;
  angle_ = angle_series(ratio_, square_);
  for (Eigen::Index j = 0; j < count_; ++j) {
    if (!(std::abs(rise_[j]) < small * run_[j])) angle_[j] = std::atan2(rise_[j], run_[j]);
  }
  angle_[own] = 0;
}

void Influence::settle_logarithms() {
  const auto first = distance_.head(count_), second = distance_.tail(count_);
  ratio_ = (first - second) / (first + second);
  square_ = ratio_ * ratio_;
  lg_ = half_log_series(ratio_, square_);
  for (Eigen::Index j = 0; j < count_; ++j) {
    if (!(std::abs(ratio_[j]) < small)) lg_[j] = std::log(distance_[j] / distance_[j + 1]) / 2;
  }
}

/// The water leaves at half of (first - last): what of it crosses the base is source, what runs along it vorticity.
void Influence::add_base(const Vec& point, const Vec& square, Eigen::Ref<Eigen::ArrayXd> out) const {
  const Vec from = point - shape_.node[0];
  const double x = from.dot(shape_.base_along);
  const double y = cross(shape_.base_along, from);
  const double angle = angle_of(y * shape_.gap, y * y + x * (x - shape_.gap));
  const double lg = half_log_of(distance_[0], distance_[count_]);
  const double on = shape_.base_along.dot(square), left = left_of(shape_.base_along).dot(square);
  const double jet = std::abs(cross(shape_.bisector, shape_.base_along)) / 2 * (lg * on + angle * left) +
                     shape_.bisector.dot(shape_.base_along) / 2 * (angle * on - lg * left);
  out[0] += jet / (2 * pi);
  out[count_] -= jet / (2 * pi);
}

}  // namespace fairblade::flow
