// Product: how thick the coats stand on the blade when they are dry. Verbs: build_of, over_filler, coats_over,
// CoatsOver::to_shape. mm a side.
#pragma once
#include "job/job.hpp"

namespace fairblade::job {

constexpr double no_filler = 0.01;  ///< mm: no filler is spread so thin

/// Of one coat, and of all that lie on the filler.
double build_of(const Coat& coat);
bool over_filler(const Coat& coat);
double build_of(const Job& job);

/// How much deeper than the finished surface the blade is shaped under its coats.
struct CoatsOver {
  double over_filler = 0;  ///< of the coats on all of the blade and of those on what is filled
  double over_old = 0;     ///< where nothing is filled: on all, and on old coating or bare places, the thicker of both

  bool any() const { return over_filler > 0 || over_old > 0; }
  /// Is what comes off old surface for their sake printed as anything?
  bool tell_over_old() const { return over_old >= 0.05; }
  /// What is to be added (taken off, where negative) under the coats, of a depth to the finished surface; square to it. `share`:
  /// of the coats that room is made for there.
  double to_shape(double depth, double share = 1) const {
    if (depth > share * over_filler + no_filler) return depth - share * over_filler;
    return depth < share * over_old ? depth - share * over_old : 0;
  }
};
CoatsOver coats_over(const Job& job);

}  // namespace fairblade::job
