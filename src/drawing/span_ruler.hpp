// Private to the drawing room. A ruler down the blade beside its map, with the stations' names. Verbs: draw_span_ruler.
#pragma once
#include "drawing/map_face.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

constexpr double span_ruler_width = 27;  ///< mm

/// `left`: where its column begins. A strip has stations and no ruler.
void draw_span_ruler(Sheet& sheet, const job::Job& job, const fill::ChangeMap& map, const MapFrame& frame, double left,
                     bool strip, TextRoom& placing);

}  // namespace fairblade::drawing
