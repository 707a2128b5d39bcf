// Product: a published form at full size with its offsets, as a Sheet in mm. Verbs: draw_form.
#pragma once
#include "drawing/sheet.hpp"
#include "target/form_offsets.hpp"

namespace fairblade::drawing {

/// Forward to the left. Both halves are alike, so the offsets stand once, under the section, each led to its place.
Sheet draw_form(const target::FormOffsets& offsets);

}  // namespace fairblade::drawing
