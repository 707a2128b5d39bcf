#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/plain_form.hpp"
#include "drawing/marks.hpp"
#include "drawing/worksheet_parts.hpp"

namespace fairblade::drawing {
namespace {

using job::MeasuredBy;

constexpr double nose = 15, length = 42;    // mm: where the leading edge is drawn, and the chord
constexpr double half_thick = 8;            // a fuller section than any, so that it can be seen
constexpr double board_at = 20, board = 3;  // mm from the centre plane, and how thick
constexpr double holding_type = 2.5;
constexpr double jig_centre = 31, caliper_centre = 79;
constexpr double read_at = 0.45, stock_at = 0.24;  // of the chord

/// A section's half-breadth; behind a skeg of its after part, from `begins` on, drawn as wide.
double half_at(double fraction, double begins) {
  constexpr double thickest = 0.3;  // of the whole section
  const auto whole = [](double at) { return plain_form(std::sqrt(at)); };
  return half_thick * whole(begins + (1 - begins) * fraction) / whole(std::max(thickest, begins));
}

class Holding {
 public:
  Holding(const job::StationToMeasure& station, LengthUnit units)
      : way_(station.measured_by),
        from_(station.x_from),
        units_(units),
        begins_(station.skeg > 0 ? station.skeg / (station.skeg + station.chord) : 0),
        stock_within_(station.x_from == job::XFrom::stock || !(station.ahead.value_or(station.chord) <= 0)) {}
  Sheet draw() {
    sheet_.width = 94;
    sheet_.height = holding_height;
    section(jig_centre, "jig-");
    if (way_ == MeasuredBy::thickness) batten();
    else boards();
    section(caliper_centre, "caliper-");
    calipers();
    directions();
    return std::move(sheet_);
  }

 private:
  void text(double x, double y, const std::string& words, Anchor anchor = Anchor::middle, bool bold = false, double turn = 0) {
    add_text(sheet_, {x, y}, words, holding_type, anchor, bold, turn);
  }
  void box(double left, double top, double right, double bottom, Fill fill, Pen pen = Pen::measured) {
    sheet_.items.emplace_back(Path{{{{left, top}, {right, top}, {right, bottom}, {left, bottom}}}, true, pen, fill, {}});
  }
  void section(double centre, const std::string& name) {
    std::vector<Point> outline;
    constexpr int steps = 24;
    const auto point = [&](int k, double side) {
      const double u = static_cast<double>(k) / steps;
      return Point(centre + side * half(u * u), nose + length * u * u);
    };
    for (int k = steps; k >= 0; --k) outline.push_back(point(k, -1));
    for (int k = 1; k <= steps; ++k) outline.push_back(point(k, 1));
    sheet_.items.emplace_back(Path{{outline}, true, Pen::outline, Fill::light, name + "section"});
    const bool reaches_out = centre == jig_centre && way_ != MeasuredBy::thickness;
    add_line(sheet_, {centre, nose - (reaches_out ? 9 : 3)}, {centre, nose + length + (reaches_out ? 13 : 2)}, Pen::datum);
    if (!stock_within_) return;
    std::vector<Point> ring;
    for (int k = 0; k < 24; ++k) {
      const double angle = k * std::numbers::pi / 12;
      ring.emplace_back(centre + 2.2 * std::cos(angle), stock_y() + 2.2 * std::sin(angle));
    }
    sheet_.items.emplace_back(Path{{ring}, true, Pen::measured, Fill::white, {}});
    add_dot(sheet_, {centre, stock_y()}, 0.5);
  }
  double half(double fraction) const { return half_at(fraction, begins_); }
  double read_y() const { return nose + read_at * length; }
  double stock_y() const { return nose + stock_at * length; }
  double origin_y() const {
    return from_ == job::XFrom::leading_edge ? nose : from_ == job::XFrom::stock ? stock_y() : nose + length;
  }
  /// From where x is counted to where it is read, on the port side.
  void x_dimension(double at) {
    const double origin = origin_y(), middle = (origin + read_y()) / 2;
    add_line(sheet_, {at - 2, origin}, {jig_centre - 1, origin}, Pen::guide);
    add_arrow(sheet_, {at, middle}, {at, origin}, Pen::dimension);
    add_arrow(sheet_, {at, middle}, {at, read_y()}, Pen::dimension);
    add_text_on_white(sheet_, {{at, middle + 1}, "x", 3, Anchor::middle, 0, true});
  }
  void stock() {
    if (!stock_within_) return;
    text(jig_centre + 9.5, stock_y() + 0.9, "stock", Anchor::start);
    add_line(sheet_, {jig_centre + 2.2, stock_y()}, {jig_centre + 9, stock_y()}, Pen::dimension);
  }
  void boards();
  void batten();
  void calipers();
  void directions();

