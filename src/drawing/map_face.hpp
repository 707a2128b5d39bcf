// Private to the drawing room. One face of a change map on its sheet: ground, hatching, outlines, lines, labels. mm.
// Verbs: shown_stations, MapFace's own.
#pragma once
#include <array>

#include "drawing/contours.hpp"
#include "drawing/depth_scale.hpp"
#include "drawing/sheet.hpp"
#include "drawing/text_room.hpp"
#include "fill/change_map.hpp"

namespace fairblade::drawing {

/// Where a face lies on the sheet, and how large.
struct MapFrame {
  fill::Face face = fill::Face::port;
  double scale = 1;                   ///< mm of blade in one of paper
  double left = 0, top = 0;           ///< mm on paper
  double aft_from = 0, aft_to = 0;    ///< mm of blade, what lies between the frame's left and right
  double down_from = 0, down_to = 0;  ///< mm of blade

  double width() const { return (aft_to - aft_from) / scale; }
  double height() const { return (down_to - down_from) / scale; }
  double y(double down) const { return top + (down - down_from) / scale; }
  /// Port has forward to the left, starboard to the right.
  double x(double aft) const { return left + (face == fill::Face::port ? aft - aft_from : aft_to - aft) / scale; }
  Point at(double aft, double down) const { return {x(aft), y(down)}; }
};

/// The stations that there is room to draw and name: nowhere nearer than 8 mm on paper; top and bottom always.
std::vector<fill::MapStation> shown_stations(const fill::ChangeMap& map, const MapFrame& frame);

class MapFace {
 public:
  MapFace(const fill::ChangeMap& map, const MapFrame& frame, const std::array<DepthScale, 2>& scales, LengthUnit unit);

  void hatching(Sheet& sheet) const;
  void lines(Sheet& sheet) const;  ///< outlines, contours, stations, stock, dots
  void edge_names(Sheet& sheet, TextRoom& placing) const;
  void deepest(Sheet& sheet, TextRoom& placing) const;
  void contour_labels(Sheet& sheet, TextRoom& placing) const;
  void depth_labels(Sheet& sheet, TextRoom& placing, bool strip) const;

 private:
  Field field(double sign) const;
  void outline(Sheet& sheet, bool old) const;
  const fill::MapRow& nearest_row(double down) const;
  bool stock_shown() const;
  bool shown(const fill::MapPlace& place) const;
  std::string id(const char* what) const;

  const fill::ChangeMap& map_;
  const MapFrame frame_;
  const std::array<DepthScale, 2>& scales_;
  LengthUnit unit_;
  std::vector<fill::MapStation> stations_;
};

}  // namespace fairblade::drawing
