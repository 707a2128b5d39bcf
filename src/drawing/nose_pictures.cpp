#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/polyline.hpp"
#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/nose_table.hpp"

namespace fairblade::drawing {
namespace {

using fill::Nose;
using section::Face;

constexpr double caption = 5, lettered = 2.5;

/// A window onto the nose: forward to the left, starboard up, enlarged to fill it.
class View {
 public:
  struct Window {
    double from, to, up, down;  ///< mm aft of the leading edge; mm to port
  };
  View(Sheet& sheet, const Window& window, double width, double height) : sheet_(sheet), window_(window) {
    const double high = window.down - window.up, wide = window.to - window.from;
    scale_ = std::min((width - 2) / wide, (height - caption - 2) / high);
    left_ = (width - scale_ * wide) / 2 - scale_ * window.from;
    centre_ = caption + (height - caption - scale_ * high) / 2 - scale_ * window.up;
    sheet.width = width;
    sheet.height = height;
    add_line(sheet_, at(window.from, 0), at(window.to, 0), Pen::datum, "chord");
  }
  Point at(double s, double y_to_port) const { return {left_ + scale_ * s, centre_ + scale_ * y_to_port}; }
  void face(const Nose& nose, Face face) {
    Path path{{{}}, false, Pen::outline, Fill::none, section::name_of(face)};
    for (const Point& p : nose.section.line(face)) {
      const double s = p.x() - nose.section.leading_edge_x;
      if (s <= window_.to) path.runs.back().push_back(at(s, section::sign_of(face) * p.y()));
    }
    sheet_.items.emplace_back(path);
  }

 private:
  Sheet& sheet_;
  Window window_;
  double scale_ = 1, left_ = 0, centre_ = 0;
};

double half_at(const Nose& nose, double s) {
  const double x = nose.section.leading_edge_x + s;
  return std::max(ordinate_at(nose.section.port, x), ordinate_at(nose.section.starboard, x));
}

/// The strip's quarter arc on the port side, mirrored to starboard: from one hold round the tip to the other.
/// With theta the angle from parallel, ahead = 2r sqrt(sin), across = r times the integral of sqrt(sin).
std::vector<Point> bent_strip(const View& view, double hold, double gap, double middle) {
  const double r = gap / fill::gap_per_radius;
  constexpr int steps = 240;
  std::vector<Point> arc;  // from the hold to the tip: mm ahead, and inwards in radii, for a gap of nothing has none
  double inwards = 0, last = 0;
  for (int k = 0; k <= steps; ++k) {
    const double theta = std::numbers::pi / 2 * k / steps, root = std::sqrt(std::sin(theta));
    if (k > 0) inwards += (root + last) / 2 * (std::numbers::pi / 2 / steps);
    last = root;
    arc.emplace_back(2 * r * root, inwards);
  }
  const double tip = arc.back().y();
  std::vector<Point> out;
  for (const Point& p : arc) out.push_back(view.at(hold - p.x(), middle + gap / 2 * (1 - p.y() / tip)));
  for (auto p = arc.rbegin(); p != arc.rend(); ++p) {
    out.push_back(view.at(hold - p->x(), middle - gap / 2 * (1 - p->y() / tip)));
  }
  return out;
}

}  // namespace

Sheet draw_flats(const Nose& nose, double width, double height) {
  Sheet sheet;
  std::vector<fill::Flat> flats;
  for (const auto& flat : nose.flats[1]) {
    if (flat) flats.push_back(*flat);
  }
  const double aft = flats.empty() ? nose.tail : std::min(1.25 * flats.back().x, nose.chord);
  const double half = half_at(nose, aft);
  View view(sheet, {-0.3 * aft, aft, -1.3 * half, 0.06 * half}, width, height);
  add_text(sheet, {0, 3.4},
           "Flats that touch the nose " + shortened(where_words(nose.name, nose.station.has_value()), 2.7, false, width - 40),
           2.7);
  view.face(nose, Face::starboard);
  // The nose as planed: each flat as far as the next.
  Path planed{{{}}, false, Pen::measured, Fill::none, "planed"};
  std::vector<Point>& run = planed.runs.back();
  const auto slope = [](const fill::Flat& flat) { return std::tan(flat.degrees * std::numbers::pi / 180); };
  for (std::size_t k = 0; k < flats.size(); ++k) {
    const fill::Flat& flat = flats[k];
    const double before = k > 0 ? slope(flats[k - 1]) : 0;
    // Where its line leaves the chord line, or the flat before it.
    const double s = k == 0 ? flat.x - flat.half_breadth / slope(flat)
                            : (flat.half_breadth - slope(flat) * flat.x - flats[k - 1].half_breadth + before * flats[k - 1].x) /
                                  (before - slope(flat));
    run.push_back(view.at(s, -(flat.half_breadth + slope(flat) * (s - flat.x))));
    const Point touch = view.at(flat.x, -flat.half_breadth);
    const double angle = flat.degrees * std::numbers::pi / 180;
    add_dot(sheet, touch, 0.6);
    add_text(sheet, {touch.x() - 2.4 * std::sin(angle) - 0.4, touch.y() - 2.4 * std::cos(angle)},
             trimmed(flat.degrees, 0) + "\xc2\xb0", lettered, Anchor::end);
  }
  if (!flats.empty()) run.push_back(view.at(aft, -(flats.back().half_breadth + slope(flats.back()) * (aft - flats.back().x))));
  sheet.items.emplace_back(planed);
  return sheet;
}

Sheet draw_flexible_sheet(const Nose& nose, double width, double height) {
  Sheet sheet;
  const fill::Hold& hold = nose.hold;
  const double aft = 1.15 * std::max(hold.x, nose.tail),
               half = std::max(1.3 * std::max(half_at(nose, aft), hold.gap / 2), 0.25 * aft);
  View view(sheet, {-0.2 * aft, aft, -half, half}, width, height);
  add_text(sheet, {0, 3.4}, "The sheet held at its place, and too far aft", 2.7);
  view.face(nose, Face::port);
  view.face(nose, Face::starboard);
  const auto middle = [&](double s) {
    const double x = nose.section.leading_edge_x + s;
    return (ordinate_at(nose.section.port, x) - ordinate_at(nose.section.starboard, x)) / 2;
  };
  sheet.items.emplace_back(Path{{bent_strip(view, hold.x, hold.gap, middle(hold.x))}, false, Pen::cut, Fill::none, "held-right"});
  sheet.items.emplace_back(
      Path{{bent_strip(view, nose.tail, hold.end_gap, middle(nose.tail))}, false, Pen::guide, Fill::none, "held-too-far"});
  // One label above, one below, for the two places may be near each other.
  const auto label = [&](double s, double side, const std::string& words) {
    const double far = 0.9 * half;
    add_line(sheet, view.at(s, -far), view.at(s, far), Pen::dimension);
    add_text(sheet, {view.at(s, 0).x() - 0.8, view.at(0, side * far).y() + (side < 0 ? 2.2 : 0)}, words, lettered, Anchor::end);
  };
  label(hold.x, -1, "hold here");
  label(nose.tail, 1, "not here");
  return sheet;
}

}  // namespace fairblade::drawing