  MeasuredBy way_;
  job::XFrom from_;
  LengthUnit units_;
  double begins_;      ///< share of the whole section that a skeg ahead of it is
  bool stock_within_;  ///< not ahead of the leading edge, as pintles are; also where x is counted from it
  Sheet sheet_;
};

void Holding::boards() {
  const double tail = nose + length;
  for (const double side : {-1.0, 1.0}) {
    const double inner = jig_centre + side * board_at, outer = inner + side * board, surface = jig_centre + side * half(read_at);
    box(inner, nose - 9, outer, tail + 9, Fill::light);
    text(outer + side * 2 + (side > 0 ? 1.0 : 0.9), nose + length / 2, "straight board", Anchor::middle, false, -90);
    // The square stands on the board, its blade reaches the surface.
    box(inner, read_y() - 0.8, surface, read_y() + 0.8, Fill::white);
    box(inner, read_y() - 0.8, inner - side * 1.6, read_y() + 9, Fill::white);
    const double clear_of_x = from_ == job::XFrom::trailing_edge ? -2 : 4.2;
    text((inner + surface) / 2, read_y() + clear_of_x, "gap", Anchor::middle, true);
  }
  for (const double y : {nose - 8.0, tail + 5.0}) {
    box(jig_centre - board_at, y, jig_centre + board_at, y + 3.4, Fill::white);
    text(jig_centre - 9, y + 2.6, "spacer");
  }
  x_dimension(jig_centre - 15);
  stock();
  const double y = tail + 11.5;
  add_dimension(sheet_, {jig_centre - board_at, y}, {jig_centre, y}, "board", holding_type, {});
  add_dimension(sheet_, {jig_centre, y}, {jig_centre + board_at, y}, "board", holding_type, {});
}

void Holding::batten() {
  const double left = jig_centre - 13;
  if (from_ == job::XFrom::leading_edge) {
    box(jig_centre - board_at, nose - 3, jig_centre + board_at, nose, Fill::light);
    text(jig_centre, nose - 4.2, "batten across the nose, square to it");
    box(left - 1, nose, left + 1, nose + 0.8 * length, Fill::white);
    text(left + 6, nose + 0.8 * length + 3.4, "rule, square", Anchor::end);
    text(left + 6, nose + 0.8 * length + 6.8, "to the batten", Anchor::end);
  }
  add_line(sheet_, {left - 5, read_y()}, {jig_centre + 12, read_y()}, Pen::guide);
  x_dimension(left - 4);
  text(jig_centre + 12.5, read_y() + 0.9, "calipers here", Anchor::start);
  stock();
}

void Holding::calipers() {
  const double c = caliper_centre, reach = 12.5, aft = nose + length + 4, y = read_y(), half = this->half(read_at);
  sheet_.items.emplace_back(
      Path{{{{c - half, y}, {c - reach, y + 1.5}, {c - reach, aft}, {c + reach, aft}, {c + reach, y + 1.5}, {c + half, y}}},
           false,
           Pen::cut,
           Fill::none,
           "calipers"});
  add_dot(sheet_, {c - half, y}, 0.8);
  add_dot(sheet_, {c + half, y}, 0.8);
  text(c, aft + 3.6, "calipers, at the same x");
  if (way_ == MeasuredBy::thickness) {
    text(c, aft + 7, "write what they say", Anchor::middle, true);
  } else {
    text(c, aft + 7, way_ == MeasuredBy::gaps ? "= boards - gaps," : "= port + starboard,");
    text(c, aft + 10.4, "within " + caliper_slack(units_));
  }
}

void Holding::directions() {
  const double left = jig_centre - board_at - board;
  text(left, 3.4, "PORT", Anchor::start, true);
  text(jig_centre + board_at + board, 3.4, "STARBOARD", Anchor::end, true);
  add_arrow(sheet_, {caliper_centre + 11, 11}, {caliper_centre + 11, 2}, Pen::outline);
  add_text(sheet_, {caliper_centre + 8.5, 6.5}, "FWD", 3.2, Anchor::end, true);
  add_up_mark(sheet_, {caliper_centre - 10, 6});
  add_text(sheet_, {caliper_centre - 14, 3.2}, "UP", 2.8, Anchor::end, true);
  const double under = nose + length;
  switch (way_) {
    case MeasuredBy::half_breadths:
      text(jig_centre, under + 16.4, "write half-breadth = board - gap", Anchor::middle, true);
      break;
    case MeasuredBy::gaps:
      text(jig_centre, under + 16.4, "write the gaps, and both board distances", Anchor::middle, true);
      break;
    case MeasuredBy::thickness: break;
  }
}

}  // namespace

Sheet draw_holding(const job::StationToMeasure& station, LengthUnit units) { return Holding(station, units).draw(); }

std::string caliper_slack(LengthUnit units) {
  return units == LengthUnit::inch ? "1/16 in" : units == LengthUnit::cm ? "0.2 cm" : "2 mm";
}

double height_for(Point room) { return room.y() * worksheet_width / room.x(); }

Sheet fitted_to(Point room, const Sheet& sheet) {
  Sheet out;
  out.title = sheet.title;
  out.width = room.x();
  out.height = room.y();
  const double scale = room.x() / worksheet_width;
  add_items(out, sheet, {0, 0, false, scale, scale});
  return out;
}

}  // namespace fairblade::drawing
