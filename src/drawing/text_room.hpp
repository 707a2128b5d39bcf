// Texts kept off one another. Verbs: TextRoom's own.
#pragma once
#include <vector>

#include "drawing/sheet.hpp"

namespace fairblade::drawing {

class TextRoom {
 public:
  /// Everything stays inside `room`, and `gap` mm from what lies there already.
  explicit TextRoom(Box room, double gap = 0.5) : room_(room), gap_(gap) {}
  void take(const Box& box) { taken_.push_back(box); }
  bool fits(const Text& text) const;
  /// Puts the text on the sheet, on white, if it fits.
  bool put(Sheet& sheet, const Text& text);

 private:
  Box room_;
  double gap_;
  std::vector<Box> taken_;
};

}  // namespace fairblade::drawing
