// Private to the form room. Product: the two polynomials of a form, ahead of its greatest thickness and aft of it, for whoever
// asks them: SectionCurve, and the fit, millions of times. Verbs: at, slope, second, of a Nose and of a Tail; against u =
// sqrt(x).
#pragma once
#include <array>

namespace fairblade::form {

/// y = n[0] u + n[1] u² + n[2] u⁴ + n[3] u⁶ + n[4] u⁸.
using Nose = std::array<double, 5>;
/// y = t[0] + t[1] z + t[2] z² + t[3] z³ with z = 1 - u².
using Tail = std::array<double, 4>;

inline double at(const Nose& n, double u) {
  const double x = u * u;
  return n[0] * u + x * (n[1] + x * (n[2] + x * (n[3] + x * n[4])));
}
inline double slope(const Nose& n, double u) {
  const double x = u * u;
  return n[0] + u * (2 * n[1] + x * (4 * n[2] + x * (6 * n[3] + x * 8 * n[4])));
}
inline double second(const Nose& n, double u) {
  const double x = u * u;
  return 2 * n[1] + x * (12 * n[2] + x * (30 * n[3] + x * 56 * n[4]));
}

inline double at(const Tail& t, double u) {
  const double z = 1 - u * u;
  return t[0] + z * (t[1] + z * (t[2] + z * t[3]));
}
inline double slope(const Tail& t, double u) {
  const double z = 1 - u * u;
  return -2 * u * (t[1] + z * (2 * t[2] + z * 3 * t[3]));
}
inline double second(const Tail& t, double u) {
  const double x = u * u, z = 1 - x;
  return -2 * (t[1] + z * (2 * t[2] + z * 3 * t[3])) + 4 * x * (2 * t[2] + z * 6 * t[3]);
}

}  // namespace fairblade::form
