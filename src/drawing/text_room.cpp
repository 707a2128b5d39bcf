#include "drawing/text_room.hpp"

#include <algorithm>

#include "drawing/marks.hpp"

namespace fairblade::drawing {
bool TextRoom::fits(const Text& text) const {
  const Box box = box_of(text);
  if (!within(box, room_)) return false;
  return std::all_of(taken_.begin(), taken_.end(), [&](const Box& other) { return stand_apart(box, other, gap_); });
}

bool TextRoom::put(Sheet& sheet, const Text& text) {
  if (!fits(text)) return false;
  add_text_on_white(sheet, text);
  take(box_of(text));
  return true;
}

}  // namespace fairblade::drawing
