#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/water_panels.hpp"

namespace fairblade::drawing {
namespace {

constexpr double lever_title = 3.2, lever_type = 2.6;

/// The mean chord's leading edge, mm aft of the stock.
double edge_of(const flow::BladeWater& blade) { return *blade.lever - blade.centre_of_pressure * blade.mean_chord; }

std::string figures(const job::Job& job, const flow::BladeWater& blade, const char* when) {
  std::string out = std::string(when) + ": ";
  out += blade.balance_percent ? fixed(*blade.balance_percent, 1) + " % of the area ahead of the stock" : "balance not known";
  if (!blade.known) return out + ".";
  if (blade.lever) {
    out += "; centre of pressure " + length_words(std::abs(*blade.lever), job) + (*blade.lever < 0 ? " ahead of" : " aft of") +
           " the stock";
  }
  out += "; force " + fixed(blade.load.force, 0) + " N";
  if (blade.load.torque) out += ", torque " + fixed(*blade.load.torque, 0) + " Nm";
  return out + ".";
}

// Two bars about the stock's line: the mean chord as it is and as it will be, a dot where the force attacks.
double bars(Sheet& sheet, double left, double right, double top, const flow::Water& water) {
  const flow::BladeWater &before = water.blade_before, &after = water.blade_after;
  const double from = std::min({edge_of(before), edge_of(after), 0.0});
  const double to = std::max({edge_of(before) + before.mean_chord, edge_of(after) + after.mean_chord, 0.0});
  const double scale = (right - left) / (to - from);
  const auto x = [&](double aft) { return left + (aft - from) * scale; };
  constexpr double first = 8, apart = 8, half = 1.6;
  for (const bool old : {true, false}) {
    const flow::BladeWater& blade = old ? before : after;
    const double y = top + first + (old ? 0 : apart), a = x(edge_of(blade)), b = x(edge_of(blade) + blade.mean_chord);
    sheet.items.emplace_back(Path{{{{a, y - half}, {b, y - half / 3}, {b, y + half / 3}, {a, y + half}}},
                                  true,
                                  old ? Pen::measured : Pen::cut,
                                  Fill::none,
                                  old ? "lever-before" : "lever-after"});
    add_dot(sheet, {x(*blade.lever), y}, 0.9);
    const Text words{{(a + b) / 2 + (b - a) / 6, y - half - 0.8}, old ? "now" : "then", lever_type, Anchor::middle, 0, false};
    add_text(sheet, words.at, words.words, words.size, words.anchor);
  }
  const double bottom = top + first + apart + half + 2;
  add_line(sheet, {x(0), top + 3.6}, {x(0), bottom}, Pen::datum, "lever-stock");
  add_text(sheet, {std::clamp(x(0), left + 4, right - 4), top + 2.8}, "stock", lever_type, Anchor::middle);
  return bottom + 1;
}

}  // namespace

void draw_lever(Sheet& sheet, const Box& room, const job::Job& job, const flow::Water& water) {
  const double left = room.min_corner().x(), wide = room.max_corner().x() - left;
  Column head(sheet, left, room.min_corner().y(), wide);
  head.line("Lever and balance", lever_title, true);
  double y = head.bottom();
  const flow::BladeWater &before = water.blade_before, &after = water.blade_after;
  const bool bars_known = before.known && after.known && before.lever && after.lever;
  if (bars_known) y = bars(sheet, left + 1, left + wide - 1, y, water);
  Column column(sheet, left, y + 1, wide);
  if (bars_known) column.paragraph("The mean chord, forward to the left; the dot is its centre of pressure.", lever_type);
  if (!before.known) column.paragraph("No lever: " + before.why_not + ".", lever_type);
  else if (!before.lever) column.paragraph("No lever: \"ahead\" was not given at every station.", lever_type);
  column.paragraph(figures(job, before, "Now"), lever_type);
  column.paragraph(figures(job, after, "Then"), lever_type);
  if (!before.known) return;
  column.paragraph("At " + trimmed(water.helm, 1) + "\xc2\xb0 of helm and " + trimmed(water.knots, 1) +
                       " knots, hull as end plate: " + flow::name_of(water.end_plate) + ".",
                   lever_type);
}

}  // namespace fairblade::drawing
