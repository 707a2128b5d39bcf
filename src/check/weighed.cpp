#include "check/weighed.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace fairblade::check {
namespace {

constexpr double half_log_turn = 0.9189385332046727;  // of 2 pi

}  // namespace

Expected Weighed::by_others(std::size_t k) const {
  const auto i = static_cast<Eigen::Index>(k);
  const double stiff = inverse_(i, i);
  return {values_[i] - pull_[i] / stiff, 1 / std::sqrt(stiff)};
}

void Weighed::leave_out(std::size_t k) {
  const auto i = static_cast<Eigen::Index>(k);
  const double stiff = inverse_(i, i), pull = pull_[i];
  const Eigen::VectorXd column = inverse_.col(i);
  inverse_.noalias() -= column * (column / stiff).transpose();
  pull_ -= column * (pull / stiff);
  inverse_.col(i).setZero();
  inverse_.row(i).setZero();
  pull_[i] = 0;
  square_ -= pull * pull / stiff;
  log_determinant_ += std::log(stiff);
  --count_;
  known_ = known_ && count_ >= 2;
}

double Weighed::log_likelihood() const {
  return -0.5 * (square_ + log_determinant_) - half_log_turn * static_cast<double>(count_);
}

double Weighed::log_likelihood(const std::vector<Seen>& others) const {
  const Eigen::VectorXd values = values_of(others);
  return -0.5 * (values.dot(inverse_ * values) + log_determinant_) - half_log_turn * static_cast<double>(count_);
}

double Weighed::gained_by(const std::vector<std::pair<std::size_t, double>>& more) const {
  double out = 0;
  for (const auto& [k, d] : more) {
    const auto i = static_cast<Eigen::Index>(k);
    out -= d * pull_[i];
    for (const auto& [l, e] : more) out -= 0.5 * d * e * inverse_(i, static_cast<Eigen::Index>(l));
  }
  return out;
}

Links::Links(const std::vector<Seen>& seen, const Frame& frame) : seen_(seen), frame_(frame) {
  if (pair_up()) return;
  rows_.clear();
  for (std::size_t k = 0; k < seen_.size(); ++k) rows_.push_back({spot_of(seen_[k], frame_), 0, k, k});
}

/// False where a number of one face stands alone, or there is none.
bool Links::pair_up() {
  std::vector<Row> calipers;
  for (std::size_t k = 0; k < seen_.size(); ++k) {
    if (seen_[k].kind == Kind::caliper) {
      calipers.push_back({spot_of(seen_[k], frame_), 2, k, k});
      continue;
    }
    // A row's two faces stand next to each other: see seen_at.
    if (k + 1 == seen_.size()) return false;
    const Seen &one = seen_[k], &next = seen_[k + 1];
    const bool pair = one.row == next.row && one.kind != next.kind && next.kind != Kind::caliper;
    if (!pair) return false;
    const bool port_first = one.kind == Kind::port;
    rows_.push_back({spot_of(one, frame_), std::numbers::sqrt2, port_first ? k : k + 1, port_first ? k + 1 : k});
    ++k;
  }
  pairs_ = rows_.size();
  rows_.insert(rows_.end(), calipers.begin(), calipers.end());
  return pairs_ > 0;
}

Links::Part Links::inverted(std::size_t count, double reach, const Covariance& together) {
  const Eigen::MatrixXd& near = nearness(reach);
  const auto n = static_cast<Eigen::Index>(count);
  const double whole = frame_.chord + frame_.skeg;
  Eigen::MatrixXd covariance(n, n);  // its lower half
  for (Eigen::Index j = 0; j < n; ++j) {
    const Row& b = rows_[static_cast<std::size_t>(j)];
    for (Eigen::Index i = j; i < n; ++i) {
      covariance(i, j) = whole * whole * together(rows_[static_cast<std::size_t>(i)], b, near(i, j));
    }
    covariance(j, j) += frame_.sigma * frame_.sigma;
  }
  const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> solver(covariance);
  Part out;
  if (solver.info() != Eigen::Success) return out;
  out.inverse = solver.solve(Eigen::MatrixXd::Identity(n, n));
  out.log_determinant = 2 * covariance.diagonal().array().log().sum();
  out.known = out.inverse.allFinite() && out.inverse.diagonal().minCoeff() > 0;
  return out;
}

