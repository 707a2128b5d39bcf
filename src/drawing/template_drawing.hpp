// Product: a full-size half template of one side of one station, as a Sheet in mm. Verbs: draw_template.
#pragma once
#include "drawing/sheet.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::drawing {

/// The negative of the target: a card that lies outside the blade and slides square against its surface. Its working
/// edge is the target from leading edge to trailing edge; ahead and aft of them it comes in to the chord line, so that
/// it stops at both edges, and so that the two sides' cards meet there. The back is straight and parallel to the chord
/// line. Drawn with the printed side up and forward to the left.
Sheet draw_template(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                    section::Face face);

}  // namespace fairblade::drawing
