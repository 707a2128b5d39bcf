// Product of the drawing room: a Sheet, shapes and texts in millimetres, y downwards as on paper. Verbs: add_items.
#pragma once
#include <boost/geometry/geometries/box.hpp>
#include <string>
#include <variant>
#include <vector>

#include "base/geometry.hpp"

namespace fairblade::drawing {

using Box = boost::geometry::model::box<Point>;

/// How a line is drawn. A grey printer must tell them apart: by width and dash, never by colour alone.
enum class Pen {
  cut,        ///< the line to cut along: solid, 0.5 mm
  outline,    ///< solid, 0.35 mm
  measured,   ///< the blade as it is: thin solid, 0.25 mm
  guide,      ///< thin dashes, 0.18 mm
  datum,      ///< long-short dashes, 0.25 mm: chord line and stock line
  hatch,      ///< 0.13 mm
  dimension,  ///< 0.13 mm
  none
};
enum class Fill { none, white, light, dark };  ///< white hides what is under it
enum class Anchor { start, middle, end };

struct Path {
  std::vector<std::vector<Point>> runs;  ///< each a polyline
  bool closed = false;
  Pen pen = Pen::outline;
  Fill fill = Fill::none;
  std::string id;  ///< stable name in the SVG (letters, digits, '-'), unique on its sheet, or empty
};
struct Text {
  Point at;  ///< on the baseline
  std::string words;
  double size = 3;  ///< mm, the type's em
  Anchor anchor = Anchor::start;
  double turn = 0;  ///< degrees clockwise about `at`
  bool bold = false;
};
using Item = std::variant<Path, Text>;

struct Sheet {
  std::string title;
  double width = 0, height = 0;  ///< mm
  std::vector<Item> items;       ///< painted in this order
};

/// How an item is carried over to another sheet: turned a quarter to the left about the origin where `turned`
/// (x' = y, y' = -x), then stretched, then moved.
struct Placing {
  double dx = 0, dy = 0;  ///< mm
  bool turned = false;
  double stretch_x = 1, stretch_y = 1;  ///< type is scaled by the lesser
};
Point placed(Point point, const Placing& placing);
Item placed(Item item, const Placing& placing);
/// All of `from`, moved; names get `prefix` before them.
void add_items(Sheet& sheet, Sheet from, const Placing& placing, const std::string& prefix = {});

/// mm that the words run, from an advance table of a wide sans-serif typeface: an estimate that errs on wide.
double width_of(const std::string& words, double size, bool bold);
/// The box that a text covers, upright or turned; a wide estimate.
Box box_of(const Text& text);
/// At least `gap` mm between two boxes, one beside or above the other.
bool stand_apart(const Box& a, const Box& b, double gap = 0);
/// To a rounding.
bool within(const Box& inner, const Box& outer);

}  // namespace fairblade::drawing
