// The measured outline as a polygon, and figures read off it. Verbs: sample_places, outline,
// meet_where_crossed, figures_of. mm.
#pragma once
#include "base/geometry.hpp"
#include "section/section.hpp"

namespace fairblade::section {

/// Places along the chord where the outline is sampled: chord fractions even in their square root, and every reading.
/// mm aft of the leading edge, sorted, distinct.
std::vector<double> sample_places(const MeasuredSection& measured, std::size_t count = 400);

/// Corners from the leading edge along port to the trailing edge and back along starboard, mm; y to port.
std::vector<Point> outline(const MeasuredSection& measured, const std::vector<double>& places);

/// Where port + starboard is less than nothing at a node, both sides move to their middle line. True if any did.
bool meet_where_crossed(MeasuredSection& measured);

/// Area, greatest thickness, nose radius with its error, edge thickness, lopsidedness.
/// Nose radius: least squares of form(u) and of the nose deformation g with m = 0.12 over readings up to 0.3 chord;
/// its error follows from the reading error. On exact 0006-0018 it is the form's own within 1e-9.
Figures figures_of(const MeasuredSection& measured, double reading_error);

}  // namespace fairblade::section
