// Product: one station small enough for a telephone's screen, as a Sheet 120 mm wide whose type stays readable there:
// the section, and under it how much to add and to take off along each face. Verbs: draw_section_picture.
#pragma once
#include "drawing/sheet.hpp"
#include "fill/fill.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::drawing {

constexpr double picture_width = 120;  ///< mm

/// Forward to the left, starboard above. Each strip is target less measured half-breadth, add upwards, take off
/// downwards, both strips to one scale; what runs off a strip at the very edges is cut there.
Sheet draw_section_picture(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                           const fill::StationChange& change);

}  // namespace fairblade::drawing
