#include "fill/nose_glass.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::fill {
namespace {

constexpr int most_layers = 200;
constexpr double narrowest_strip = 10;  // mm: a narrower one neither cuts nor lies well (common practice, no source)

// Layers of cloth under a place so deep.
int layers_in(double depth, double layer, double cover) {
  return depth > cover + layer ? std::min(most_layers, static_cast<int>((depth - cover) / layer + 1e-9)) : 0;
}

// The outermost strips of one height that would be too narrow are left to the filler. The pieces stand in `here`; a
// height may stand in two bays, each with pieces all the way round.
void leave_narrow_strips(const std::vector<Piece>& surface, const std::vector<std::size_t>& here, std::vector<int>& under) {
  if (here.empty()) return;
  const Piece& first = surface[here.front()];
  const auto again = [&](std::size_t k) { return surface[k].x == first.x && surface[k].face == first.face; };
  const double rounds = static_cast<double>(std::max<std::ptrdiff_t>(1, std::count_if(here.begin(), here.end(), again)));
  int most = 0;
  for (const std::size_t k : here) most = std::max(most, under[k]);
  for (; most > 0; --most) {
    double width = 0;
    for (const std::size_t k : here) width += under[k] >= most ? surface[k].girth / rounds : 0;
    if (width >= narrowest_strip) break;
  }
  for (const std::size_t k : here) under[k] = std::min(under[k], most);
}

// Layers under every piece: from the nose aft along each face never more than before.
std::vector<int> layers_under(const std::vector<Piece>& surface, double build, double layer, double cover) {
  std::vector<int> out(surface.size(), 0);
  for (std::size_t from = 0, to = 0; from < surface.size(); from = to) {
    while (to < surface.size() && surface[to].down == surface[from].down) ++to;  // one height
    std::vector<std::size_t> here;
    for (const Face face : {Face::port, Face::starboard}) {
      std::vector<std::size_t> aft;
      for (std::size_t k = from; k < to; ++k) {
        if (surface[k].face == face && surface[k].zone == Zone::leading_edge) aft.push_back(k);
      }
      std::stable_sort(aft.begin(), aft.end(), [&](std::size_t a, std::size_t b) { return surface[a].x < surface[b].x; });
      int most = most_layers;
      for (const std::size_t k : aft) {
        most = std::min(most, layers_in(surface[k].depth - build, layer, cover));
        out[k] = most;
      }
      here.insert(here.end(), aft.begin(), aft.end());
    }
    leave_narrow_strips(surface, here, out);
  }
  return out;
}

NoseGlassStation station_of(const std::string& name, const std::vector<Piece>& surface, const std::vector<int>& under,
                            std::size_t station, double build, double layer) {
  NoseGlassStation out{name, 0, 0, {}, 0};
  std::vector<std::size_t> here;
  for (std::size_t k = 0; k < surface.size(); ++k) {
    if (surface[k].station != station || surface[k].zone != Zone::leading_edge) continue;
    here.push_back(k);
    out.layers = std::max(out.layers, under[k]);
    const double depth = surface[k].depth - build;
    if (depth <= out.depth) continue;
    out.depth = depth;
    out.left_for_filler = depth - under[k] * layer;
  }
  // A station's slice may stand in two bays: count its pieces once.
  const auto again = [&](std::size_t k) {
    const Piece &a = surface[k], &first = surface[here.front()];
    return a.x == first.x && a.face == first.face;
  };
  const auto slices_here = std::max<std::ptrdiff_t>(1, std::count_if(here.begin(), here.end(), again));
  for (int layer_number = 1; layer_number <= out.layers; ++layer_number) {
    double width = 0;
    for (const std::size_t k : here) width += under[k] >= layer_number ? surface[k].girth : 0;
    out.strip_widths.push_back(width / static_cast<double>(slices_here));
  }
  return out;
}

}  // namespace

NoseGlassPlan nose_glass_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured, const Zones& zones,
                            const std::vector<Piece>& surface, double build) {
  const job::NoseGlass& wanted = *job.nose_glass;
  const double x = wanted.cloth.fibre_weight_percent / 100;
  NoseGlassPlan out;
  out.cover = wanted.cover;
  out.layer = job::glass_layer(wanted.cloth.g_per_m2, x, wanted.cloth.fibre_density, job.edges.resin_density);
  out.under = layers_under(surface, build, out.layer, out.cover);
  double cloth_mm2 = 0, covered = 0, depth_sum = 0;
  for (std::size_t k = 0; k < surface.size(); ++k) {
    if (surface[k].zone != Zone::leading_edge) continue;
    cloth_mm2 += out.under[k] * surface[k].area;
    covered += out.under[k] * out.layer * surface[k].area;
    depth_sum += std::max(0.0, surface[k].depth - build) * surface[k].area;
  }
  for (std::size_t k = 0; k < measured.size(); ++k) {
    out.stations.push_back(station_of(measured[k].station, surface, out.under, k, build, out.layer));
  }
  out.cloth_area = cloth_mm2 / 1e6;
  out.resin_kg = out.cloth_area * wanted.cloth.g_per_m2 / 1000 * (1 - x) / x;
  const double filler = zones[Zone::leading_edge].filler;
  out.glass_litres = depth_sum > 0 ? filler * covered / depth_sum : 0;
  out.left_for_filler = filler - out.glass_litres;
  return out;
}

}  // namespace fairblade::fill
