#include "drawing/highs_and_lows.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/map_face.hpp"
#include "drawing/map_words.hpp"
#include "drawing/marks.hpp"
#include "drawing/span_ruler.hpp"

namespace fairblade::drawing {
namespace {

using fill::ChangeMap;
using section::Face;

constexpr double margin = map_margin;                        // mm
constexpr double telephone_side = 92, telephone_face = 105;  // mm: how wide the sheet, how high a face may stand on it
constexpr double title_height = 9, beside_face = 7, below_face = 6;
constexpr double strip_height = 36;

/// Room for the two faces, and how they lie in it.
struct Zone {
  double top = 0, bottom = 0, width = 0;
};
struct Arrangement {
  bool stacked = false;
  double scale = 0;
};

struct Extent {
  double aft_from = 0, aft_to = 0, down_from = 0, down_to = 0;
  bool stock_shown = false;
};

Extent extent_of(const ChangeMap& map) {
  Extent out{map.rows.front().front(), map.rows.front().back(), map.rows.front().down, map.rows.back().down, false};
  for (const fill::MapRow& row : map.rows) {
    out.aft_from = std::min(out.aft_from, row.front());
    out.aft_to = std::max(out.aft_to, row.back());
  }
  const double near = 0.2 * (out.aft_to - out.aft_from);
  out.stock_shown = map.stock_known && out.aft_from <= near && out.aft_to >= -near;
  if (out.stock_shown) out.aft_from = std::min(out.aft_from, 0.0), out.aft_to = std::max(out.aft_to, 0.0);
  return out;
}

double round_scale(double least) {
  for (const double scale :
       {1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 7.5, 8.0, 9.0, 10.0, 12.0, 15.0, 20.0}) {
    if (scale >= least) return scale;
  }
  return 10 * std::ceil(least / 10);
}

class MapDrawing {
 public:
  enum class ReadOn { paper, telephone };
  MapDrawing(const job::Job& job, const ChangeMap& map, const MapWords& words, const PaperRoom& room, ReadOn read_on)
      : job_(job),
        map_(map),
        words_(words),
        room_(room),
        extent_(extent_of(map)),
        strip_(extent_.down_to <= extent_.down_from),
        telephone_(read_on == ReadOn::telephone) {}
  Sheet draw();

 private:
  struct Page {
    Sheet sheet;
    Zone zone;
    Arrangement best;
  };
  Page page(double width, double height) const;
  Page telephone_page() const;
  Page page_for_paper() const;
  double head(Sheet& sheet) const;
  double foot(Sheet& sheet, double top) const;
  Arrangement best_in(const Zone& zone) const;
  void faces(Page& page);
  void title(Sheet& sheet, const MapFrame& frame, double left, double right, double y, TextRoom& placing) const;

