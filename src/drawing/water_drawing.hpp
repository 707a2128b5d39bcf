// Product: the blade before and after in the water, as a Sheet in mm: sentences, pressures, lever and balance, edge
// tone. Verbs: draw_water, draw_water_for_telephone.
#pragma once
#include "drawing/sheet.hpp"
#include "flow/water.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

/// 190 x 259 mm. The station whose old nose works hardest is large, at most four others small; thin lines are the blade
/// as it is, heavy ones as it will be. What could not be worked out says why in its place.
Sheet draw_water(const job::Job& job, const flow::Water& water);
/// 92 mm wide, the pictures one below the other and without the sentences, which stand on the page around them; legible
/// where a telephone's screen is the sheet's width.
Sheet draw_water_for_telephone(const job::Job& job, const flow::Water& water);

}  // namespace fairblade::drawing
