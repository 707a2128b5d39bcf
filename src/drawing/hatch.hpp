// Hatching as real lines, so that every viewer and printer shows it. Verbs: hatch. mm.
#pragma once
#include "drawing/sheet.hpp"

namespace fairblade::drawing {

/// Parallel lines `spacing` mm apart, square to it, clipped to the area (in and out by turns). `rising`: from lower left to
/// upper right on the paper (45 degrees); else falling. The lines stand on one grid, whatever the area.
Path hatch(const MultiPolygon& area, double spacing, bool rising);

}  // namespace fairblade::drawing