  const job::Job& job_;
  ChangeMap map_;
  const MapWords& words_;
  const PaperRoom& room_;
  Extent extent_;
  bool strip_, telephone_;
  std::array<DepthScale, 2> scales_;
};

double MapDrawing::head(Sheet& sheet) const {
  Column column(sheet, margin, margin, sheet.width - 2 * margin - (telephone_ ? 0 : 40));
  column.line(words_.heading, telephone_ ? 5 : 6.5, true);
  Column name(sheet, margin, column.bottom(), sheet.width - 2 * margin);
  name.line(job_.name, 3.8);
  const double top = name.bottom() + 1.5, inset = 2;
  add_text(sheet, {margin + inset, top + 5}, "BEGIN HERE", 3.8, Anchor::start, true);
  const double beside = margin + inset + width_of("BEGIN HERE", 3.8, true) + 4;
  Column begin(sheet, beside, top + 1.6, sheet.width - margin - inset - beside);
  begin.paragraph((words_.begin.empty() ? begin_words(job_, map_) : words_.begin) +
                      (words_.under_coats.empty() ? "" : " " + words_.under_coats),
                  3.6);
  const double bottom = begin.bottom() + 1.6, left = margin, right = sheet.width - margin;
  sheet.items.emplace_back(
      Path{{{{left, top}, {right, top}, {right, bottom}, {left, bottom}}}, true, Pen::cut, Fill::none, "begin"});
  return bottom + 2;
}

double MapDrawing::foot(Sheet& sheet, double top) const {
  Column column(sheet, margin, map_key(sheet, map_, scales_, job_.units, extent_.stock_shown, top), sheet.width - 2 * margin);
  constexpr std::size_t most_bytes = 400;  // of a note: names may run to any length
  for (const std::string& each : map_notes(job_, map_, extent_.stock_shown, strip_, words_)) {
    const bool whole = each.size() <= most_bytes;
    column.paragraph(whole ? each : printable(each.substr(0, most_bytes)) + "\xe2\x80\xa6", 2.6);
  }
  return column.bottom();
}

Arrangement MapDrawing::best_in(const Zone& zone) const {
  Arrangement best;
  const double wide = extent_.aft_to - extent_.aft_from, high = strip_ ? 0 : extent_.down_to - extent_.down_from;
  const double room = zone.width - span_ruler_width - 2 * beside_face, tall = zone.bottom - zone.top;
  for (const bool stacked : {false, true}) {
    const double across = stacked ? room : (room - 2 * beside_face) / 2;
    const double down = (stacked ? tall / 2 : tall) - title_height - below_face;
    if (strip_ && down < strip_height) continue;
    const double scale = round_scale(std::max({1.0, wide / across, high / down}));
    if (best.scale == 0 || scale < best.scale) best = {stacked, scale};
  }
  return best;
}

MapDrawing::Page MapDrawing::page(double width, double height) const {
  Page out;
  out.sheet.width = width;
  out.sheet.height = height;
  out.sheet.title = printable(words_.heading + ", " + job_.name);
  const double from = head(out.sheet);
  Sheet measured = out.sheet;  // how high the foot stands is seen by setting it
  const double to = height - margin - (foot(measured, 0) - 0);
  foot(out.sheet, to);
  out.zone = {from, to - 1, width - 2 * margin};
  out.best = best_in(out.zone);
  return out;
}

// The width sets the scale, and the scale the height.
MapDrawing::Page MapDrawing::telephone_page() const {
  Page out;
  out.sheet.width = telephone_side;
  out.sheet.title = printable(words_.heading + ", " + job_.name);
  const double from = head(out.sheet), wide = extent_.aft_to - extent_.aft_from;
  const double across = telephone_side - 2 * margin - span_ruler_width - 2 * beside_face;
  const double high = strip_ ? 0 : extent_.down_to - extent_.down_from;
  const double scale = round_scale(std::max({1.0, wide / across, high / telephone_face}));
  const double face = strip_ ? strip_height : high / scale;
  out.best = {true, scale};
  const double to = from + 2 * (face + title_height + below_face) + 1;
  out.zone = {from, to - 1, telephone_side - 2 * margin};
  out.sheet.height = std::ceil(foot(out.sheet, to) + margin);
  return out;
}

MapDrawing::Page MapDrawing::page_for_paper() const {
  Page upright = page(room_.short_side, room_.long_side), lying = page(room_.long_side, room_.short_side);
  const bool lies = upright.best.scale == 0 || (lying.best.scale > 0 && lying.best.scale < upright.best.scale);
  Page out = std::move(lies ? lying : upright);
  add_text(out.sheet, {out.sheet.width - margin, margin + 6}, "scale 1 : " + trimmed(out.best.scale, 2), 4.6, Anchor::end, true);
  return out;
}

void MapDrawing::title(Sheet& sheet, const MapFrame& frame, double left, double right, double y, TextRoom& placing) const {
  const bool port = frame.face == Face::port;
  const double tip = port ? left + 1 : right - 1, way = port ? 1 : -1;
  // In the middle, or where that is too near the arrow and its word, beside them.
  const std::string side = port ? "PORT" : "STARBOARD";
  const double beside = tip + way * (10.5 + width_of("FWD", 3.4, true) + 2), room = std::abs((port ? right : left) - beside);
  const double size = size_that_fits(side, 4.2, 3, true, room), reach = beside + way * width_of(side, size, true) / 2;
  const double middle = (left + right) / 2, at = port ? std::max(middle, reach) : std::min(middle, reach);
  const Text name{{at, y}, side, size, Anchor::middle, 0, true};
  add_text(sheet, name.at, name.words, name.size, name.anchor, name.bold);
  placing.take(box_of(name));
  add_arrow(sheet, {tip + way * 9, y - 1.4}, {tip, y - 1.4}, Pen::outline);
  const Text forward{{tip + way * 10.5, y}, "FWD", 3.4, port ? Anchor::start : Anchor::end, 0, true};
  add_text(sheet, forward.at, forward.words, forward.size, forward.anchor, forward.bold);
  placing.take(box_of(forward));
}

void MapDrawing::faces(Page& page) {
  Sheet& sheet = page.sheet;
  const Zone& zone = page.zone;
  const bool stacked = page.best.stacked;
  const double scale = page.best.scale;
  if (strip_) {
    const double half = strip_height / 2 * scale;
    extent_.down_from -= half;
    extent_.down_to += half;
    map_.rows = {map_.rows.front(), map_.rows.front()};
    map_.rows[0].down -= half;
    map_.rows[1].down += half;
  }
  const double block = (stacked ? zone.width : (zone.width + span_ruler_width) / 2) - span_ruler_width;
  const double tall = (zone.bottom - zone.top) / (stacked ? 2 : 1);
  TextRoom placing(Box({margin, zone.top}, {sheet.width - margin, zone.bottom}));
  std::vector<MapFrame> frames;
  for (const Face face : {Face::port, Face::starboard}) {
    const bool second = face == Face::starboard;
    const double left = margin + (stacked ? span_ruler_width : second ? block + span_ruler_width : 0);
    const double top = zone.top + (stacked && second ? tall : 0);
    MapFrame frame{face, scale, 0, 0, extent_.aft_from, extent_.aft_to, extent_.down_from, extent_.down_to};
    frame.left = left + (block - frame.width()) / 2;
    frame.top = top + title_height + std::max(0.0, (tall - title_height - below_face - frame.height()) / 2);
    title(sheet, frame, left, left + block, std::max(top + 4, frame.top - 5), placing);
    frames.push_back(frame);
  }
  std::vector<MapFace> sides;
  for (const MapFrame& frame : frames) sides.emplace_back(map_, frame, scales_, job_.units);
  for (const MapFace& side : sides) side.hatching(sheet);
  for (const MapFace& side : sides) side.lines(sheet);
  draw_span_ruler(sheet, job_, map_, frames[0], stacked ? margin : margin + block, strip_, placing);
  if (stacked) draw_span_ruler(sheet, job_, map_, frames[1], margin, strip_, placing);
  for (const MapFace& side : sides) side.deepest(sheet, placing);
  for (const MapFace& side : sides) side.edge_names(sheet, placing);
  for (const MapFace& side : sides) side.contour_labels(sheet, placing);
  for (const MapFace& side : sides) side.depth_labels(sheet, placing, strip_);
}

Sheet MapDrawing::draw() {
  double most_add = 0, most_removal = 0;
  const auto see = [&](double depth) {
    (depth > 0 ? most_add : most_removal) = std::max(depth > 0 ? most_add : most_removal, std::abs(depth));
  };
  for (const fill::MapPlace& one : map_.readings) see(one.depth);
  for (const auto* place : {&map_.deepest_add, &map_.deepest_removal}) {
    if (*place) see((*place)->depth);
  }
  scales_ = {depth_scale(1, most_add, map_.error, job_.units), depth_scale(-1, most_removal, map_.error, job_.units)};
  Page chosen = telephone_ ? telephone_page() : page_for_paper();
  faces(chosen);
  return std::move(chosen.sheet);
}

}  // namespace

Sheet draw_highs_and_lows(const job::Job& job, const ChangeMap& map, const MapWords& words, const PaperRoom& room) {
  if (map.rows.empty()) return {words.heading, room.short_side, room.long_side, {}};
  return MapDrawing(job, map, words, room, MapDrawing::ReadOn::paper).draw();
}

Sheet draw_highs_and_lows_for_telephone(const job::Job& job, const ChangeMap& map, const MapWords& words) {
  const PaperRoom unused;
  if (map.rows.empty()) return {words.heading, telephone_side, telephone_side, {}};
  return MapDrawing(job, map, words, unused, MapDrawing::ReadOn::telephone).draw();
}

}  // namespace fairblade::drawing
