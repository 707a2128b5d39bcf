// Private to the check room. Products: Links, a station's numbers as the fair line links them; Weighed, what each of them
// should be by the others under one smoothness. Verbs: weighed (Links), by_others, leave_out, log_likelihood (Weighed). mm.
//
// Each number against all others in closed form (Rasmussen & Williams 2006, eq. 5.12): mean y - [K⁻¹y]/[K⁻¹]ii, variance
// 1/[K⁻¹]ii. With one left out K⁻¹ loses that row's own part, k kᵀ/kii (the inverse of a matrix in blocks), and K's
// determinant is multiplied by kii: no factorisation anew.
#pragma once
#include <Eigen/Core>
#include <cstddef>
#include <functional>
#include <utility>
#include <vector>

#include "check/fair_line.hpp"

namespace fairblade::check {

class Weighed {
 public:
  /// Nothing is known where the numbers are too few or too alike.
  bool known() const { return known_; }
  /// What a number that counts should be by the others that do.
  Expected by_others(std::size_t k) const;
  /// It counts no more.
  void leave_out(std::size_t k);
  /// Natural logarithm of the probability density of those that count, mm.
  double log_likelihood() const;
  /// Of other values read at the same places by the same tools, none left out.
  double log_likelihood(const std::vector<Seen>& others) const;
  /// What it gains where these numbers, by their place in `seen`, were so many mm more; none left out.
  double gained_by(const std::vector<std::pair<std::size_t, double>>& more) const;

 private:
  friend class Links;
  bool known_ = false;
  std::size_t count_ = 0;
  Eigen::MatrixXd inverse_;                  ///< of the covariance of those that count; rows of those left out are zero
  Eigen::VectorXd values_, pull_;            ///< pull = inverse * values
  double square_ = 0, log_determinant_ = 0;  ///< values' * inverse * values; of the covariance
};

/// A station's numbers, to be weighed again and again: what a smoothness shares with others is worked out once.
class Links {
 public:
  Links(const std::vector<Seen>& seen, const Frame& frame);
  const std::vector<Seen>& seen() const { return seen_; }
  const Frame& frame() const { return frame_; }
  Weighed weighed(const Smoothness& smooth);

 private:
  /// A system of its own, inverted.
  struct Part {
    bool known = false;
    Eigen::MatrixXd inverse;
    double log_determinant = 0;
  };
  /// Where port and starboard were read together, (port + starboard)/√2 hangs on half-thicknesses alone and
  /// (port - starboard)/√2 on the centre line alone, each with a reading's own error: two systems of half the size. Calipers
  /// belong to the first.
  struct Row {
    Spot spot;
    double half = 0;                   ///< so many half-thicknesses: √2 of a pair, 2 of calipers
    std::size_t first = 0, other = 0;  ///< of `seen`: port and starboard, or calipers twice
  };
  bool pair_up();
  /// Of the first `count` rows, by the covariance in chords² of each two and their nearness; a reading's own error is added.
  using Covariance = std::function<double(const Row&, const Row&, double)>;
  Part inverted(std::size_t count, double reach, const Covariance& together);
  const Eigen::MatrixXd& nearness(double reach);
  const Part& halves(const Smoothness& smooth);
  const Part& centres(const Smoothness& smooth);
  Part all(const Smoothness& smooth);

  std::vector<Seen> seen_;
  Frame frame_;
  std::vector<Row> rows_;  ///< pairs first; without pairs, or with numbers that have none, one for each number
  std::size_t pairs_ = 0;
  std::vector<std::pair<double, Eigen::MatrixXd>> near_;  ///< of rows, by reach
  std::vector<std::pair<Smoothness, Part>> halves_, centres_;
};

}  // namespace fairblade::check
