#include "flow/panel.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "flow/influence.hpp"

namespace fairblade::flow {
namespace {

using std::numbers::pi;

constexpr double radians(double degrees) { return degrees * pi / 180; }

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

/// Weights by which three nodes' values from node k on make nothing where they are in line.
Eigen::Vector3d in_line(const Shape& shape, Eigen::Index k) {
  const double share = shape.length[static_cast<std::size_t>(k)] / shape.length[static_cast<std::size_t>(k) + 1];
  return {1, -(1 + share), share};
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
    const Eigen::Vector3d weight = in_line(shape, k);
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
  const Eigen::Index rows = right.rows();
  for (Eigen::Index side = 0; side < right.cols(); ++side) {
    // Three rows at a time: their sums stay in the processor, as a column of long numbers would not.
    Eigen::Index row = 0;
    for (; row + 2 < rows; row += 3) {
      long double a = right(row, side), b = right(row + 1, side), c = right(row + 2, side);
      for (Eigen::Index column = 0; column < matrix.cols(); ++column) {
        const long double by = solution(column, side);
        a -= by * matrix(row, column);
        b -= by * matrix(row + 1, column);
        c -= by * matrix(row + 2, column);
      }
      out(row, side) = static_cast<double>(a);
      out(row + 1, side) = static_cast<double>(b);
      out(row + 2, side) = static_cast<double>(c);
    }
    for (; row < rows; ++row) {
      long double a = right(row, side);
      for (Eigen::Index column = 0; column < matrix.cols(); ++column)
        a -= static_cast<long double>(solution(column, side)) * matrix(row, column);
      out(row, side) = static_cast<double>(a);
    }
  }
  return out;
}

/// By a factorisation in short numbers, at half the cost, refined until nothing more comes of it (Wilkinson 1963; Higham 2002,
/// chapter 12: as good as one in long numbers wherever each round takes most of what is left). Nothing where it does not.
std::optional<Eigen::MatrixXd> refined(const Eigen::MatrixXd& matrix, const Eigen::MatrixXd& right) {
  constexpr double better = 0.05, settled = 1e-15;  // of the solution's own size
  const Eigen::PartialPivLU<Eigen::MatrixXf> factors(matrix.cast<float>());
  Eigen::MatrixXd solution = factors.solve(right.cast<float>()).cast<double>();
  const double size = solution.cwiseAbs().maxCoeff();
  double last = size;
  while (true) {
    Eigen::MatrixXd left = right;
    for (Eigen::Index side = 0; side < left.cols(); ++side) left.col(side).noalias() -= matrix * solution.col(side);
    const Eigen::MatrixXd more = factors.solve(left.cast<float>()).cast<double>();
    const double step = more.cwiseAbs().maxCoeff(), share = step / last;
    if (!(share < better)) return std::nullopt;
    solution += more;
    if (step * share * share < settled * size) break;  // what the last round below leaves
    last = step;
  }
  solution += factors.solve(left_over(matrix, solution, right).cast<float>()).cast<double>();
  return solution;
}

/// Nothing where the matrix is all but singular.
std::optional<Eigen::MatrixXd> solved(const Eigen::MatrixXd& matrix, const Eigen::MatrixXd& right) {
  if (!matrix.allFinite()) return std::nullopt;
  if (auto quick = refined(matrix, right)) return quick;
  const Eigen::PartialPivLU<Eigen::MatrixXd> factors(matrix);
  if (!(factors.rcond() > 1e-13)) return std::nullopt;
  Eigen::MatrixXd solution = factors.solve(right);
  solution += factors.solve(left_over(matrix, solution, right));
  if (!solution.allFinite()) return std::nullopt;
  return solution;
}

/// Vorticity at the nodes, a column each in a stream along x and in one along y.
std::optional<Eigen::MatrixXd> vorticity(const Shape& shape, Eigen::Index nodes) {
  Eigen::MatrixXd across = Eigen::MatrixXd::Zero(nodes, nodes);  // transposed: a row's numbers stand together
  Eigen::MatrixXd right = Eigen::MatrixXd::Zero(nodes, 2);
  Influence influence(shape);
  for (std::size_t i = 0; i < shape.length.size(); ++i) {
    influence.add_row(i, across.col(static_cast<Eigen::Index>(i)).array());
    right.row(static_cast<Eigen::Index>(i)) = -left_of(shape.along[i]).transpose();
  }
  Eigen::MatrixXd matrix = across.transpose();
  settle_sharp_edge(shape, matrix, right);
  matrix(nodes - 1, 0) = matrix(nodes - 1, nodes - 1) = 1;  // Kutta
  return solved(matrix, right);
}

bool mirrored(const std::vector<Point>& nodes) {
  if (nodes.size() % 2 == 0) return false;
  for (std::size_t k = 0; k <= nodes.size() / 2; ++k) {
    const Point &a = nodes[k], &b = nodes[nodes.size() - 1 - k];
    if (a.x() != b.x() || a.y() != -b.y()) return false;
  }
  return true;
}

/// The same where the starboard face mirrors the port one: a quarter of the work. What mirrored vorticity sends through the
/// mirrored panel is as much the other way, so that the differences of mirrored nodes, which alone a stream along x makes, and
/// their sums, which alone one along y makes, each have a system of half the size.
std::optional<Eigen::MatrixXd> mirrored_vorticity(const Shape& shape, Eigen::Index nodes) {
  const Eigen::Index half = nodes / 2;  // the middle node has no other
  Eigen::MatrixXd sums = Eigen::MatrixXd::Zero(half + 1, half + 1), differences = Eigen::MatrixXd::Zero(half, half);
  Eigen::MatrixXd of_sums = Eigen::MatrixXd::Zero(half + 1, 1), of_differences = Eigen::MatrixXd::Zero(half, 1);
  Influence influence(shape);
  Eigen::ArrayXd row(nodes);
  for (Eigen::Index i = 0; i < half; ++i) {
    row.setZero();
    influence.add_row(static_cast<std::size_t>(i), row);
    sums.col(i).head(half) = row.head(half) + row.tail(half).reverse();  // transposed as above
    sums(half, i) = row[half];
    differences.col(i) = row.head(half) - row.tail(half).reverse();
    const Vec square = left_of(shape.along[static_cast<std::size_t>(i)]);
    of_differences(i) = -2 * square[0];
    of_sums(i) = -2 * square[1];
  }
  sums.transposeInPlace();
  differences.transposeInPlace();
  sums(half, 0) = 1;  // Kutta
  const auto pairs = static_cast<Eigen::Index>(thin_pairs(shape));
  for (Eigen::Index k = 0; k < pairs; ++k) {  // as settle_sharp_edge has it
    differences.row(k).setZero();
    differences.row(k).segment(k, 3) = in_line(shape, k).transpose();
    of_differences(k) = 0;
  }
  const auto by_y = solved(sums, of_sums), by_x = solved(differences, of_differences);
  if (!by_x || !by_y) return std::nullopt;
  Eigen::MatrixXd out(nodes, 2);
  out.col(0) << *by_x / 2, 0, -by_x->reverse() / 2;
  out.col(1) << by_y->topRows(half) / 2, (*by_y)(half) / 2, by_y->topRows(half).reverse() / 2;
  return out;
}

struct Integrals {
  double normal = 0, axial = 0, moment = 0;
};

/// Force of the pressures on one straight piece, speed linear along it: Simpson's rule is exact.
void add_piece(Integrals& sum, const Point& from, const Point& to, double va, double vb) {
  const Vec a(from.x(), from.y()), b(to.x(), to.y());
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
  const auto solution = mirrored(nodes) ? mirrored_vorticity(*shape, count) : vorticity(*shape, count);
  if (!solution) return std::nullopt;
  PanelFlow out;
  for (const Point& p : nodes) out.in_chords_.emplace_back((p.x() - frame.leading_edge_x) / frame.chord, p.y() / frame.chord);
  // Not the shape's lengths: those are of nodes less the first, so that mirrored panels may differ in their last digits.
  for (std::size_t k = 0; k + 1 < nodes.size(); ++k)
    out.length_.push_back(std::hypot(nodes[k + 1].x() - nodes[k].x(), nodes[k + 1].y() - nodes[k].y()) / frame.chord);
  out.nodes_ = std::move(nodes);
  out.frame_ = frame;
  out.base_vorticity_ = shape->blunt() ? shape->bisector.dot(shape->base_along) / 2 * shape->gap : 0;
  out.along_.assign(solution->col(0).data(), solution->col(0).data() + count);
  out.across_.assign(solution->col(1).data(), solution->col(1).data() + count);
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
  for (std::size_t k = 0; k < length_.size(); ++k) sum += (speeds[k] + speeds[k + 1]) / 2 * length_[k];
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
Stretch worst_stretch(const std::vector<Point>& node, const std::vector<double>& panel, const std::vector<double>& v,
                      double stretch) {
  const std::size_t count = node.size();
  std::vector<double> arc(count, 0), sum(count, 0);
  for (std::size_t k = 1; k < count; ++k) {
    const double length = panel[k - 1];
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
    if (mean > out.mean) out = {mean, node[k].x()};
  }
  return out;
}

}  // namespace

double PanelFlow::suction(double degrees) const {
  return worst_stretch(in_chords_, length_, speeds(degrees), suction_stretch).mean;
}

AtAngle PanelFlow::at(double degrees) const {
  AtAngle out;
  out.degrees = degrees;
  const auto v = speeds(degrees);
  const std::vector<Point>& node = in_chords_;
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
    out.lowest_at = node[k].x();
  }
  const Stretch worst = worst_stretch(node, length_, v, suction_stretch);
  out.suction = worst.mean;
  out.suction_at = worst.at;
  return out;
}

}  // namespace fairblade::flow
