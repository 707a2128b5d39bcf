#include "drawing/hatch.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::drawing {
namespace {

constexpr double root_half = 0.70710678118654752440;
constexpr double least_run = 0.02;  // mm: shorter strokes are not drawn

struct Crossing {
  long line;
  double x;
};

/// Where the lines sum = k * step cross a ring; `sum` is x + y on a rising line (y runs down the paper), x - y on a
/// falling one. An edge owns its lower end and not its upper one, so that a corner on a line counts once, or twice.
void add_crossings(const Polygon::ring_type& ring, double step, double sense, std::vector<Crossing>& out) {
  for (std::size_t k = 1; k < ring.size(); ++k) {
    const Point* low = &ring[k - 1];
    const Point* high = &ring[k];
    const auto sum = [sense](const Point& p) { return p.x() + sense * p.y(); };
    if (sum(*low) > sum(*high)) std::swap(low, high);
    const double from = sum(*low), to = sum(*high);
    double line = std::ceil(from / step);
    if (line * step < from) ++line;
    if ((line - 1) * step >= from) --line;
    for (; line * step < to; ++line) {
      const double share = (line * step - from) / (to - from);
      out.push_back({static_cast<long>(line), low->x() + share * (high->x() - low->x())});
    }
  }
}

void hatch_one(const Polygon& area, double step, double sense, Path& path) {
  std::vector<Crossing> crossings;
  add_crossings(area.outer(), step, sense, crossings);
  for (const auto& hole : area.inners()) add_crossings(hole, step, sense, crossings);
  std::sort(crossings.begin(), crossings.end(),
            [](const Crossing& a, const Crossing& b) { return a.line != b.line ? a.line < b.line : a.x < b.x; });
  // A line comes in and goes out by turns.
  for (std::size_t k = 0; k + 1 < crossings.size(); k += 2) {
    const Crossing &in = crossings[k], &out = crossings[k + 1];
    if ((out.x - in.x) / root_half <= least_run) continue;
    const double sum = static_cast<double>(in.line) * step;
    path.runs.push_back({Point(in.x, sense * (sum - in.x)), Point(out.x, sense * (sum - out.x))});
  }
}

}  // namespace

Path hatch(const MultiPolygon& area, double spacing, bool rising) {
  Path path;
  path.pen = Pen::hatch;
  for (const Polygon& each : area) hatch_one(each, spacing / root_half, rising ? 1 : -1, path);
  return path;
}

}  // namespace fairblade::drawing
