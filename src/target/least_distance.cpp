#include "target/least_distance.hpp"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <vector>

namespace fairblade::target {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// The columns that are in use, and the least squares of f on them.
VectorXd solve_on(const MatrixXd& E, const VectorXd& f, const std::vector<Index>& used) {
  MatrixXd columns(E.rows(), static_cast<Index>(used.size()));
  for (std::size_t k = 0; k < used.size(); ++k) columns.col(static_cast<Index>(k)) = E.col(used[k]);
  return columns.colPivHouseholderQr().solve(f);
}

// Steps from `now` towards `wanted` until the first component comes to nothing, and lets that one go.
void step_and_drop(std::vector<Index>& used, VectorXd& now, const VectorXd& wanted) {
  double share = 1;
  for (Index k = 0; k < now.size(); ++k) {
    if (wanted[k] <= 0) share = std::min(share, now[k] / std::max(now[k] - wanted[k], 1e-300));
  }
  now += share * (wanted - now);
  std::vector<Index> kept;
  std::vector<double> values;
  for (Index k = 0; k < now.size(); ++k) {
    if (now[k] <= 1e-15 && wanted[k] <= 0) continue;
    kept.push_back(used[static_cast<std::size_t>(k)]);
    values.push_back(now[k]);
  }
  used = kept;
  now = Eigen::Map<const VectorXd>(values.data(), static_cast<Index>(values.size()));
}

// f - E u for the least |f - E u| with u >= 0. Columns of unit length.
VectorXd residual_of_nonnegative(const MatrixXd& E, const VectorXd& f) {
  constexpr double settled = 1e-14;
  std::vector<Index> used;
  VectorXd now(0);
  VectorXd left = f;
  std::vector<char> barred(static_cast<std::size_t>(E.cols()), 0);
  for (Index round = 0; round < 10 * E.cols() + 100; ++round) {
    const VectorXd gain = E.transpose() * left;
    Index next = -1;
    for (Index k = 0; k < gain.size(); ++k) {
      if (!barred[static_cast<std::size_t>(k)] && gain[k] > settled && (next < 0 || gain[k] > gain[next])) next = k;
    }
    if (next < 0) break;
    auto trial = used;
    trial.push_back(next);
    VectorXd value(now.size() + 1);
    value << now, 0.0;
    VectorXd wanted = solve_on(E, f, trial);
    barred[static_cast<std::size_t>(next)] = 1;
    if (!wanted.allFinite() || wanted[wanted.size() - 1] <= 0) continue;  // rounding: it cannot help
    while (wanted.size() > 0 && wanted.minCoeff() <= 0) {
      step_and_drop(trial, value, wanted);
      wanted = trial.empty() ? VectorXd(0) : solve_on(E, f, trial);
    }
    VectorXd after = f;
    for (std::size_t k = 0; k < trial.size(); ++k) after -= wanted[static_cast<Index>(k)] * E.col(trial[k]);
    if (!(after.squaredNorm() <= left.squaredNorm() * (1 + 1e-15))) continue;  // farther: only rounding is left
    used = trial;
    now = wanted;
    left = after;
    std::fill(barred.begin(), barred.end(), 0);
    for (const Index k : used) barred[static_cast<std::size_t>(k)] = 1;
  }
  return left;
}

}  // namespace

VectorXd least_distance(const MatrixXd& G, const VectorXd& h) {
  const double greatest = h.size() > 0 ? h.maxCoeff() : 0;
  if (greatest <= 0) return VectorXd::Zero(G.cols());
  MatrixXd E(G.cols() + 1, G.rows());
  E.topRows(G.cols()) = G.transpose();
  E.bottomRows(1) = h.transpose() / greatest;
  E.colwise().normalize();
  const VectorXd left = residual_of_nonnegative(E, VectorXd::Unit(G.cols() + 1, G.cols()));
  // The book's r is -left, and its z[j] = -r[j] / r[last].
  return -greatest * left.head(G.cols()) / left[G.cols()];
}

}  // namespace fairblade::target
