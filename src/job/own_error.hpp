// How far one reading strays, told by places that were read more than once. Verbs: repeats_agree_within,
// repeats_in, own_error. mm.
#pragma once
#include <cmath>

#include "job/job.hpp"

namespace fairblade::job {

constexpr double same_place = 1e-6;           ///< mm between two x: one place, written twice
constexpr double reading_errors_outside = 3;  ///< how far x may lie outside the chord, in reading errors, before it is a slip
constexpr double disagree_beyond = 4.5;       ///< standard deviations of two things that should be one: by chance, one in 150 000
/// Repeats of one place that differ by more are a slip, not scatter; `sigma` of one reading.
inline double repeats_agree_within(double sigma) { return 6 * std::sqrt(2.0) * sigma; }

/// Readings beyond the first at one place, and the sum of squares about their places' means, mm².
struct Repeats {
  int more = 0;
  double square = 0;
};

/// Repeats of one station whose readings are sorted by x. Places whose readings differ by more than 6 sqrt(2) of `told`
/// are left out: a slip, and named as one.
Repeats repeats_in(const Station& station, double told);

/// One standard deviation from both: what was told counts as much as six repeats where the owner told it, as three where
/// it is a default. A few repeats say little, and rounded ones may say nothing.
double own_error(double told, bool told_by_owner, const Repeats& repeats);

}  // namespace fairblade::job
