// Private to the drawing room. Round numbers for rulers, axes and contours. Verbs: round_step.
#pragma once

namespace fairblade::drawing {

/// The least of 1, 2 and 5 times a power of ten of `unit` that is `least` or more (both above 0).
inline double round_step(double least, double unit = 1) {
  double ten = unit;
  while (ten > least) ten /= 10;
  for (;; ten *= 10) {
    for (const double part : {1.0, 2.0, 5.0}) {
      if (part * ten >= least) return part * ten;
    }
  }
}

}  // namespace fairblade::drawing
