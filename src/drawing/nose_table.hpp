// Product: the numbers of the leading-edge gauges as sheets to print, small enough to share a page. Verbs: nose_tables,
// draw_flats, draw_flexible_sheet. mm.
#pragma once
#include <vector>

#include "drawing/paper_room.hpp"
#include "drawing/sheet.hpp"
#include "fill/nose.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

/// Tables of one stage: radius, girth, cloth, flats to plane, where to hold a flexible sheet; and where there is no
/// gauge, why. Two pictures say what the columns mean.
std::vector<Sheet> nose_tables(const job::Job& job, const fill::Stage& stage, const std::vector<fill::Nose>& noses,
                               const PaperRoom& paper = {});

/// The nose with the flats that touch it, enlarged.
Sheet draw_flats(const fill::Nose& nose, double width, double height);
/// The nose and a sheet bent round it, held at its place and at the gauge's end, enlarged.
Sheet draw_flexible_sheet(const fill::Nose& nose, double width, double height);

}  // namespace fairblade::drawing
