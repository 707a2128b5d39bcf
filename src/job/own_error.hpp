// How far one reading strays, told by places that were read more than once. Verbs: repeats_in, own_error. mm.
#pragma once
#include "job/job.hpp"

namespace fairblade::job {

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
