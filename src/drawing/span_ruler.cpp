#include "drawing/span_ruler.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/round_step.hpp"

namespace fairblade::drawing {
namespace {

constexpr double line_at = 12;                 // mm from the column's left: numbers to the left of it, stations to the right
constexpr double number_type = 2.4, name = 3;  // mm of type

void ruler(Sheet& sheet, const job::Job& job, const MapFrame& frame, double x, TextRoom& placing) {
  // Room for a number at each; never less than whole units.
  const double step = round_step(std::max(9 * frame.scale, millimetres_in(job.units)), millimetres_in(job.units)),
               fine = step / 5;
  add_line(sheet, {x, frame.top}, {x, frame.top + frame.height()}, Pen::outline,
           std::string("span-ruler-") + section::name_of(frame.face));
  Path ticks{{}, false, Pen::dimension, Fill::none, {}};
  for (double k = std::ceil(frame.down_from / fine - 1e-9); k * fine <= frame.down_to + 1e-9; ++k) {
    const double y = frame.y(k * fine);
    const bool whole = std::fmod(std::abs(k), 5) == 0;
    ticks.runs.push_back({{x - (whole ? 2.4 : 1.2), y}, {x, y}});
    if (!whole) continue;
    const std::string words = trimmed(k * fine / millimetres_in(job.units), 3);
    placing.put(sheet, {{x - 3, y + 0.36 * number_type}, words, number_type, Anchor::end, 0, false});
  }
  sheet.items.emplace_back(std::move(ticks));
  const std::string unit = std::string(name_of(job.units)) + " down";
  placing.put(sheet, {{x - 3, frame.top - 3.2}, unit, number_type, Anchor::end, 0, false});
}

}  // namespace

void draw_span_ruler(Sheet& sheet, const job::Job& job, const fill::ChangeMap& map, const MapFrame& frame, double left,
                     bool strip, TextRoom& placing) {
  const double x = left + line_at, room = span_ruler_width - line_at - 2.2;
  if (!strip) ruler(sheet, job, frame, x, placing);
  for (const fill::MapStation& station : shown_stations(map, frame)) {
    const double y = strip ? frame.top + frame.height() / 2 : frame.y(station.down);
    if (!strip) add_line(sheet, {x, y}, {x + 1.5, y}, Pen::outline);
    const std::string words = shortened(station.name, name, true, room);
    const std::string height = shortened(number_in_unit(station.down, job.units), number_type, false, room);
    const Text upper{{x + 2.2, y - 0.3}, words, name, Anchor::start, 0, true};
    const Text lower{{x + 2.2, y + 2.9}, height, number_type, Anchor::start, 0, false};
    if (placing.fits(upper) && placing.fits(lower)) {
      placing.put(sheet, upper);
      // Close under its name, so not asked for the usual gap.
      add_text_on_white(sheet, lower);
      placing.take(box_of(lower));
      continue;
    }
    placing.put(sheet, {{x + 2.2, y + 0.36 * name}, words, name, Anchor::start, 0, true});
  }
}

}  // namespace fairblade::drawing
