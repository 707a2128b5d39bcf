#include "drawing/water_drawing.hpp"

#include <algorithm>
#include <numeric>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/water_panels.hpp"

namespace fairblade::drawing {
namespace {

constexpr double water_margin = 3, width = 190, height = 259;  // mm
constexpr double sentence_type = 3;
constexpr double small_high = 34, lower_high = 62, foot_high = 9;
constexpr std::size_t most_small = 4;

double water_head(Sheet& sheet, const job::Job& job, const flow::Water& water) {
  const double room = width - 2 * water_margin;
  Column column(sheet, water_margin, water_margin, room);
  column.line("Before and after in the water", 6.5, true);
  column.line(job.name, 3.8);
  column.skip(1.5);
  const double top = column.bottom(), inset = 2;
  Column verdict(sheet, water_margin + inset, top + 1.2, room - 2 * inset);
  verdict.paragraph(water.meaning.verdict, 3.6);
  const double bottom = verdict.bottom() + 1.2, right = water_margin + room;
  sheet.items.emplace_back(Path{
      {{{water_margin, top}, {right, top}, {right, bottom}, {water_margin, bottom}}}, true, Pen::cut, Fill::none, "verdict"});
  Column sentences(sheet, water_margin, bottom + 1.5, room);
  for (const std::string* each : {&water.meaning.stall, &water.meaning.hum, &water.meaning.helm, &water.meaning.pull}) {
    if (each->empty()) continue;
    sentences.paragraph(*each, sentence_type);
    sentences.skip(0.8);
  }
  return sentences.bottom() + 1;
}

// The stations, the one that works hardest first.
std::vector<std::size_t> by_suction(const flow::Water& water) {
  std::vector<double> suction;
  for (const auto& station : water.stations) suction.push_back(hardest(station, water.helm));
  std::vector<std::size_t> out(water.stations.size());
  std::iota(out.begin(), out.end(), std::size_t{0});
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) { return suction[a] > suction[b]; });
  return out;
}

void pressures(Sheet& sheet, const flow::Water& water, double top, double bottom) {
  if (water.stations.empty()) return;
  auto order = by_suction(water);
  const std::size_t shown = std::min(order.size(), most_small + 1);
  const double large_bottom = shown > 1 ? bottom - small_high : bottom;
  draw_pressures(sheet, Box({water_margin, top}, {width - water_margin, large_bottom}), water.stations[order[0]], water.helm,
                 Written::all);
  std::vector<std::size_t> others(order.begin() + 1, order.begin() + static_cast<std::ptrdiff_t>(shown));
  std::sort(others.begin(), others.end());
  const double each = (width - 2 * water_margin) / most_small;
  for (std::size_t k = 0; k < others.size(); ++k) {
    const double left = water_margin + static_cast<double>(k) * each;
    draw_pressures(sheet, Box({left, large_bottom + 1}, {left + each - 2, bottom}), water.stations[others[k]], water.helm,
                   Written::least);
  }
}

double key_line(Sheet& sheet, double x, double y, const std::string& words, Pen pen) {
  constexpr double sample = 11, type = 2.7;
  add_line(sheet, {x, y - 0.9}, {x + sample, y - 0.9}, pen);
  add_text(sheet, {x + sample + 1.5, y}, words, type);
  return x + sample + 1.5 + width_of(words, type, false) + 6;
}

void water_foot(Sheet& sheet, const flow::Water& water, double top) {
  double x = key_line(sheet, water_margin, top + 3, "now, the blade as it is", Pen::measured);
  x = key_line(sheet, x, top + 3, "then, as it will be", Pen::cut);
  if (water.stations.size() > most_small + 1) {
    add_text(sheet, {x, top + 3},
             "Shown: the " + std::to_string(most_small + 1) + " hardest worked of " + std::to_string(water.stations.size()) +
                 " stations.",
             2.7);
  }
  Column column(sheet, water_margin, top + 4.4, width - 2 * water_margin);
  column.paragraph("A comparison of two shapes, not a design: balance, loads and the stock belong to a qualified designer.", 2.7);
}

}  // namespace

Sheet draw_water(const job::Job& job, const flow::Water& water) {
  Sheet sheet;
  sheet.width = width;
  sheet.height = height;
  sheet.title = printable("Before and after in the water, " + job.name);
  const double top = water_head(sheet, job, water), foot_top = height - water_margin - foot_high, lower = foot_top - lower_high;
  pressures(sheet, water, top, lower - 2);
  const double middle = width / 2;
  draw_lever(sheet, Box({water_margin, lower}, {middle - 3, foot_top}), job, water);
  draw_tone(sheet, Box({middle + 2, lower}, {width - water_margin, foot_top}), job, water);
  water_foot(sheet, water, foot_top);
  return sheet;
}

Sheet draw_water_for_telephone(const job::Job& job, const flow::Water& water) {
  constexpr double side = 92, pressure_high = 62, small = 32, lever_high = 56, tone_high = 58, key_high = 10, between = 4;
  Sheet sheet;
  sheet.width = side;
  sheet.title = printable("Before and after in the water, " + job.name);
  const double left = water_margin, right = side - water_margin, middle = side / 2;
  double y = water_margin;
  key_line(sheet, left, y + 3, "now, the blade as it is", Pen::measured);
  key_line(sheet, left, y + 7, "then, as it will be", Pen::cut);
  y += key_high;
  auto order = by_suction(water);
  order.resize(std::min(order.size(), most_small + 1));
  if (!order.empty()) {
    draw_pressures(sheet, Box({left, y}, {right, y + pressure_high}), water.stations[order[0]], water.helm, Written::some);
    y += pressure_high + between;
    std::sort(order.begin() + 1, order.end());
  }
  for (std::size_t k = 1; k < order.size(); ++k) {
    const bool on_left = k % 2 == 1;
    draw_pressures(sheet, Box({on_left ? left : middle + 1, y}, {on_left ? middle - 1 : right, y + small}),
                   water.stations[order[k]], water.helm, Written::least);
    if (!on_left || k + 1 == order.size()) y += small + between;
  }
  draw_lever(sheet, Box({left, y}, {right, y + lever_high}), job, water);
  y += lever_high + between;
  draw_tone(sheet, Box({left, y}, {right, y + tone_high}), job, water);
  sheet.height = y + tone_high + water_margin;
  return sheet;
}

}  // namespace fairblade::drawing
