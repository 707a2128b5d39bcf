// How far a point stands out of a section's outline. Verbs: stands_out. mm.
#pragma once
#include "fill/loft.hpp"

namespace fairblade::fill {

/// The distance from the point to the nearest of both faces and both blunt ends; 0 inside, and for what is seen at a
/// glance to stand out by no more than `at_least`. y to port.
double stands_out(const Outline& outline, double x, double y, double at_least = 0);

}  // namespace fairblade::fill
