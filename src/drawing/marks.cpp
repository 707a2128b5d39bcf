#include "drawing/marks.hpp"

#include <cmath>
#include <numbers>
#include <utility>

namespace fairblade::drawing {
namespace {

Point moved(Point p, double dx, double dy) { return {p.x() + dx, p.y() + dy}; }

}  // namespace

void add_line(Sheet& sheet, Point from, Point to, Pen pen, std::string id) {
  sheet.items.emplace_back(Path{{{from, to}}, false, pen, Fill::none, std::move(id)});
}

void add_text(Sheet& sheet, Point at, std::string words, double size, Anchor anchor, bool bold, double turn) {
  sheet.items.emplace_back(Text{at, std::move(words), size, anchor, turn, bold});
}

void add_text_on_white(Sheet& sheet, const Text& text) {
  const Box box = box_of(text);
  const Point a = moved(box.min_corner(), -0.6, 0), b = moved(box.max_corner(), 0.6, 0);
  sheet.items.emplace_back(Path{{{a, {b.x(), a.y()}, b, {a.x(), b.y()}}}, true, Pen::none, Fill::white, {}});
  sheet.items.emplace_back(text);
}

void add_dot(Sheet& sheet, Point at, double radius) {
  std::vector<Point> ring;
  for (int k = 0; k < 16; ++k) {
    const double angle = k * std::numbers::pi / 8;
    ring.push_back(moved(at, radius * std::cos(angle), radius * std::sin(angle)));
  }
  sheet.items.emplace_back(Path{{ring}, true, Pen::none, Fill::dark, {}});
}

void add_arrow(Sheet& sheet, Point from, Point to, Pen pen) {
  const double dx = to.x() - from.x(), dy = to.y() - from.y(), length = std::hypot(dx, dy);
  if (length <= 0) return;
  const double head = pen == Pen::dimension ? 2.2 : 5, half = pen == Pen::dimension ? 0.45 : 1.6;
  const Point back(to.x() - head * dx / length, to.y() - head * dy / length);
  add_line(sheet, from, back, pen);
  const double nx = -half * dy / length, ny = half * dx / length;
  sheet.items.emplace_back(Path{{{to, moved(back, nx, ny), moved(back, -nx, -ny)}}, true, Pen::none, Fill::dark, {}});
}

void add_forward_arrow(Sheet& sheet, Point tip, double length) {
  add_arrow(sheet, moved(tip, length, 0), tip, Pen::outline);
  add_text(sheet, moved(tip, length / 2 + 2, -1.6), "FWD", 4, Anchor::middle, true);
}

void add_up_mark(Sheet& sheet, Point centre) {
  std::vector<Point> ring;
  for (int k = 0; k < 48; ++k) {
    const double angle = k * std::numbers::pi / 24;
    ring.push_back(moved(centre, 2.5 * std::cos(angle), 2.5 * std::sin(angle)));
  }
  sheet.items.emplace_back(Path{{ring}, true, Pen::outline, Fill::none, {}});
  add_dot(sheet, centre, 0.7);
}

void add_cross(Sheet& sheet, Point centre, const std::string& id) {
  constexpr double arm = 4;
  sheet.items.emplace_back(
      Path{{{moved(centre, -arm, 0), moved(centre, arm, 0)}, {moved(centre, 0, -arm), moved(centre, 0, arm)}},
           false,
           Pen::measured,
           Fill::none,
           id});
}

std::string check_bar_words(LengthUnit unit) { return unit == LengthUnit::inch ? "100 mm (3 15/16 in)" : "100 mm"; }

void add_check_bar_across(Sheet& sheet, Point left, const std::string& id, const std::string& words) {
  const Point bar = moved(left, 0, 8);
  add_line(sheet, bar, moved(bar, check_bar_length, 0), Pen::outline, id);
  Path ticks{{}, false, Pen::dimension, Fill::none, {}};
  for (int k = 0; k <= 10; ++k) {
    const double tick = k % 10 == 0 ? 4 : k == 5 ? 3 : 2;
    ticks.runs.push_back({moved(bar, 10.0 * k, -tick), moved(bar, 10.0 * k, k % 10 == 0 ? 1.5 : 0)});
  }
  sheet.items.emplace_back(ticks);
  add_text(sheet, moved(bar, check_bar_length / 2, -4), words, 2.8, Anchor::middle);
}

void add_check_bar_along(Sheet& sheet, Point top, const std::string& id, const std::string& words) {
  add_line(sheet, top, moved(top, 0, check_bar_length), Pen::outline, id);
  Path ticks{{}, false, Pen::dimension, Fill::none, {}};
  for (int k = 0; k <= 10; ++k) {
    const double tick = k % 10 == 0 ? 4 : k == 5 ? 3 : 2;
    ticks.runs.push_back({moved(top, -tick, 10.0 * k), moved(top, k % 10 == 0 ? 1.5 : 0, 10.0 * k)});
  }
  sheet.items.emplace_back(ticks);
  add_text(sheet, moved(top, -4, check_bar_length / 2), words, 2.8, Anchor::middle, false, -90);
}

void add_dimension(Sheet& sheet, Point from, Point to, const std::string& words, double size, const std::string& id) {
  add_line(sheet, from, to, Pen::dimension, id);
  const Point middle((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
  add_arrow(sheet, middle, from, Pen::dimension);
  add_arrow(sheet, middle, to, Pen::dimension);
  add_text_on_white(sheet, Text{moved(middle, 0, 0.35 * size), words, size, Anchor::middle, 0, false});
}

}  // namespace fairblade::drawing
