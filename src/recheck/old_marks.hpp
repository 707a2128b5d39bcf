// Private to the recheck room. Product: OldMarks, whether a round's x seems to be counted still from where the leading
// edge was before the work. Verbs: weigh, place by place; refusal. mm.
//
// The marks on a blade whose nose was built out stay where they were. Read by them, and taken to count from the new
// edge, good work shows as a hump on both sides of the nose. The readings can tell: every one is laid against the target
// counted from either edge, where the two differ by more than a reading's error. The round is refused where the old edge
// leaves less than a quarter of the sum of squares that the new one leaves, and the new one leaves more than chance
// gives: n + 5 sqrt(2n) of the errors squared. The same sums about their means do it too, for work that is low or high by
// an even layer. A reading of nothing at x = 0 is the edge itself, whichever it is, and tells nothing. Measured
// (tests/recheck): of 200 noisy rounds (0.3 mm) counted from the new edge of a nose built out by 4 mm none is refused, of
// 200 counted from the old one all are; the same with faces 1.5 mm low or high all over.
#pragma once
#include <optional>

#include "job/round.hpp"
#include "recheck/frozen.hpp"
#include "recheck/nearest.hpp"

namespace fairblade::recheck {

class OldMarks {
 public:
  OldMarks(std::string file, LengthUnit units, double sigma) : file_(std::move(file)), units_(units), sigma_(sigma) {}

  /// A station whose rows do not say where the edge is.
  void weigh(const job::RoundStation& station, const Surface& surface);
  /// Nothing where x counts from the new edge, as far as these readings tell.
  std::optional<Fault> refusal() const;

 private:
  void weigh(const fill::StageSection& section, const FaceLine& face, double x, double half_breadth);
  /// Depths, all counted from one of the edges.
  struct Left {
    std::size_t n = 0;
    double sum = 0, squares = 0;
    void add(double depth) { ++n, sum += depth, squares += depth * depth; }
    double of(bool shape) const;  ///< their sum of squares; of the shape: about their mean
  };
  bool seems_old(bool shape) const;

  std::string file_;
  LengthUnit units_;
  double sigma_;                 ///< how far one reading strays
  Left new_, old_;               ///< of the readings that can tell
  double least_ = 0, most_ = 0;  ///< how far the new edges stand ahead of the old ones
  int line_ = 0;                 ///< of the first station that was weighed
};

}  // namespace fairblade::recheck
