#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"
#include "drawing/template_drawing.hpp"

namespace fairblade::drawing {
namespace {

constexpr double positive_rim = 2, positive_horn = 26, words_band = 27;

}  // namespace

Sheet draw_positive(const TemplateOf& wanted) {
  const job::Job& job = wanted.job;
  const target::TargetSection& target = wanted.target;
  const fill::StageSection& stage = wanted.stage;
  Sheet sheet;
  sheet.title = printable("Section " + target.station + " to cut round, " + stage_words(stage) + ", " + job.name);
  const double to_port = std::max(widest(stage.port).y(), 0.0), to_starboard = std::max(widest(stage.starboard).y(), 0.0);
  const double left = positive_rim + positive_horn, length = stage.trailing_edge_x - stage.leading_edge_x;
  const double least = 100;  // mm, for the words
  sheet.width = std::max(left + length + positive_horn + positive_rim, least + 2 * positive_rim);
  const double starboard_band = 7, centre = positive_rim + starboard_band + to_starboard;  // starboard is the upper half
  sheet.height = centre + to_port + 7 + words_band + positive_rim;
  const auto at = [&](double x, double y) { return Point(left + x - stage.leading_edge_x, centre + y); };

  std::vector<Point> ring;
  for (const Point& p : stage.port) ring.push_back(at(p.x(), p.y()));
  for (auto p = stage.starboard.rbegin(); p != stage.starboard.rend(); ++p) ring.push_back(at(p->x(), -p->y()));
  sheet.items.emplace_back(Path{{ring}, true, Pen::cut, Fill::none, "working-edge"});
  add_line(sheet, {positive_rim, centre}, {left + length + positive_horn, centre}, Pen::datum, "chord-line");
  if (target.ahead) {
    const double x = target.leading_edge_x + *target.ahead;
    if (x > stage.leading_edge_x - positive_horn + 4 && x < stage.trailing_edge_x + positive_horn - 4) {
      const double top = centre - to_starboard - 3, bottom = centre + to_port + 3;
      add_line(sheet, {at(x, 0).x(), top}, {at(x, 0).x(), bottom}, Pen::datum, "stock");
    }
  }
  for (const double x : {stage.leading_edge_x, stage.trailing_edge_x}) {
    Path tick{{{at(x, -to_starboard - 2), at(x, -4)}, {at(x, 4), at(x, to_port + 2)}}, false, Pen::guide, Fill::none, {}};
    sheet.items.emplace_back(tick);
  }
  const double middle = left + length / 2;
  add_text(sheet, {middle, positive_rim + 4}, "STARBOARD", 3.4, Anchor::middle, true);
  add_text(sheet, {middle, centre + to_port + 4.8}, "PORT", 3.4, Anchor::middle, true);
  const double words_top = centre + to_port + 7;
  add_forward_arrow(sheet, {positive_rim + 1, words_top + 7}, 18);
  add_up_mark(sheet, {positive_rim + 10, words_top + 13});
  add_text(sheet, {positive_rim + 10, words_top + 20}, "UP", 3.6, Anchor::middle, true);
  Column column(sheet, positive_rim + 24, words_top, sheet.width - 2 * positive_rim - 24);
  column.line("THE SECTION ITSELF " + stage_words(stage), 4.2, true);
  column.line("Station " + target.station, 4.2, true);
  column.line(length_words(target.down, job) + " below the top; " + length_words(length, job) + " long, edge " +
                  length_words(stage.edge_width, job) + " wide",
              2.8);
  column.line(job.name, 2.8);
  std::string note = "Heavy line: cut here. Long dashes: chord line and stock centreline.";
  if (wanted.thickness_only) note += " Read by calipers: both sides are taken as alike.";
  column.line(note, 2.4);
  return sheet;
}

Sheet framed(const Sheet& card, LengthUnit unit, const std::string& note) {
  constexpr double margin = 10, bar_column = 14, gap = 3, foot = 20;
  Sheet sheet;
  sheet.title = card.title;
  const double inner = std::max(card.width, check_bar_length + 62);
  sheet.width = std::ceil(2 * margin + bar_column + inner);
  const double high = std::max(card.height, check_bar_length + 4);
  sheet.height = std::ceil(2 * margin + high + gap + foot);
  add_items(sheet, card, {margin + bar_column, margin});
  add_check_bar_along(sheet, {margin + 8, margin + (high - check_bar_length) / 2}, "check-along");
  const double top = margin + high + gap;
  add_check_bar_across(sheet, {margin + bar_column, top}, "check-across");
  const double beside = margin + bar_column + check_bar_length + 8;
  Column column(sheet, beside, top, sheet.width - margin - beside);
  column.paragraph("Print at actual size (100 %); both check bars must measure " + check_bar_words(unit) + ".", 2.8);
  if (!note.empty()) column.paragraph(note, 2.8);
  return sheet;
}

}  // namespace fairblade::drawing
