// A section's faces as lines of points, and the outline that two of them enclose. Verbs: face_roots, face_line,
// outline_of. mm.
#pragma once
#include "target/target.hpp"

namespace fairblade::target {

/// Square roots of the chord fractions at which a face is sampled: so fine that the chords between the points miss a
/// section by a few thousandths of a mm.
std::vector<double> face_roots(double chord);
/// One face from edge to edge, x in the measured frame, y the half-breadth outwards at those
/// places; not thinned.
Polyline face_line(const TargetSection& target, Face face);

/// The outline between two faces, both outwards; y to port.
Polygon outline_of(const Polyline& port, const Polyline& starboard);

}  // namespace fairblade::target
