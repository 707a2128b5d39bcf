#include "drawing/map_face.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>

#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

constexpr double beyond_edge = 3;    // mm that station lines run past the edges
constexpr double seen_apart = 0.15;  // mm on paper: outlines nearer than this are one
constexpr double dot = 0.35;         // mm

std::vector<Point> thin(const std::vector<Point>& line) {
  const Polyline out = thinned(Polyline(line.begin(), line.end()), 0.03);
  return {out.begin(), out.end()};
}

}  // namespace

std::vector<fill::MapStation> shown_stations(const fill::ChangeMap& map, const MapFrame& frame) {
  const double least = 8 * frame.scale;  // mm of blade
  std::vector<fill::MapStation> out;
  for (const fill::MapStation& one : map.stations) {
    if (out.empty() || one.down - out.back().down >= least) out.push_back(one);
  }
  if (!out.empty() && out.back().down < map.stations.back().down) {
    if (out.size() > 1) out.pop_back();
    out.push_back(map.stations.back());
  }
  return out;
}

MapFace::MapFace(const fill::ChangeMap& map, const MapFrame& frame, const std::array<DepthScale, 2>& scales, LengthUnit unit)
    : map_(map), frame_(frame), scales_(scales), unit_(unit), stations_(shown_stations(map, frame)) {}

bool MapFace::shown(const fill::MapPlace& place) const {
  return place.face == frame_.face &&
         std::any_of(stations_.begin(), stations_.end(), [&](const fill::MapStation& one) { return one.down == place.down; });
}

bool MapFace::stock_shown() const { return map_.stock_known && frame_.aft_from <= 0 && frame_.aft_to >= 0; }

std::string MapFace::id(const char* what) const { return std::string(section::name_of(frame_.face)) + "-" + what; }

Field MapFace::field(double sign) const {
  Field out;
  out.columns = map_.fractions.size();
  for (const fill::MapRow& row : map_.rows) {
    const auto& depths = row.of(frame_.face);
    for (std::size_t c = 0; c < out.columns; ++c) {
      out.places.push_back(frame_.at(row.front() + map_.fractions[c] * (row.back() - row.front()), row.down));
      out.values.push_back(sign * depths[c]);
    }
  }
  return out;
}

void MapFace::hatching(Sheet& sheet) const {
  for (const DepthScale& scale : scales_) {
    const Field depths = field(scale.sign);
    for (std::size_t band = 0; band < scale.bands.size(); ++band) {
      MultiPolygon area = area_above(depths, scale.bands[band] + 1e-9);
      MultiPolygon thinner;
      boost::geometry::simplify(area, thinner, 0.03);
      if (band == 0) {
        Path ground{{}, true, Pen::none, scale.sign < 0 ? Fill::light : Fill::none, id(scale.sign < 0 ? "take-off" : "add")};
        for (const Polygon& piece : thinner) {
          ground.runs.emplace_back(piece.outer().begin(), piece.outer().end());
          for (const auto& hole : piece.inners()) ground.runs.emplace_back(hole.begin(), hole.end());
        }
        sheet.items.emplace_back(std::move(ground));
      }
      for (Path& lines : band_hatch(thinner, scale, band)) sheet.items.emplace_back(std::move(lines));
    }
  }
}

void MapFace::outline(Sheet& sheet, bool old) const {
  std::vector<Point> front, back;
  const auto piece = [&](std::size_t from, std::size_t to, bool carried) {
    Path path{{{}}, false, carried ? Pen::guide : old ? Pen::measured : Pen::outline, Fill::none, {}};
    std::vector<Point> forward, aft;
    for (std::size_t k = from; k <= to; ++k) {
      const fill::MapRow& row = map_.rows[k];
      const double edge = old ? row.old_edge : row.new_edge, chord = old ? row.old_chord : row.new_chord;
      forward.push_back(frame_.at(edge, row.down));
      aft.push_back(frame_.at(edge + chord, row.down));
    }
    path.runs = {forward, aft};
    if (from == 0) path.runs.push_back({forward.front(), aft.front()});
    if (to + 1 == map_.rows.size()) path.runs.push_back({forward.back(), aft.back()});
    if (!carried) path.id = id(old ? "old-outline" : "new-outline");
    sheet.items.emplace_back(std::move(path));
  };
  const std::size_t last = map_.rows.size() - 1;
  const std::size_t from = map_.rows.front().carried_on ? 1 : 0, to = map_.rows.back().carried_on ? last - 1 : last;
  if (from > 0) piece(0, from, true);
  if (to > from) piece(from, to, false);
  if (to < last) piece(to, last, true);
}

void MapFace::lines(Sheet& sheet) const {
  const auto moved = [&](const fill::MapRow& row) {
    return std::max(std::abs(row.new_edge - row.old_edge),
                    std::abs(row.new_edge + row.new_chord - row.old_edge - row.old_chord)) /
               frame_.scale >
           seen_apart;
  };
  if (std::any_of(map_.rows.begin(), map_.rows.end(), moved)) outline(sheet, true);
  outline(sheet, false);
  Path contours{{}, false, Pen::measured, Fill::none, id("contours")};
  for (const DepthScale& scale : scales_) {
    const Field depths = field(scale.sign);
    for (const double level : scale.lines) {
      for (const auto& line : contour_lines(depths, level + 1e-9)) contours.runs.push_back(thin(line));
    }
  }
  sheet.items.emplace_back(std::move(contours));
  for (const fill::MapStation& station : stations_) {
    const fill::MapRow& row = nearest_row(station.down);
    const double a = frame_.x(row.front()), b = frame_.x(row.back()), y = frame_.y(station.down);
    add_line(sheet, {std::min(a, b) - beyond_edge, y}, {std::max(a, b) + beyond_edge, y}, Pen::guide);
  }
  for (const fill::MapPlace& one : map_.readings) {
    if (shown(one)) add_dot(sheet, frame_.at(one.aft, one.down), dot);
  }
  if (stock_shown()) {
    add_line(sheet, {frame_.x(0), frame_.top - 2}, {frame_.x(0), frame_.top + frame_.height() + 2}, Pen::datum, id("stock"));
  }
}

const fill::MapRow& MapFace::nearest_row(double down) const {
  return *std::min_element(map_.rows.begin(), map_.rows.end(), [&](const fill::MapRow& a, const fill::MapRow& b) {
    return std::abs(a.down - down) < std::abs(b.down - down);
  });
}

}  // namespace fairblade::drawing
