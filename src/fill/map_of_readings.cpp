#include <algorithm>
#include <array>
#include <cmath>

#include "fill/change_map.hpp"

namespace fairblade::fill {
namespace {

using At = StationDepths::At;

std::vector<At> of_face(const StationDepths& station, Face face) {
  std::vector<At> out;
  for (const At& at : station.depths) {
    if (at.face == face && !at.doubtful) out.push_back(at);
  }
  std::stable_sort(out.begin(), out.end(), [](const At& a, const At& b) { return a.x < b.x; });
  return out;
}

// Straight between readings, the end readings carried on.
double depth_between(const std::vector<At>& depths, double x) {
  if (x <= depths.front().x) return depths.front().depth;
  for (std::size_t k = 1; k < depths.size(); ++k) {
    if (x > depths[k].x) continue;
    const double run = depths[k].x - depths[k - 1].x;
    const double w = run > 0 ? (x - depths[k - 1].x) / run : 1;
    return depths[k - 1].depth + w * (depths[k].depth - depths[k - 1].depth);
  }
  return depths.back().depth;
}

std::vector<double>& side(MapRow& row, Face face) { return face == Face::port ? row.port : row.starboard; }

// Rows without that face's depths get them from their neighbours that have them.
void complete(std::vector<MapRow>& rows, Face face, std::size_t count) {
  std::vector<std::size_t> known;
  for (std::size_t k = 0; k < rows.size(); ++k) {
    if (!side(rows[k], face).empty()) known.push_back(k);
  }
  for (std::size_t k = 0; k < rows.size(); ++k) {
    auto& row = side(rows[k], face);
    if (!row.empty()) continue;
    if (known.empty()) {
      row.assign(count, 0);
      continue;
    }
    const auto next = std::upper_bound(known.begin(), known.end(), k);
    const std::size_t b = next == known.end() ? known.back() : *next;
    const std::size_t a = next == known.begin() ? known.front() : *(next - 1);
    const double w = a == b ? 0 : (rows[k].down - rows[a].down) / (rows[b].down - rows[a].down);
    for (std::size_t c = 0; c < count; ++c) {
      const double from = side(rows[a], face)[c];
      row.push_back(from + w * (side(rows[b], face)[c] - from));
    }
  }
}

void deepest(ChangeMap& map) {
  for (const MapPlace& one : map.readings) {
    auto& most = one.depth > 0 ? map.deepest_add : map.deepest_removal;
    if (one.doubtful || std::abs(one.depth) <= map.error || (most && std::abs(most->depth) >= std::abs(one.depth))) continue;
    most = one;
  }
}

}  // namespace

ChangeMap map_of_readings(std::vector<StationDepths> stations, double error) {
  ChangeMap map;
  if (stations.empty()) return map;
  std::stable_sort(stations.begin(), stations.end(), [](const auto& a, const auto& b) { return a.down < b.down; });
  map.error = error;
  map.stock_known = std::all_of(stations.begin(), stations.end(), [](const auto& one) { return one.ahead.has_value(); });
  // Every reading's fraction of its own chord is a column, so that the drawn depths turn where the readings are.
  map.fractions = {0, 1};
  for (const StationDepths& station : stations) {
    for (const At& at : station.depths) {
      if (!at.doubtful) map.fractions.push_back(std::clamp(at.x / station.chord, 0.0, 1.0));
    }
  }
  std::sort(map.fractions.begin(), map.fractions.end());
  const auto same = [](double a, double b) { return b - a < 1e-4; };
  map.fractions.erase(std::unique(map.fractions.begin(), map.fractions.end(), same), map.fractions.end());
  map.fractions.back() = 1;
  std::array<std::string, 2> unread;
  for (const StationDepths& station : stations) {
    const double edge = map.stock_known ? -*station.ahead : 0;
    MapRow row{station.down, edge, station.chord, edge, station.chord, false, {}, {}};
    for (const Face face : {Face::port, Face::starboard}) {
      const auto depths = of_face(station, face);
      if (depths.empty()) {
        auto& names = unread[face == Face::port ? 0 : 1];
        names += (names.empty() ? "" : ", ") + station.name;
        continue;
      }
      for (const double f : map.fractions) side(row, face).push_back(depth_between(depths, f * station.chord));
    }
    map.rows.push_back(std::move(row));
    map.stations.push_back({station.name, station.down});
    for (const At& at : station.depths) {
      map.readings.push_back({station.name, station.down, edge + at.x, at.x, at.face, station.both, at.depth, at.doubtful});
    }
  }
  for (const Face face : {Face::port, Face::starboard}) {
    complete(map.rows, face, map.fractions.size());
    const auto& names = unread[face == Face::port ? 0 : 1];
    if (!names.empty()) map.notes.push_back(std::string("Not read to ") + section::name_of(face) + ": station " + names + ".");
  }
  deepest(map);
  return map;
}

}  // namespace fairblade::fill
