#include "pages/clip.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>
#include <numeric>

#include "drawing/lettering.hpp"

namespace bg = boost::geometry;

namespace fairblade::pages {
namespace {

using drawing::Box;
using drawing::Path;
using drawing::stand_apart;
using drawing::Text;
using drawing::within;
using Runs = std::vector<std::vector<Point>>;

double shared_area(const Box& a, const Box& b) {
  const double w = std::min(a.max_corner().x(), b.max_corner().x()) - std::max(a.min_corner().x(), b.min_corner().x());
  const double h = std::min(a.max_corner().y(), b.max_corner().y()) - std::max(a.min_corner().y(), b.min_corner().y());
  return w > 0 && h > 0 ? w * h : 0;
}

Runs clipped_lines(const Path& path, const Box& box) {
  Runs out;
  for (const auto& run : path.runs) {
    Polyline line(run.begin(), run.end());
    if (path.closed && !run.empty()) line.push_back(run.front());
    boost::geometry::model::multi_linestring<Polyline> parts;
    bg::intersection(line, box, parts);
    for (const Polyline& part : parts) out.emplace_back(part.begin(), part.end());
  }
  return out;
}

Runs clipped_areas(const Path& path, const Box& box) {
  Runs out;
  for (const auto& run : path.runs) {
    MultiPolygon parts;
    bg::intersection(polygon_of(run), box, parts);
    for (const Polygon& part : parts) out.emplace_back(part.outer().begin(), part.outer().end());
  }
  return out;
}

/// How far a box must be moved to lie within a window; it is no larger than that.
Point into(const Box& box, const Box& window) {
  const auto shift = [](double from, double to, double low, double high) {
    return from < low ? low - from : to > high ? high - to : 0;
  };
  return {shift(box.min_corner().x(), box.max_corner().x(), window.min_corner().x(), window.max_corner().x()),
          shift(box.min_corner().y(), box.max_corner().y(), window.min_corner().y(), window.max_corner().y())};
}

bool free_of(const Text& text, const Box& window, const std::vector<Text>& others) {
  const Box box = box_of(text);
  return within(box, window) &&
         std::all_of(others.begin(), others.end(), [&](const Text& other) { return stand_apart(box, box_of(other)); });
}

/// The nearest free place in the window along the text's own direction, or across it.
bool slide(Text& text, const Box& window, const std::vector<Text>& others) {
  const Point shift = into(box_of(text), window);
  text.at = Point(text.at.x() + shift.x(), text.at.y() + shift.y());
  if (free_of(text, window, others)) return true;
  const bool upright = std::abs(std::fmod(std::abs(text.turn), 180) - 90) < 1;
  for (const bool across : {false, true}) {
    for (int step = 1; step <= 400; ++step) {
      for (const double way : {1.0, -1.0}) {
        Text tried = text;
        const double by = way * 0.5 * step;
        const bool in_y = upright != across;
        tried.at = Point(text.at.x() + (in_y ? 0 : by), text.at.y() + (in_y ? by : 0));
        if (!free_of(tried, window, others)) continue;
        text = tried;
        return true;
      }
    }
  }
  return false;
}

void shorten_to(Text& text, const Box& window) {
  const bool upright = std::abs(std::fmod(std::abs(text.turn), 180) - 90) < 1;
  const double room =
      upright ? window.max_corner().y() - window.min_corner().y() : window.max_corner().x() - window.min_corner().x();
  text.words = drawing::shortened(text.words, text.size, text.bold, room - 1);
}

}  // namespace

Path clipped(const Path& path, const Box& box) {
  Path out = path;
  if (path.closed && path.fill != drawing::Fill::none) {
    out.runs = clipped_areas(path, box);
    return out;
  }
  out.runs = clipped_lines(path, box);
  out.closed = false;
  return out;
}

std::vector<std::vector<Text>> share_out(const std::vector<Text>& texts, const std::vector<Box>& windows) {
  std::vector<std::vector<Text>> out(windows.size());
  std::vector<Text> homeless;
  for (const Text& text : texts) {
    bool held = false;
    for (std::size_t k = 0; k < windows.size(); ++k) {
      if (!within(box_of(text), windows[k])) continue;
      out[k].push_back(text);
      held = true;
    }
    if (!held) homeless.push_back(text);
  }
  for (const Text& text : homeless) {
    std::vector<std::size_t> order(windows.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const Box box = box_of(text);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return shared_area(box, windows[a]) > shared_area(box, windows[b]); });
    for (const std::size_t k : order) {
      if (shared_area(box, windows[k]) <= 0) break;
      Text moved = text;
      shorten_to(moved, windows[k]);
      if (!slide(moved, windows[k], out[k])) continue;
      out[k].push_back(moved);
      break;
    }
  }
  return out;
}

}  // namespace fairblade::pages
