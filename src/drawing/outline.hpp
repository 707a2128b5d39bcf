// The curves of a section as polylines fit to cut along: within 0.01 mm of the true curve. mm. Verbs: measured_line,
// target_line, measured_outline, target_outline, outlines_apart, widest.
#pragma once
#include <vector>

#include "base/polyline.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::drawing {

using section::Face;

/// From the leading edge to the trailing edge; x mm aft of the measured leading edge, y the half-breadth (positive
/// outwards, whichever the face). Sampled evenly in sqrt(x), then thinned by 0.004 mm (seen: 0.0045 mm from the curve).
/// A section read at more than 400 places a side is drawn within 0.1 mm of its readings, as an outline too.
Polyline measured_line(const section::MeasuredSection& measured, Face face);
Polyline target_line(const target::TargetSection& target, Face face);

/// The closed outlines, y to port; not thinned, so that where the two are one curve no slivers lie between them. Where
/// readings of a thin edge cross (port + starboard below 0) the measured outline is held a hair thick, so that it stays
/// an outline.
Polygon measured_outline(const section::MeasuredSection& measured);
Polygon target_outline(const target::TargetSection& target);
/// What the target has alone (a), and what the blade has alone (b), to be shown: in strips along the chord where there are
/// thousands of readings.
Apart outlines_apart(const section::MeasuredSection& measured, const target::TargetSection& target);

/// The greatest half-breadth along a line, and its x.
Point widest(const Polyline& line);

}  // namespace fairblade::drawing
