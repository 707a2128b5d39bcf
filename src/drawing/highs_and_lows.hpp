// Product: the map of highs and lows, both faces seen from the side, as a Sheet in mm. Verbs: draw_highs_and_lows,
// begin_words.
#pragma once
#include <string>

#include "drawing/sheet.hpp"
#include "fill/change_map.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

struct MapWords {
  std::string heading = "Highs and lows";
  std::string begin;  ///< where to begin; empty: worked out from the deepest places
};

/// 190 x 259 mm or 259 x 190, whichever shows the blade larger: both fit on A4 and on Letter at actual size. To a round
/// scale, which is printed; the faces side by side or one above the other. A map of one row alone is a strip without
/// scale up and down. Depths within map.error are left white. Numbers in the job's unit, words in mm with that unit
/// beside it.
Sheet draw_highs_and_lows(const job::Job& job, const fill::ChangeMap& map, const MapWords& words = {});

/// "take off first, ...": where to begin, in words.
std::string begin_words(const job::Job& job, const fill::ChangeMap& map);

}  // namespace fairblade::drawing
