// The measuring sheets to print and write on. Verbs: draw_worksheet_cover, draw_worksheet_station. mm.
//
// `room` is what of the page a drawing may cover (pages::page_room); a sheet fills it. Drawn for a width of 180 mm and
// carried over to the room there is. Port stands on the left and forward is up, in the table as in the pictures.
#pragma once
#include "drawing/sheet.hpp"
#include "worksheet/worksheet.hpp"

namespace fairblade::drawing {

/// What to bring, where each station lies, the jig, the stock line, the cautions, what is on which page.
Sheet draw_worksheet_cover(const worksheet::Worksheet& worksheet, Point room);
/// One station to write into; `again`: measured a second time.
Sheet draw_worksheet_station(const worksheet::Worksheet& worksheet, std::size_t station, bool again, Point room);

}  // namespace fairblade::drawing
