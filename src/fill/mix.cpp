#include "fill/mix.hpp"

namespace fairblade::fill {
namespace {

// Litres of paste to 100 kg of epoxy.
double paste_litres(const job::Filler& f) { return 100 / f.resin_density + f.powder_per_100_epoxy / f.powder_density; }

}  // namespace

double paste_density(const job::Filler& filler) { return (100 + filler.powder_per_100_epoxy) / paste_litres(filler); }

Mix mix_of(const job::Filler& f, double litres) {
  Mix out;
  out.litres = litres;
  out.paste_density = paste_density(f);
  out.paste_kg = litres * out.paste_density;
  out.epoxy_kg = 100 * litres / paste_litres(f);
  out.powder_kg = out.epoxy_kg * f.powder_per_100_epoxy / 100;
  const double parts = f.resin_by_weight + f.hardener_by_weight;
  out.resin_kg = out.epoxy_kg * f.resin_by_weight / parts;
  out.hardener_kg = out.epoxy_kg * f.hardener_by_weight / parts;
  out.resin_litres = out.resin_kg / f.unmixed_resin_density;
  out.hardener_litres = out.hardener_kg / f.hardener_density;
  out.powder_litres = out.powder_kg / f.powder_density;
  out.ratio_by_weight = {100, 100 * f.hardener_by_weight / f.resin_by_weight};
  out.ratio_by_volume = {100, out.ratio_by_weight[1] * f.unmixed_resin_density / f.hardener_density};
  out.other_ratio_estimated = f.parts_estimated;
  return out;
}

std::array<ZoneMix, 3> mixes_of(const job::Job& job, const Zones& zones) {
  std::array<ZoneMix, 3> out;
  for (std::size_t k = 0; k < 3; ++k) {
    const ZoneAmount& zone = zones.by_zone[k];
    out[k] = {zone.zone, mix_of(filler_of(job, zone.zone), zone.to_mix), 0};
    out[k].weight_added = zone.filler * out[k].mix.paste_density;
  }
  return out;
}

Floating floating_of(const std::array<ZoneMix, 3>& mixes, const Zones& zones, double taken_off) {
  Floating out;
  for (const ZoneMix& one : mixes) out.weight_added += one.weight_added;
  out.buoyancy_gained = (zones.whole.filler - taken_off) * sea_water;
  out.weight_in_water = out.weight_added - out.buoyancy_gained;
  return out;
}

}  // namespace fairblade::fill
