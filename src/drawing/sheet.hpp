// Product of the drawing room: a Sheet, shapes and texts in millimetres, y downwards as on paper.
#pragma once
#include <string>
#include <variant>
#include <vector>

#include "base/geometry.hpp"

namespace fairblade::drawing {

/// How a line is drawn. A grey printer must tell them apart: by width and dash, never by colour alone.
enum class Pen {
  cut,       ///< the line to cut along: solid, 0.5 mm
  outline,   ///< solid, 0.35 mm
  measured,  ///< the blade as it is: thin solid, 0.25 mm
  guide,     ///< thin dashes, 0.18 mm
  datum,     ///< long-short dashes, 0.25 mm: chord line and stock line
  hatch,     ///< 0.13 mm
  dimension, ///< 0.13 mm
  none
};
enum class Fill { none, white, light, dark };  ///< white hides what is under it
enum class Anchor { start, middle, end };

struct Path {
  std::vector<std::vector<Point>> runs;  ///< each a polyline
  bool closed = false;
  Pen pen = Pen::outline;
  Fill fill = Fill::none;
  std::string id;  ///< stable name in the SVG, or empty
};
struct Text {
  Point at;
  std::string words;
  double size = 3;        ///< mm, height of the type
  Anchor anchor = Anchor::start;
  double turn = 0;        ///< degrees clockwise
  bool bold = false;
};
using Item = std::variant<Path, Text>;

struct Sheet {
  std::string title;
  double width = 0, height = 0;  ///< mm
  std::vector<Item> items;       ///< painted in this order
};

/// The box that a text covers, from an advance table of the sheet's typeface (a wide estimate).
boost::geometry::model::box<Point> box_of(const Text& text);

}  // namespace fairblade::drawing