const Eigen::MatrixXd& Links::nearness(double reach) {
  for (const auto& one : near_) {
    if (one.first == reach) return one.second;
  }
  const auto n = static_cast<Eigen::Index>(rows_.size());
  Eigen::MatrixXd out(n, n);
  for (Eigen::Index j = 0; j < n; ++j) {
    for (Eigen::Index i = j; i < n; ++i) {
      out(i, j) = check::nearness(rows_[static_cast<std::size_t>(i)].spot, rows_[static_cast<std::size_t>(j)].spot, reach);
    }
  }
  return near_.emplace_back(reach, std::move(out)).second;
}

const Links::Part& Links::halves(const Smoothness& smooth) {
  for (const auto& one : halves_) {
    if (one.first.shape == smooth.shape && one.first.reach == smooth.reach) return one.second;
  }
  const auto together = [&](const Row& a, const Row& b, double near) {
    return a.half * b.half * halves_together(a.spot, b.spot, near, smooth);
  };
  return halves_.emplace_back(smooth, inverted(rows_.size(), smooth.reach, together)).second;
}

const Links::Part& Links::centres(const Smoothness& smooth) {
  for (const auto& one : centres_) {
    if (one.first.camber == smooth.camber && one.first.reach == smooth.reach) return one.second;
  }
  const auto together = [&](const Row& a, const Row& b, double near) {
    return 2 * centres_together(a.spot, b.spot, near, smooth);
  };
  return centres_.emplace_back(smooth, inverted(pairs_, smooth.reach, together)).second;
}

/// All numbers in one system: as they were read, or turned back from the two.
Links::Part Links::all(const Smoothness& smooth) {
  const auto n = static_cast<Eigen::Index>(seen_.size());
  if (pairs_ == 0) {
    return inverted(rows_.size(), smooth.reach,
                    [&](const Row& a, const Row& b, double near) { return together(a.spot, b.spot, near, smooth); });
  }
  const Part &sums = halves(smooth), &differences = centres(smooth);
  Part out;
  if (!sums.known || !differences.known) return out;
  out.known = true;
  out.log_determinant = sums.log_determinant + differences.log_determinant;
  out.inverse.resize(n, n);
  const auto at = [](std::size_t k) { return static_cast<Eigen::Index>(k); };
  for (std::size_t j = 0; j < rows_.size(); ++j) {
    const Row& b = rows_[j];
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const Row& a = rows_[i];
      const double sum = sums.inverse(at(i), at(j));
      if (i < pairs_ && j < pairs_) {
        const double difference = differences.inverse(at(i), at(j));
        out.inverse(at(a.first), at(b.first)) = out.inverse(at(a.other), at(b.other)) = (sum + difference) / 2;
        out.inverse(at(a.first), at(b.other)) = out.inverse(at(a.other), at(b.first)) = (sum - difference) / 2;
        continue;
      }
      const double share = (i < pairs_) != (j < pairs_) ? sum / std::numbers::sqrt2 : sum;  // a pair with calipers
      out.inverse(at(a.first), at(b.first)) = out.inverse(at(a.other), at(b.first)) = share;
      out.inverse(at(a.first), at(b.other)) = out.inverse(at(a.other), at(b.other)) = share;
    }
  }
  return out;
}

Weighed Links::weighed(const Smoothness& smooth) {
  Weighed out;
  if (seen_.size() < 2) return out;
  Part part = all(smooth);
  if (!part.known) return out;
  out.known_ = true;
  out.count_ = seen_.size();
  out.inverse_ = std::move(part.inverse);
  out.log_determinant_ = part.log_determinant;
  out.values_ = values_of(seen_);
  out.pull_ = out.inverse_ * out.values_;
  out.square_ = out.values_.dot(out.pull_);
  return out;
}

}  // namespace fairblade::check
