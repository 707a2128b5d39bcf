#include "target/span_line.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cassert>
#include <cmath>

#include "target/least_distance.hpp"

namespace fairblade::target {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

struct Fit {
  MatrixXd powers;    // of s, a row per station
  MatrixXd triangle;  // R of the weighted rows' QR
  VectorXd right;     // first rows of Q'y
  VectorXd coefficients;
  std::vector<double> hat;
};

// Weights with the greatest at 1, so that no tolerance depends on their unit.
std::vector<double> scaled_weights(const SpanQuantity& quantity) {
  std::vector<double> out = quantity.weight;
  if (out.empty()) out.assign(quantity.down.size(), 1.0);
  const double greatest = *std::max_element(out.begin(), out.end());
  if (!(greatest > 0)) return std::vector<double>(out.size(), 1.0);  // nothing was measured: all count alike
  for (double& w : out) w /= greatest;
  return out;
}

int order_of(job::Spanwise kind, const std::vector<double>& weight) {
  const auto measured = std::count_if(weight.begin(), weight.end(), [](double w) { return w > 0; });
  const int most = kind == job::Spanwise::straight ? 1 : 2;
  return std::min(most, static_cast<int>(measured) - 1);
}

Fit least_squares(const std::vector<double>& s, const std::vector<double>& value, const std::vector<double>& weight, int order) {
  const auto n = static_cast<Index>(s.size());
  Fit fit{MatrixXd(n, order + 1), {}, {}, {}, std::vector<double>(s.size())};
  VectorXd root(n), y(n);
  for (Index k = 0; k < n; ++k) {
    const auto at = static_cast<std::size_t>(k);
    root[k] = std::sqrt(weight[at]);
    y[k] = value[at];
    for (int j = 0; j <= order; ++j) fit.powers(k, j) = std::pow(s[at], j);
  }
  const Eigen::HouseholderQR<MatrixXd> qr(root.asDiagonal() * fit.powers);
  fit.triangle = qr.matrixQR().topRows(order + 1).triangularView<Eigen::Upper>();
  fit.right = (qr.householderQ().transpose() * root.cwiseProduct(y)).head(order + 1);
  fit.coefficients = fit.triangle.triangularView<Eigen::Upper>().solve(fit.right);
  for (Index k = 0; k < n; ++k) {
    const VectorXd row = root[k] * fit.powers.row(k).transpose();
    fit.hat[static_cast<std::size_t>(k)] = fit.triangle.transpose().triangularView<Eigen::Lower>().solve(row).squaredNorm();
  }
  return fit;
}

// With z = R c - Q'y the misfit is |z|² and a constant: the least z with G z >= h, G = powers R⁻¹, h = bound - G Q'y.
VectorXd held_up(const Fit& fit, const std::vector<double>& bound) {
  std::vector<Index> bounded;
  for (std::size_t k = 0; k < bound.size(); ++k) {
    if (std::isfinite(bound[k])) bounded.push_back(static_cast<Index>(k));
  }
  MatrixXd G(static_cast<Index>(bounded.size()), fit.powers.cols());
  VectorXd h(G.rows());
  for (Index k = 0; k < G.rows(); ++k) {
    const VectorXd row = fit.powers.row(bounded[static_cast<std::size_t>(k)]).transpose();
    G.row(k) = fit.triangle.transpose().triangularView<Eigen::Lower>().solve(row).transpose();
    h[k] = bound[static_cast<std::size_t>(bounded[static_cast<std::size_t>(k)])] - row.dot(fit.coefficients);
  }
  if (G.rows() == 0 || h.maxCoeff() <= 0) return fit.coefficients;
  const VectorXd z = least_distance(G, h);
  VectorXd out = fit.triangle.triangularView<Eigen::Upper>().solve(fit.right + z);
  double short_by = 0;  // rounding only
  for (const Index k : bounded) {
    short_by = std::max(short_by, bound[static_cast<std::size_t>(k)] - fit.powers.row(k).dot(out));
  }
  out[0] += short_by;
  return out;
}

void judge(const Fit& fit, const SpanQuantity& quantity, const std::vector<double>& weight, SpanLine& out) {
  const auto measured = std::count_if(weight.begin(), weight.end(), [](double w) { return w > 0; });
  out.hat = fit.hat;
  out.deleted.assign(weight.size(), 0.0);
  out.deleted_known = measured >= 4;
  double square = 0, sum = 0;
  for (std::size_t k = 0; k < weight.size(); ++k) {
    const double r = quantity.value[k] - fit.powers.row(static_cast<Index>(k)).dot(fit.coefficients);
    square += weight[k] * r * r;
    sum += weight[k];
    if (out.deleted_known) out.deleted[k] = r / std::max(1 - fit.hat[k], 1e-9);
  }
  const auto spare = static_cast<double>(measured - fit.powers.cols());
  if (spare > 0) out.scatter = std::sqrt(square / spare * static_cast<double>(measured) / sum);
}

}  // namespace

double SpanLine::at(double height) const {
  if (!between_stations) {
    const double s = (height - middle) / half_span;
    return coefficients[0] + s * (coefficients[1] + s * coefficients[2]);
  }
  if (height <= down.front()) return faired.front();
  if (height >= down.back()) return faired.back();
  const auto above = std::upper_bound(down.begin(), down.end(), height);
  const auto k = static_cast<std::size_t>(above - down.begin());
  const double w = (height - down[k - 1]) / (down[k] - down[k - 1]);
  return faired[k - 1] + w * (faired[k] - faired[k - 1]);
}

SpanLine fair_along(const SpanQuantity& quantity, job::Spanwise kind) {
  const std::size_t n = quantity.down.size();
  assert(n > 0 && quantity.value.size() == n);
  assert(quantity.weight.empty() || quantity.weight.size() == n);
  assert(quantity.bound.empty() || quantity.bound.size() == n);
  const std::vector<double> weight = scaled_weights(quantity);
  SpanLine out;
  out.down = quantity.down;
  out.middle = (out.down.front() + out.down.back()) / 2;
  out.half_span = n > 1 ? (out.down.back() - out.down.front()) / 2 : 1.0;
  assert(out.half_span > 0);
  std::vector<double> s;
  for (const double height : out.down) s.push_back((height - out.middle) / out.half_span);
  const Fit fit = least_squares(s, quantity.value, weight, order_of(kind, weight));
  judge(fit, quantity, weight, out);

  out.between_stations = kind == job::Spanwise::as_measured;
  const VectorXd line = out.between_stations || quantity.bound.empty() ? fit.coefficients : held_up(fit, quantity.bound);
  std::copy(line.begin(), line.end(), out.coefficients.begin());
  for (std::size_t k = 0; k < n; ++k) {
    double value = out.between_stations ? quantity.value[k] : fit.powers.row(static_cast<Index>(k)).dot(line);
    if (!quantity.bound.empty() && std::isfinite(quantity.bound[k])) {
      const double close = 1e-9 * std::max(std::abs(quantity.bound[k]), std::abs(quantity.value[k]));
      const double own = out.between_stations ? value : fit.powers.row(static_cast<Index>(k)).dot(fit.coefficients);
      value = std::max(value, quantity.bound[k]);
      const bool lifted = !out.between_stations && (line - fit.coefficients).cwiseAbs().maxCoeff() > 0;
      if (value - quantity.bound[k] <= close && (own < value || lifted)) out.binding.push_back(k);
    }
    out.faired.push_back(value);
    out.pull.push_back(value - quantity.value[k]);
  }
  return out;
}

}  // namespace fairblade::target
