// Product: the full-size section of one station, measured and target overlaid, as a Sheet in mm.
// Verbs: draw_section.
#pragma once
#include "drawing/sheet.hpp"
#include "fill/fill.hpp"
#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::drawing {

/// Seen from above looking down, forward to the left, so starboard is the upper half. With `fitted` it says in words
/// how near the blade is to a standard section.
Sheet draw_section(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                   const fill::StationChange& change, const form::FittedForm* fitted = nullptr);

}  // namespace fairblade::drawing
