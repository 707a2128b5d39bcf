// Private to the drawing room. What the measuring sheets are put together from. Verbs: draw_holding, draw_stations_from_side,
// fitted_to. mm.
#pragma once
#include "drawing/sheet.hpp"
#include "worksheet/worksheet.hpp"

namespace fairblade::drawing {

constexpr double worksheet_width = 180;
constexpr double holding_width = 94, holding_height = 75;

/// How boards, square, rule and calipers are held, seen from above, forward up.
Sheet draw_holding(const job::StationToMeasure& station, LengthUnit units);
/// The blade from its port side with its stations, just so large.
Sheet draw_stations_from_side(const worksheet::Worksheet& worksheet, double width, double height);

/// How close port + starboard comes to the calipers where nothing is wrong: "2 mm" (common practice, no source).
std::string caliper_slack(LengthUnit units);

/// How high a sheet of worksheet_width is that fills the room; and the sheet carried over to it.
double height_for(Point room);
Sheet fitted_to(Point room, const Sheet& sheet);

}  // namespace fairblade::drawing
