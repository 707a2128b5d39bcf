#include "flow/panel.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace fairblade::flow {
namespace {

using std::numbers::pi;
using Vec = Eigen::Vector2d;

constexpr double radians(double degrees) { return degrees * pi / 180; }

/// The outline in chords, its first node at the origin: so that neither unit nor origin reaches the arithmetic.
struct Shape {
  std::vector<Vec> node, middle, along;  // along: unit direction of each panel
  std::vector<double> length;
  double gap = 0;                // of the blunt base
  Vec base_along = Vec::Zero();  // from the first node to the last
  Vec bisector = Vec::Zero();    // the way the water leaves
  bool blunt() const { return gap > 1e-7; }
};

double cross(const Vec& a, const Vec& b) { return a[0] * b[1] - a[1] * b[0]; }
Vec left_of(const Vec& a) { return {-a[1], a[0]}; }

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

using Row = Eigen::ArrayXd;

/// Rows of influences: what the vorticity at each node sends through the middle of a panel, square to it.
class Influence {
 public:
  explicit Influence(const Shape& shape)
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

  void add_row(std::size_t i, Eigen::Ref<Eigen::ArrayXd> out) {
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

 private:
  void settle_angles(Eigen::Index own) {
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

  void settle_logarithms() {
    const auto first = distance_.head(count_), second = distance_.tail(count_);
    ratio_ = (first - second) / (first + second);
    square_ = ratio_ * ratio_;
    lg_ = half_log_series(ratio_, square_);
    for (Eigen::Index j = 0; j < count_; ++j) {
      if (!(std::abs(ratio_[j]) < small)) lg_[j] = std::log(distance_[j] / distance_[j + 1]) / 2;
    }
  }

  /// The water leaves at half of (first - last): what of it crosses the base is source, what runs along it vorticity.
  void add_base(const Vec& point, const Vec& square, Eigen::Ref<Eigen::ArrayXd> out) const {
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

  const Shape& shape_;
  Eigen::Index count_;
  Row node_x_, node_y_, along_x_, along_y_, length_;
  Row from_x_, from_y_, distance_, x_, y_, rise_, run_, ratio_, square_, angle_, lg_, on_, left_, whole_, growing_;
};

/// How many panels from a sharp edge are far longer than the body is thick between them and their opposites.
std::size_t thin_pairs(const Shape& shape) {
  if (shape.blunt()) return 0;
  const std::size_t panels = shape.length.size();
  std::size_t k = 1;
  for (; k + 4 < panels / 2; ++k) {
    const std::size_t other = panels - 1 - k;
    const bool opposite = std::abs(shape.length[k] - shape.length[other]) < 0.1 * shape.length[k];
    if (!opposite || (shape.middle[k] - shape.middle[other]).norm() > 0.05 * shape.length[k]) break;
  }
  return k;
}

/// At a sharp edge, and in a cusp ahead of it, equal and opposite vorticities on the two faces undo each other, so that
/// rounding and the panels' straightness would settle them. There only the flow *across* both faces is asked for; the flow
/// into both gives way to a difference in line with the two pairs of nodes ahead.
void settle_sharp_edge(const Shape& shape, Eigen::MatrixXd& matrix, Eigen::MatrixXd& right) {
  const Eigen::Index nodes = matrix.cols();
  const auto pairs = static_cast<Eigen::Index>(thin_pairs(shape));
  for (Eigen::Index k = 0; k < pairs; ++k) {
    const Eigen::Index other = nodes - 2 - k;  // the opposite panel
    matrix.row(k) -= matrix.row(other);
    right.row(k) -= right.row(other);
    matrix.row(other).setZero();
    right.row(other).setZero();
    const double share = shape.length[static_cast<std::size_t>(k)] / shape.length[static_cast<std::size_t>(k) + 1];
    const double weight[] = {1, -(1 + share), share};
    for (Eigen::Index step = 0; step < 3; ++step) {
      matrix(other, k + step) += weight[step];
      matrix(other, nodes - 1 - k - step) -= weight[step];
    }
  }
}

/// right - matrix * solution in longer arithmetic: one step of refinement takes the factorisation's rounding out, so that a
/// mirrored section gives mirrored pressures (a cusp's tail had 5e-12 without).
Eigen::MatrixXd left_over(const Eigen::MatrixXd& matrix, const Eigen::MatrixXd& solution, const Eigen::MatrixXd& right) {
  Eigen::MatrixXd out(right.rows(), right.cols());
  std::vector<long double> sum(static_cast<std::size_t>(right.rows()));
  for (Eigen::Index side = 0; side < right.cols(); ++side) {
    for (Eigen::Index row = 0; row < right.rows(); ++row) sum[static_cast<std::size_t>(row)] = right(row, side);
    for (Eigen::Index column = 0; column < matrix.cols(); ++column) {
      const long double by = solution(column, side);
      for (Eigen::Index row = 0; row < right.rows(); ++row) sum[static_cast<std::size_t>(row)] -= by * matrix(row, column);
    }
    for (Eigen::Index row = 0; row < right.rows(); ++row)
      out(row, side) = static_cast<double>(sum[static_cast<std::size_t>(row)]);
  }
  return out;
}

struct Integrals {
  double normal = 0, axial = 0, moment = 0;
};

/// Force of the pressures on one straight piece, speed linear along it: Simpson's rule is exact.
void add_piece(Integrals& sum, const Vec& a, const Vec& b, double va, double vb) {
  const Vec middle = (a + b) / 2;
  const double vm = (va + vb) / 2;
  const Vec inward(-(b[1] - a[1]), b[0] - a[0]);  // times the length; the outline runs anticlockwise
  const auto add = [&](const Vec& at, double v, double weight) {
    const Vec force = (1 - v * v) * weight * inward;
    sum.axial += force[0];
    sum.normal += force[1];
    sum.moment += cross(at, force);
  };
  add(a, va, 1.0 / 6);
  add(middle, vm, 4.0 / 6);
  add(b, vb, 1.0 / 6);
}

}  // namespace

std::optional<PanelFlow> PanelFlow::solve(std::vector<Point> nodes, Frame frame) {
  const auto shape = shape_of(nodes, frame.chord);
  if (!shape) return std::nullopt;
  const auto count = static_cast<Eigen::Index>(nodes.size());
  Eigen::MatrixXd across = Eigen::MatrixXd::Zero(count, count);  // transposed: a row's numbers stand together
  Eigen::MatrixXd right = Eigen::MatrixXd::Zero(count, 2);
  Influence influence(*shape);
  for (std::size_t i = 0; i < shape->length.size(); ++i) {
    influence.add_row(i, across.col(static_cast<Eigen::Index>(i)).array());
    right.row(static_cast<Eigen::Index>(i)) = -left_of(shape->along[i]).transpose();
  }
  Eigen::MatrixXd matrix = across.transpose();
  settle_sharp_edge(*shape, matrix, right);
  matrix(count - 1, 0) = matrix(count - 1, count - 1) = 1;  // Kutta
  if (!matrix.allFinite()) return std::nullopt;
  const Eigen::PartialPivLU<Eigen::MatrixXd> factors(matrix);
  if (!(factors.rcond() > 1e-13)) return std::nullopt;
  Eigen::MatrixXd solution = factors.solve(right);
  solution += factors.solve(left_over(matrix, solution, right));
  if (!solution.allFinite()) return std::nullopt;
  PanelFlow out;
  out.nodes_ = std::move(nodes);
  out.frame_ = frame;
  out.base_vorticity_ = shape->blunt() ? shape->bisector.dot(shape->base_along) / 2 * shape->gap : 0;
  out.along_.assign(solution.col(0).data(), solution.col(0).data() + count);
  out.across_.assign(solution.col(1).data(), solution.col(1).data() + count);
  return out;
}

std::vector<double> PanelFlow::speeds(double degrees) const {
  const double c = std::cos(radians(degrees));
  const double s = std::sin(radians(degrees));
  std::vector<double> out(nodes_.size());
  for (std::size_t k = 0; k < out.size(); ++k) out[k] = c * along_[k] + s * across_[k];
  return out;
}

std::vector<double> PanelFlow::pressures(double degrees) const {
  auto out = speeds(degrees);
  for (double& v : out) v = 1 - v * v;
  return out;
}

double PanelFlow::circulation_lift(const std::vector<double>& speeds) const {
  double sum = base_vorticity_ * (speeds.front() - speeds.back());
  for (std::size_t k = 0; k + 1 < nodes_.size(); ++k) {
    const double dx = nodes_[k + 1].x() - nodes_[k].x();
    const double dy = nodes_[k + 1].y() - nodes_[k].y();
    sum += (speeds[k] + speeds[k + 1]) / 2 * std::hypot(dx, dy) / frame_.chord;
  }
  return 2 * sum;
}

double PanelFlow::zero_lift_degrees() const {
  return -std::atan2(circulation_lift(along_), circulation_lift(across_)) * 180 / pi;
}

double PanelFlow::lift_slope() const { return std::hypot(circulation_lift(along_), circulation_lift(across_)); }

namespace {

/// The greatest mean of -Cp over a stretch of surface, ending between nodes; nodes in chords, and the speeds there.
struct Stretch {
  double mean = 0, at = 0;
};
Stretch worst_stretch(const std::vector<Vec>& node, const std::vector<double>& v, double stretch) {
  const std::size_t count = node.size();
  std::vector<double> arc(count, 0), sum(count, 0);
  for (std::size_t k = 1; k < count; ++k) {
    const double length = (node[k] - node[k - 1]).norm();
    arc[k] = arc[k - 1] + length;
    sum[k] = sum[k - 1] + length * ((v[k] * v[k] + v[k] * v[k - 1] + v[k - 1] * v[k - 1]) / 3 - 1);
  }
  const auto until = [&](std::size_t& k, double s) {  // the sum at arc s, k the panel's end, moving on only
    while (k + 1 < count && arc[k] < s) ++k;
    const double part = s - arc[k - 1];
    const double ahead = v[k - 1] + (v[k] - v[k - 1]) * part / (arc[k] - arc[k - 1]);
    return sum[k - 1] + part * ((v[k - 1] * v[k - 1] + v[k - 1] * ahead + ahead * ahead) / 3 - 1);
  };
  Stretch out{-1e300, 0};
  std::size_t low = 1, high = 1;
  for (std::size_t k = 0; k < count; ++k) {
    const double from = arc[k] - stretch / 2;
    if (from < 0 || arc[k] + stretch / 2 > arc.back()) continue;
    const double before = until(low, from);
    const double mean = (until(high, arc[k] + stretch / 2) - before) / stretch;
    if (mean > out.mean) out = {mean, node[k][0]};
  }
  return out;
}

}  // namespace

AtAngle PanelFlow::at(double degrees) const {
  AtAngle out;
  out.degrees = degrees;
  const auto v = speeds(degrees);
  std::vector<Vec> node;
  node.reserve(nodes_.size());
  for (const Point& p : nodes_) {
    node.emplace_back((p.x() - frame_.leading_edge_x) / frame_.chord, p.y() / frame_.chord);
  }
  Integrals sum;
  for (std::size_t k = 0; k + 1 < node.size(); ++k) add_piece(sum, node[k], node[k + 1], v[k], v[k + 1]);
  add_piece(sum, node.back(), node.front(), std::abs(v.back()), std::abs(v.front()));
  out.lift = circulation_lift(v);
  out.normal = sum.normal;
  out.axial = sum.axial;
  out.moment = sum.moment;
  if (std::abs(out.normal) >= 0.01) out.centre_of_pressure = out.moment / out.normal;
  out.lowest_pressure = 1;
  for (std::size_t k = 0; k < v.size(); ++k) {
    if (1 - v[k] * v[k] >= out.lowest_pressure) continue;
    out.lowest_pressure = 1 - v[k] * v[k];
    out.lowest_at = node[k][0];
  }
  const Stretch worst = worst_stretch(node, v, suction_stretch);
  out.suction = worst.mean;
  out.suction_at = worst.at;
  return out;
}

}  // namespace fairblade::flow
