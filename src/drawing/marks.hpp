// What stands on more than one drawing: lines, dots, arrows, check bars. Verbs: add_line, add_dot, add_text. mm.
#pragma once
#include <string>

#include "base/units.hpp"
#include "drawing/sheet.hpp"

namespace fairblade::drawing {

constexpr double check_bar_length = 100;  ///< mm
/// "100 mm"; for an inch job what an inch rule shows too, to 0.02 mm.
std::string check_bar_words(LengthUnit unit);

void add_line(Sheet& sheet, Point from, Point to, Pen pen, std::string id = {});
void add_text(Sheet& sheet, Point at, std::string words, double size, Anchor anchor = Anchor::start, bool bold = false,
              double turn = 0);
/// A text on a white ground that hides the lines under it.
void add_text_on_white(Sheet& sheet, const Text& text);
void add_dot(Sheet& sheet, Point at, double radius);
/// A line with an arrow's head at `to`.
void add_arrow(Sheet& sheet, Point from, Point to, Pen pen);
/// An arrow to the left, `length` mm long, with FWD over it.
void add_forward_arrow(Sheet& sheet, Point tip, double length);
/// The point of an arrow that comes out of the paper: a ring and a dot, 5 mm across.
void add_up_mark(Sheet& sheet, Point centre);
/// Bars of exactly 100 mm with a tick every 10; `id` names the bar itself. Across: from `left` to the right, its words
/// over it (8 mm high in all). Along: from `top` downwards, its words to the left of it, turned.
void add_check_bar_across(Sheet& sheet, Point left, const std::string& id, const std::string& words = "check bar across: 100 mm");
void add_check_bar_along(Sheet& sheet, Point top, const std::string& id, const std::string& words = "check bar along: 100 mm");
/// An upright cross with arms of 4 mm, in one path.
void add_cross(Sheet& sheet, Point centre, const std::string& id);
/// A dimension between two heights of one line: arrows at both ends, the words on white in the middle.
void add_dimension(Sheet& sheet, Point from, Point to, const std::string& words, double size, const std::string& id);

}  // namespace fairblade::drawing
