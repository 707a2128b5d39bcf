#include "drawing/plot.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_linestring.hpp>
#include <cmath>

#include "base/text.hpp"
#include "drawing/hatch.hpp"
#include "drawing/marks.hpp"
#include "drawing/round_step.hpp"

namespace bg = boost::geometry;

namespace fairblade::drawing {
namespace {

std::vector<Point> corners_of(const Box& box) {
  const Point &a = box.min_corner(), &b = box.max_corner();
  return {a, {b.x(), a.y()}, b, {a.x(), b.y()}};
}

}  // namespace

Plot::Plot(Sheet& sheet, Box frame, Axis across, Axis up, double type)
    : sheet_(sheet), frame_(frame), across_(std::move(across)), up_(std::move(up)), type_(type) {}

Point Plot::at(double x, double y) const {
  const Point &a = frame_.min_corner(), &b = frame_.max_corner();
  return {a.x() + (x - across_.from) / (across_.to - across_.from) * (b.x() - a.x()),
          b.y() - (y - up_.from) / (up_.to - up_.from) * (b.y() - a.y())};
}

std::vector<std::pair<double, std::string>> Plot::ticks_of(const Axis& axis, double length, double room) {
  if (!axis.ticks.empty()) return axis.ticks;
  const double step = round_step(room * (axis.to - axis.from) / length);
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
  std::vector<std::pair<double, std::string>> out;
  for (double k = std::ceil(axis.from / step - 1e-9); k * step <= axis.to + 1e-9 * step; ++k) {
    out.emplace_back(k * step, fixed(k * step, decimals));
  }
  return out;
}

void Plot::axes() {
  sheet_.items.emplace_back(Path{{corners_of(frame_)}, true, Pen::dimension, Fill::none, {}});
  const Point &a = frame_.min_corner(), &b = frame_.max_corner();
  Path ticks{{}, false, Pen::dimension, Fill::none, {}};
  for (const auto& [value, words] : ticks_of(across_, b.x() - a.x(), 5.5 * type_)) {
    const double x = at(value, up_.from).x();
    ticks.runs.push_back({{x, b.y()}, {x, b.y() + 1}});
    add_text(sheet_, {x, b.y() + 1.6 + type_}, words, type_, Anchor::middle);
  }
  for (const auto& [value, words] : ticks_of(up_, b.y() - a.y(), 2.2 * type_)) {
    const double y = at(across_.from, value).y();
    ticks.runs.push_back({{a.x() - 1, y}, {a.x(), y}});
    add_text(sheet_, {a.x() - 1.6, y + 0.36 * type_}, words, type_, Anchor::end);
  }
  sheet_.items.emplace_back(std::move(ticks));
  if (up_.from < 0 && up_.to > 0) add_line(sheet_, at(across_.from, 0), at(across_.to, 0), Pen::dimension);
  if (!across_.name.empty()) {
    add_text(sheet_, {(a.x() + b.x()) / 2, b.y() + 2.4 + 2.3 * type_}, across_.name, type_, Anchor::middle);
  }
  if (!up_.name.empty()) {
    add_text(sheet_, {a.x() - left_of_frame + 0.97 * type_, (a.y() + b.y()) / 2}, up_.name, type_, Anchor::middle, false, -90);
  }
}

void Plot::line(const std::vector<Point>& values, Pen pen, const std::string& id) {
  Polyline whole;
  for (const Point& p : values) whole.push_back(at(p.x(), p.y()));
  bg::model::multi_linestring<Polyline> pieces;
  bg::intersection(thinned(whole, 0.01), polygon_of(corners_of(frame_)), pieces);
  Path path{{}, false, pen, Fill::none, id};
  for (const Polyline& piece : pieces) path.runs.emplace_back(piece.begin(), piece.end());
  sheet_.items.emplace_back(std::move(path));
}

void Plot::band(const std::vector<Point>& low, const std::vector<Point>& high, double spacing, bool rising) {
  std::vector<Point> ring;
  for (const Point& p : low) ring.push_back(at(p.x(), p.y()));
  for (std::size_t k = high.size(); k-- > 0;) ring.push_back(at(high[k].x(), high[k].y()));
  if (ring.size() < 4) return;
  MultiPolygon inside = intersection({polygon_of(ring)}, {polygon_of(corners_of(frame_))});
  sheet_.items.emplace_back(hatch(inside, spacing, rising));
}

}  // namespace fairblade::drawing
