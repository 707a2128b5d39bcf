// How far a point stands out of a section's outline. Verbs: stands_out, deepest_outside. mm.
#pragma once
#include "fill/fill.hpp"
#include "fill/loft.hpp"

namespace fairblade::fill {

/// The distance from the point to the nearest of both faces and both blunt ends; 0 inside. y to port.
double stands_out(const Outline& outline, double x, double y);

/// The place of `outline` that stands furthest out of `other`; of places alike to 1e-9 mm the foremost, port before starboard.
Deepest deepest_outside(const Outline& outline, const Outline& other);

}  // namespace fairblade::fill
