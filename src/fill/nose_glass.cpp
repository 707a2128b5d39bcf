#include "fill/nose_glass.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::fill {
namespace {

constexpr int most_layers = 200;

// Layers of cloth under a place so deep.
int layers_in(double depth, double layer, double cover) {
  return depth > cover + layer ? std::min(most_layers, static_cast<int>((depth - cover) / layer + 1e-9)) : 0;
}

}  // namespace

NoseGlassPlan nose_glass_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                            const Zones& zones, const std::vector<Piece>& surface, double build) {
  const job::NoseGlass& wanted = *job.nose_glass;
  const double x = wanted.cloth.fibre_weight_percent / 100;
  NoseGlassPlan out;
  out.cover = wanted.cover;
  out.layer = glass_layer(wanted.cloth.g_per_m2, x, wanted.cloth.fibre_density, job.edges.resin_density);
  for (const auto& section : measured) out.stations.push_back({section.station, 0, 0, {}, 0});
  double cloth_mm2 = 0, covered = 0, depth_sum = 0;
  for (const Piece& piece : surface) {
    if (piece.zone != Zone::leading_edge) continue;
    const double depth = std::max(0.0, piece.depth - build);
    const int layers = layers_in(depth, out.layer, wanted.cover);
    cloth_mm2 += layers * piece.area;
    covered += layers * out.layer * piece.area;
    depth_sum += depth * piece.area;
  }
  for (std::size_t k = 0; k < measured.size(); ++k) {
    NoseGlassStation& station = out.stations[k];
    // A station's slice may stand in two bays: count its pieces once, at the first slice that has them.
    std::vector<const Piece*> pieces;
    for (const Piece& piece : surface) {
      if (piece.station == k && piece.zone == Zone::leading_edge) pieces.push_back(&piece);
    }
    double slices_here = 0;
    for (const Piece* piece : pieces) station.depth = std::max(station.depth, piece->depth - build);
    for (const Piece* piece : pieces)
      slices_here += piece->x == pieces.front()->x && piece->face == pieces.front()->face ? 1 : 0;
    station.layers = layers_in(station.depth, out.layer, wanted.cover);
    for (int layer = 1; layer <= station.layers; ++layer) {
      double width = 0;
      for (const Piece* piece : pieces) {
        if (layers_in(piece->depth - build, out.layer, wanted.cover) >= layer) width += piece->girth;
      }
      station.strip_widths.push_back(width / std::max(1.0, slices_here));
    }
    station.left_for_filler = station.depth - station.layers * out.layer;
  }
  out.cloth_area = cloth_mm2 / 1e6;
  out.resin_kg = out.cloth_area * wanted.cloth.g_per_m2 / 1000 * (1 - x) / x;
  const double filler = zones[Zone::leading_edge].filler;
  out.glass_litres = depth_sum > 0 ? filler * covered / depth_sum : 0;
  out.left_for_filler = filler - out.glass_litres;
  return out;
}

double glass_under(const NoseGlassPlan& plan, double depth) {
  return layers_in(depth, plan.layer, plan.cover) * plan.layer;
}

}  // namespace fairblade::fill
