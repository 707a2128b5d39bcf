// Product: the map of highs and lows, both faces seen from the side, as a Sheet in mm. Verbs: draw_highs_and_lows,
// draw_highs_and_lows_for_telephone, begin_words.
#pragma once
#include <string>

#include "drawing/paper_room.hpp"
#include "drawing/sheet.hpp"
#include "fill/change_map.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

struct MapWords {
  std::string heading = "Highs and lows";
  std::string begin;                         ///< where to begin; empty: worked out from the deepest places
  std::string within = "the reading error";  ///< what depths that are left white lie within
  std::string under_coats;                   ///< where coats are to come: which surface the depths are to
};

/// Upright or lying, whichever shows the blade larger, on all that `room` gives. To a round scale, which is printed; the
/// faces side by side or one above the other. A map of one row alone is a strip without scale up and down. Depths within
/// map.error are left white. Numbers in the job's unit, words in mm with that unit beside it.
Sheet draw_highs_and_lows(const job::Job& job, const fill::ChangeMap& map, const MapWords& words = {},
                          const PaperRoom& room = {});
/// The same for a telephone: 92 mm wide and as high as it takes, so that its type stays legible where the screen is the
/// sheet's width; the faces one above the other, and no scale, which a screen does not keep.
Sheet draw_highs_and_lows_for_telephone(const job::Job& job, const fill::ChangeMap& map, const MapWords& words = {});

/// "take off first, ...": where to begin, in words.
std::string begin_words(const job::Job& job, const fill::ChangeMap& map);

}  // namespace fairblade::drawing
