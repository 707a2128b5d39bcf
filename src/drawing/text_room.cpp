#include "drawing/text_room.hpp"

#include <algorithm>

#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

bool apart(const Box& a, const Box& b, double gap) {
  return a.max_corner().x() + gap <= b.min_corner().x() || b.max_corner().x() + gap <= a.min_corner().x() ||
         a.max_corner().y() + gap <= b.min_corner().y() || b.max_corner().y() + gap <= a.min_corner().y();
}

}  // namespace

bool TextRoom::fits(const Text& text) const {
  const Box box = box_of(text);
  if (box.min_corner().x() < room_.min_corner().x() || box.max_corner().x() > room_.max_corner().x() ||
      box.min_corner().y() < room_.min_corner().y() || box.max_corner().y() > room_.max_corner().y()) {
    return false;
  }
  return std::all_of(taken_.begin(), taken_.end(), [&](const Box& other) { return apart(box, other, gap_); });
}

bool TextRoom::put(Sheet& sheet, const Text& text) {
  if (!fits(text)) return false;
  add_text_on_white(sheet, text);
  take(box_of(text));
  return true;
}

}  // namespace fairblade::drawing
