#include "flow/influence.hpp"

#include <cmath>
#include <cstring>
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
      node_x_(Row::Zero(count_ + count_ % 2 + 1)),
      node_y_(node_x_),
      along_x_(Row::Zero(count_ + count_ % 2)),
      along_y_(along_x_),
      length_(Row::Ones(count_ + count_ % 2)),
      row_(node_x_) {
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

namespace {

// Two numbers worked on at once: of two panels that follow each other. (Left to the compiler, or written as expressions of
// arrays, a row took three times as long.)
using Two = double __attribute__((vector_size(16)));
Two two_at(const Eigen::ArrayXd& row, Eigen::Index j) {
  Two out;
  std::memcpy(&out, row.data() + j, sizeof out);
  return out;
}
void put_at(Eigen::ArrayXd& row, Eigen::Index j, Two two) { std::memcpy(row.data() + j, &two, sizeof two); }

}  // namespace

/// Two panels as a point sees them.
struct Influence::Pair {
  Two rise, run;      // of the angle that each fills
  Two first, second;  // squares of the point's distance from both ends
  Two angle, lg;
};

/// Do the series serve both?
inline bool Influence::far(const Pair& pair) {
  const Two run = small * pair.run, apart = pair.first - pair.second, both = small * (pair.first + pair.second);
  const auto out = (pair.rise < run) & (-pair.rise < run) & (apart < both) & (-apart < both);
  return out[0] != 0 && out[1] != 0;
}

void Influence::add_row(std::size_t i, Eigen::Ref<Eigen::ArrayXd> out) {
  const Vec& point = shape_.middle[i];
  const Vec square = left_of(shape_.along[i]);
  double carried = 0;  // to the next panel's first node
  for (Eigen::Index j = 0; j < count_; j += 2) {
    const Two from_x = point[0] - two_at(node_x_, j), from_y = point[1] - two_at(node_y_, j);
    const Two next_x = point[0] - two_at(node_x_, j + 1), next_y = point[1] - two_at(node_y_, j + 1);
    const Two along_x = two_at(along_x_, j), along_y = two_at(along_y_, j), length = two_at(length_, j);
    const Two x = from_x * along_x + from_y * along_y;
    const Two y = along_x * from_y - along_y * from_x;
    Pair pair{y * length, y * y + x * (x - length), from_x * from_x + from_y * from_y, next_x * next_x + next_y * next_y, {}, {}};
    const Two ratio = pair.rise / pair.run, share = (pair.first - pair.second) / (pair.first + pair.second);
    pair.angle = angle_series(ratio, ratio * ratio);
    pair.lg = half_log_series(share, share * share);
    if (!far(pair)) settle_near(pair);
    // Of the panel's own angle all but nothing counts: none of it runs square to the panel, and y is rounding.
    const Two on = along_x * square[0] + along_y * square[1], left = along_x * square[1] - along_y * square[0];
    const Two whole = pair.angle * on - pair.lg * left;
    // The part that grows from the first end to the second: s/length, with s = x - a integrated over a.
    const Two growing = (x * whole - (y * pair.lg * on - (length - y * pair.angle) * left)) / length;
    put_at(row_, j, whole - growing + Two{carried, growing[0]});
    carried = growing[1];
  }
  row_[row_.size() - 1] = carried;
  out += row_.head(count_ + 1) * (1 / (2 * pi));
  if (shape_.blunt()) add_base(point, square, out);
}

/// Where the series would not do, by the functions themselves.
void Influence::settle_near(Pair& pair) {
  for (int k = 0; k < 2; ++k) {
    if (!(std::abs(pair.rise[k]) < small * pair.run[k])) pair.angle[k] = std::atan2(pair.rise[k], pair.run[k]);
    if (!(std::abs(pair.first[k] - pair.second[k]) < small * (pair.first[k] + pair.second[k])))
      pair.lg[k] = std::log(pair.first[k] / pair.second[k]) / 2;
  }
}

/// The water leaves at half of (first - last): what of it crosses the base is source, what runs along it vorticity.
void Influence::add_base(const Vec& point, const Vec& square, Eigen::Ref<Eigen::ArrayXd> out) const {
  const Vec from = point - shape_.node[0];
  const double x = from.dot(shape_.base_along);
  const double y = cross(shape_.base_along, from);
  const double angle = angle_of(y * shape_.gap, y * y + x * (x - shape_.gap));
  const double lg = half_log_of(from.squaredNorm(), (point - shape_.node.back()).squaredNorm());
  const double on = shape_.base_along.dot(square), left = left_of(shape_.base_along).dot(square);
  const double jet = std::abs(cross(shape_.bisector, shape_.base_along)) / 2 * (lg * on + angle * left) +
                     shape_.bisector.dot(shape_.base_along) / 2 * (angle * on - lg * left);
  out[0] += jet / (2 * pi);
  out[count_] -= jet / (2 * pi);
}

}  // namespace fairblade::flow
