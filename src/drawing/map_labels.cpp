// The words on a face of a change map, placed where there is room.
#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>
#include <numbers>

#include "base/polyline.hpp"
#include "drawing/map_face.hpp"
#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

constexpr double label = 2.4, contour_label = 2.3, edge_label = 2.6, deepest_label = 2.9;  // mm of type
constexpr double ring_radius = 2;                                                          // mm

void add_ring(Sheet& sheet, Point centre) {
  std::vector<Point> ring;
  for (int k = 0; k < 32; ++k) {
    const double angle = k * std::numbers::pi / 16;
    ring.emplace_back(centre.x() + ring_radius * std::cos(angle), centre.y() + ring_radius * std::sin(angle));
  }
  sheet.items.emplace_back(Path{{ring}, true, Pen::cut, Fill::none, {}});
}

/// Places for a label about a point, the best first.
std::vector<Text> about(Point p, const std::string& words, double size, bool bold, double reach) {
  const double middle = 0.36 * size;
  std::vector<Text> out;
  const auto text = [&](double dx, double dy, Anchor anchor) {
    out.push_back({{p.x() + dx, p.y() + dy}, words, size, anchor, 0, bold});
  };
  text(0, -reach - 0.1 * size, Anchor::middle);
  text(0, reach + 0.8 * size, Anchor::middle);
  text(reach, middle, Anchor::start);
  text(-reach, middle, Anchor::end);
  for (const double dx : {0.7 * reach, -0.7 * reach}) {
    const Anchor anchor = dx > 0 ? Anchor::start : Anchor::end;
    text(dx, -0.7 * reach, anchor);
    text(dx, 0.7 * reach + 0.7 * size, anchor);
  }
  return out;
}

}  // namespace

void MapFace::edge_names(Sheet& sheet, TextRoom& placing) const {
  for (const bool aft : {false, true}) {
    for (const double part : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
      const double down = frame_.down_from + part * (frame_.down_to - frame_.down_from);
      const fill::MapRow& row = nearest_row(down);
      const double edge = frame_.x(aft ? row.back() : row.front());
      const bool left = aft != (frame_.face == fill::Face::port);
      // Turned to read upwards: its baseline is its right side.
      const double x = left ? edge - 1.2 : edge + 1.2 + 0.95 * edge_label;
      if (placing.put(sheet,
                      {{x, frame_.y(down)}, aft ? "trailing edge" : "leading edge", edge_label, Anchor::middle, -90, false}))
        break;
    }
  }
  if (stock_shown()) {
    placing.put(sheet, {{frame_.x(0), frame_.top + frame_.height() + 4.6}, "stock", edge_label, Anchor::middle, 0, false});
  }
}

void MapFace::deepest(Sheet& sheet, TextRoom& placing) const {
  for (const auto* place : {&map_.deepest_removal, &map_.deepest_add}) {
    if (!*place || ((*place)->face != frame_.face && !(*place)->both)) continue;
    const Point p = frame_.at((*place)->aft, (*place)->down);
    add_ring(sheet, p);
    const std::string words = ((*place)->depth > 0 ? "lowest " : "highest ") + signed_depth((*place)->depth, unit_);
    auto places = about(p, words, deepest_label, true, ring_radius + 0.8);
    for (const double up : {-6.0, 6.0}) places.push_back({{p.x(), p.y() + up}, words, deepest_label, Anchor::middle, 0, true});
    for (const Text& text : places) {
      if (placing.put(sheet, text)) break;
    }
    placing.take(Box({p.x() - 1, p.y() - 1}, {p.x() + 1, p.y() + 1}));
  }
}

void MapFace::contour_labels(Sheet& sheet, TextRoom& placing) const {
  constexpr double worth_naming = 12, worth_naming_again = 70;  // mm of line
  struct Line {
    std::vector<Point> points;
    std::string words;
    double length;
  };
  std::vector<Line> all;
  for (const DepthScale& scale : scales_) {
    const Field depths = field(scale.sign);
    for (const double level : scale.lines) {
      const std::string words = (scale.sign > 0 ? "+" : minus) + round_depth(level, unit_);
      for (auto& line : contour_lines(depths, level + 1e-9)) {
        const double length = length_of(line);
        all.push_back({std::move(line), words, length});
      }
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const Line& a, const Line& b) { return a.length > b.length; });
  // A name that lies on other lines too would name none.
  const auto alone = [&](const Text& text, const Line& own) {
    const Box box = box_of(text);
    return std::none_of(all.begin(), all.end(), [&](const Line& other) {
      return &other != &own && boost::geometry::intersects(Polyline(other.points.begin(), other.points.end()), box);
    });
  };
  for (const Line& line : all) {
    if (line.length < worth_naming) break;
    int names = line.length < worth_naming_again ? 1 : 2;
    for (const double part : {0.3, 0.7, 0.5, 0.15, 0.85, 0.4, 0.6}) {
      const Point& p = line.points[static_cast<std::size_t>(part * static_cast<double>(line.points.size() - 1))];
      const Text text{{p.x(), p.y() + 0.36 * contour_label}, line.words, contour_label, Anchor::middle, 0, true};
      if (alone(text, line) && placing.put(sheet, text) && --names == 0) break;
    }
  }
}

void MapFace::depth_labels(Sheet& sheet, TextRoom& placing, bool strip) const {
  std::vector<const fill::MapPlace*> places;
  for (const fill::MapPlace& one : map_.readings) {
    if (shown(one)) places.push_back(&one);
  }
  std::stable_sort(places.begin(), places.end(),
                   [](const auto* a, const auto* b) { return std::abs(a->depth) > std::abs(b->depth); });
  for (const fill::MapPlace* one : places) {
    const Point p = frame_.at(one->aft, one->down);
    const std::string words = signed_depth(one->depth, unit_) + (one->doubtful ? " ?" : "");
    auto candidates = about(p, words, label, false, 1);
    const std::size_t near = candidates.size();
    if (strip) {
      for (const double far : {4.0, 7.0, 10.0}) {
        for (const double way : {-1.0, 1.0})
          candidates.push_back({{p.x(), p.y() + way * far + 0.36 * label}, words, label, Anchor::middle, 0, false});
      }
    }
    for (std::size_t k = 0; k < candidates.size(); ++k) {
      if (!placing.fits(candidates[k])) continue;
      if (k >= near) add_line(sheet, p, {p.x(), candidates[k].at.y() - 0.36 * label}, Pen::dimension);
      placing.put(sheet, candidates[k]);
      break;
    }
  }
}

}  // namespace fairblade::drawing
