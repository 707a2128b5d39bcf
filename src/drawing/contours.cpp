#include "drawing/contours.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cassert>
#include <cmath>

namespace bg = boost::geometry;

namespace fairblade::drawing {
namespace {

constexpr double least_area = 0.02;  // mm², pieces below it are rounding
constexpr std::size_t none = static_cast<std::size_t>(-1);

// The same field with a ring round it of places that repeat its rim and lie below any level, so that every line closes.
Field ringed(const Field& field) {
  const std::size_t rows = field.rows(), columns = field.columns;
  Field out;
  out.columns = columns + 2;
  for (std::size_t r = 0; r < rows + 2; ++r) {
    for (std::size_t c = 0; c < columns + 2; ++c) {
      const std::size_t row = std::clamp<std::size_t>(r, 1, rows) - 1, column = std::clamp<std::size_t>(c, 1, columns) - 1;
      const std::size_t at = row * columns + column;
      const bool rim = r == 0 || c == 0 || r == rows + 1 || c == columns + 1;
      out.places.push_back(field.places[at]);
      out.values.push_back(rim ? -1e12 : field.values[at]);
    }
  }
  return out;
}

// Lines at one level as links from one crossed side of a cell to the next, the higher values on their right (y
// downwards, rows downwards, columns to the right). Side 2k runs from node k to the right, side 2k + 1 downwards.
class Tracer {
 public:
  Tracer(const Field& field, double level) : field_(ringed(field)), level_(level) {
    next_.assign(2 * field_.places.size(), none);
    for (std::size_t r = 0; r + 1 < field_.rows(); ++r) {
      for (std::size_t c = 0; c + 1 < field_.columns; ++c) cell(r, c);
    }
  }
  /// Closed rings, as crossed sides.
  std::vector<std::vector<std::size_t>> rings() const;
  Point point(std::size_t side) const;
  /// Does the link between these two sides run along the field's rim? Every link in the ring's own cells has such a
  /// side.
  bool on_rim(std::size_t from, std::size_t to) const { return in_ring(from) || in_ring(to); }

 private:
  void cell(std::size_t r, std::size_t c);
  bool high(std::size_t node) const { return field_.values[node] >= level_; }
  bool is_rim(std::size_t node) const {
    const std::size_t r = node / field_.columns, c = node % field_.columns;
    return r == 0 || c == 0 || r + 1 == field_.rows() || c + 1 == field_.columns;
  }
  std::size_t end_of(std::size_t side) const { return side / 2 + (side % 2 == 0 ? 1 : field_.columns); }
  bool in_ring(std::size_t side) const { return is_rim(side / 2) || is_rim(end_of(side)); }

  Field field_;
  double level_;
  std::vector<std::size_t> next_;
};

void Tracer::cell(std::size_t r, std::size_t c) {
  const std::size_t node = r * field_.columns + c, below = node + field_.columns;
  const std::size_t top = 2 * node, left = 2 * node + 1, right = 2 * (node + 1) + 1, bottom = 2 * below;
  const int which = 8 * high(node) + 4 * high(node + 1) + 2 * high(below + 1) + high(below);
  const auto link = [&](std::size_t from, std::size_t to) { next_[from] = to; };
  const auto joined = [&] {
    const auto& v = field_.values;
    return v[node] + v[node + 1] + v[below + 1] + v[below] >= 4 * level_;
  };
  switch (which) {
    case 8: return link(top, left);
    case 4: return link(right, top);
    case 2: return link(bottom, right);
    case 1: return link(left, bottom);
    case 7: return link(left, top);
    case 11: return link(top, right);
    case 13: return link(right, bottom);
    case 14: return link(bottom, left);
    case 12: return link(right, left);
    case 3: return link(left, right);
    case 6: return link(bottom, top);
    case 9: return link(top, bottom);
    case 10: link(top, joined() ? right : left); return link(bottom, joined() ? left : right);
    case 5: link(left, joined() ? top : bottom); return link(right, joined() ? bottom : top);
    default: return;
  }
}

Point Tracer::point(std::size_t side) const {
  const std::size_t a = side / 2, b = end_of(side);
  const double w = (level_ - field_.values[a]) / (field_.values[b] - field_.values[a]);
  const Point &p = field_.places[a], &q = field_.places[b];
  return {p.x() + w * (q.x() - p.x()), p.y() + w * (q.y() - p.y())};
}

std::vector<std::vector<std::size_t>> Tracer::rings() const {
  std::vector<std::vector<std::size_t>> out;
  std::vector<bool> seen(next_.size(), false);
  for (std::size_t start = 0; start < next_.size(); ++start) {
    if (next_[start] == none || seen[start]) continue;
    std::vector<std::size_t> ring;
    for (std::size_t side = start; !seen[side]; side = next_[side]) {
      seen[side] = true;
      ring.push_back(side);
      assert(next_[side] != none);
    }
    out.push_back(std::move(ring));
  }
  return out;
}

}  // namespace

std::vector<std::vector<Point>> contour_lines(const Field& field, double level) {
  std::vector<std::vector<Point>> out;
  if (field.rows() < 2) return out;
  const Tracer tracer(field, level);
  for (const auto& ring : tracer.rings()) {
    // Begin behind a piece of rim, if there is one, so that no line is cut at the ring's arbitrary start.
    const std::size_t count = ring.size();
    std::size_t first = 0;
    while (first < count && !tracer.on_rim(ring[first], ring[(first + 1) % count])) ++first;
    const bool whole = first == count;
    std::vector<Point> line;
    for (std::size_t k = 0; k <= count; ++k) {
      const std::size_t from = ring[(first + k) % count], to = ring[(first + k + 1) % count];
      if (!whole && tracer.on_rim(from, to)) {
        if (line.size() > 1) out.push_back(line);
        line.clear();
        continue;
      }
      if (line.empty()) line.push_back(tracer.point(from));
      if (k < count) line.push_back(tracer.point(to));
    }
    if (line.size() > 1) out.push_back(line);
  }
  return out;
}

MultiPolygon area_above(const Field& field, double level) {
  MultiPolygon out;
  if (field.rows() < 2) return out;
  const Tracer tracer(field, level);
  struct Ring {
    Polygon polygon;
    double signed_area = 0;
  };
  std::vector<Ring> rings;
  for (const auto& ring : tracer.rings()) {
    std::vector<Point> corners;
    for (const std::size_t side : ring) corners.push_back(tracer.point(side));
    double sum = 0;
    for (std::size_t k = 0; k < corners.size(); ++k) {
      const Point &p = corners[k], &q = corners[(k + 1) % corners.size()];
      sum += (p.x() * q.y() - q.x() * p.y()) / 2;
    }
    if (std::abs(sum) >= least_area) rings.push_back({polygon_of(corners), sum});
  }
  std::sort(rings.begin(), rings.end(),
            [](const Ring& a, const Ring& b) { return std::abs(a.signed_area) > std::abs(b.signed_area); });
  // The greatest ring is an outer one, and holes run the other way; each belongs to the least outer ring about it.
  for (Ring& ring : rings) {
    if (ring.signed_area * rings.front().signed_area > 0) {
      out.push_back(std::move(ring.polygon));
      continue;
    }
    for (std::size_t k = out.size(); k-- > 0;) {
      Polygon filled;
      filled.outer() = out[k].outer();
      if (!bg::covered_by(ring.polygon.outer()[ring.polygon.outer().size() / 2], filled)) continue;
      out[k].inners().emplace_back(ring.polygon.outer().rbegin(), ring.polygon.outer().rend());
      break;
    }
  }
  return out;
}

}  // namespace fairblade::drawing
