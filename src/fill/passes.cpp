#include "fill/passes.hpp"

#include <algorithm>
#include <cmath>

#include "fill/fill.hpp"

namespace fairblade::fill {
namespace {

struct Depths {  // of one zone
  double build, allowance;
  const NoseGlassPlan* glass;  ///< under this zone, or none
  const std::vector<Piece>& surface;
  std::vector<const Piece*> pieces;                   ///< its own
  std::vector<std::vector<const Piece*>> of_station;  ///< the same

  double to_put_on(const Piece& piece) const { return to_put_on(piece.depth, piece); }
  // As deep as that, over the glass of this piece.
  double to_put_on(double depth, const Piece& piece) const {
    if (!(depth > build + no_filler)) return 0;
    const double under = glass ? glass->under[static_cast<std::size_t>(&piece - surface.data())] * glass->layer : 0;
    return std::max(0.0, depth - build - under) + allowance;
  }
  const Piece* nearest(std::size_t station, double x, Face face) const {
    const Piece* best = nullptr;
    for (const Piece* piece : of_station[station]) {
      if (piece->face != face) continue;
      if (!best || std::abs(piece->x - x) < std::abs(best->x - x)) best = piece;
    }
    return best;
  }
};

void find_stations(const std::vector<section::MeasuredSection>& measured, const std::vector<StationChange>& changes,
                   const job::ZoneBounds& bounds, const Depths& depths, ZonePasses& out) {
  for (std::size_t k = 0; k < measured.size(); ++k) {
    PassStation here{measured[k].station, measured[k].down, 0, 0};
    for (const Piece* piece : depths.of_station[k]) here.depth = std::max(here.depth, depths.to_put_on(*piece));
    const Deepest& deep = changes[k].add;  // known exactly
    if (zone_at(deep.x, measured[k].chord, bounds) == out.zone) {
      const Piece* piece = depths.nearest(k, deep.x, deep.face);
      if (piece) here.depth = std::max(here.depth, depths.to_put_on(deep.depth, *piece));
    }
    if (here.depth > out.deepest) {
      out.deepest = here.depth;
      out.deepest_down = here.down;
    }
    out.stations.push_back(std::move(here));
  }
  for (const Piece* piece : depths.pieces) {
    const double depth = depths.to_put_on(*piece);
    if (depth <= out.deepest) continue;
    out.deepest = depth;
    out.deepest_down = piece->down;
  }
}

// As many passes as the deepest place needs, all of one depth.
int passes_needed(double depth, double limit) { return depth > 0 ? static_cast<int>(std::ceil(depth / limit - 1e-9)) : 0; }

void share_out(const Depths& depths, double litres, ZonePasses& out) {
  const int count = passes_needed(out.deepest, out.layer_limit);
  const double each = count > 0 ? out.deepest / count : 0;
  double all = 0;
  for (int number = 1; number <= count; ++number) {
    Pass pass{number, each, (count - number) * each, 0, {}};
    for (const Piece* piece : depths.pieces) {
      pass.litres += piece->area * std::clamp(depths.to_put_on(*piece) - pass.left_over, 0.0, each);
    }
    for (PassStation& station : out.stations) {
      if (station.depth <= pass.left_over + no_filler) continue;
      pass.stations.push_back(station.station);
      ++station.passes;
    }
    all += pass.litres;
    out.passes.push_back(std::move(pass));
  }
  for (Pass& pass : out.passes) pass.litres = all > 0 ? pass.litres * litres / all : litres / count;
}

// The board's thickness, a whole mm of 5 or more, that saves the most filler under its cover.
void offer_core(const Depths& depths, ZonePasses& out) {
  const double deepest = out.deepest - depths.allowance;
  if (!(deepest > core_from)) return;
  Core best;
  for (double thickness = 5; thickness + core_cover <= deepest; ++thickness) {
    double area = 0;
    for (const Piece* piece : depths.pieces) {
      if (depths.to_put_on(*piece) - depths.allowance >= thickness + core_cover) area += piece->area;
    }
    const double saved = area * thickness / mm3_per_litre;
    if (saved > best.filler_saved) best = {thickness, core_cover, area / mm2_per_m2, saved, 0, 0};
  }
  if (!(best.filler_saved > 0)) return;
  // Where the board fits, its thickness goes off the depth; where it does not, the depth is less than it and its cover.
  best.deepest_left = depths.allowance + std::max(deepest - best.thickness, best.thickness + core_cover);
  best.deepest_left = std::min(best.deepest_left, out.deepest);
  best.passes_after = passes_needed(best.deepest_left, out.layer_limit);
  out.core = best;
}

}  // namespace

std::array<ZonePasses, 3> passes_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                    const std::vector<StationChange>& changes, const Zones& zones,
                                    const std::vector<Piece>& surface, const Coats& coats) {
  std::array<ZonePasses, 3> out;
  for (std::size_t k = 0; k < 3; ++k) {
    ZonePasses& zone = out[k];
    zone.zone = static_cast<Zone>(k);
    zone.layer_limit = filler_of(job, zone.zone).layer_limit;
    const bool glazed = zone.zone == Zone::leading_edge && coats.nose_glass;
    Depths depths{coats.build, job.workshop.sanding_allowance, glazed ? &*coats.nose_glass : nullptr, surface, {}, {}};
    depths.of_station.resize(measured.size());
    for (const Piece& piece : surface) {
      if (piece.zone != zone.zone) continue;
      depths.pieces.push_back(&piece);
      if (piece.station) depths.of_station[*piece.station].push_back(&piece);
    }
    find_stations(measured, changes, job.zones, depths, zone);
    if (!(zones.by_zone[k].to_mix > 0)) continue;
    share_out(depths, zones.by_zone[k].to_mix, zone);
    offer_core(depths, zone);
  }
  return out;
}

}  // namespace fairblade::fill
