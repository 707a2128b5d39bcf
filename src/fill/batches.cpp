#include "fill/batches.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/text.hpp"

namespace fairblade::fill {

double pot_life(const job::Workshop& shop, double temperature, double epoxy_g) {
  const double warm = shop.pot_life_minutes * std::exp2((shop.pot_life_at - temperature) / 10);
  return warm * std::cbrt(std::min(1.0, shop.pot_life_mass_g / std::max(epoxy_g, 1e-9)));
}

namespace {

PassBatches batches_of_pass(const job::Job& job, const ZonePasses& zone, const Pass& pass) {
  const job::Filler& filler = filler_of(job, zone.zone);
  const job::Workshop& shop = job.workshop;
  const Mix mix = mix_of(filler, pass.litres);
  const double grams = 1000 * mix.paste_kg;
  const double epoxy_share = mix.paste_kg > 0 ? mix.epoxy_kg / mix.paste_kg : 1;
  PassBatches out;
  out.zone = zone.zone;
  out.pass = pass.number;
  out.litres = pass.litres;
  out.overcoat = filler.overcoat;
  out.sand_after_hours = filler.sand_after_hours;
  const auto spread = [&](double g) { return g / 1000 / shop.spread_kg_per_minute; };
  const double fewest = std::max(1.0, std::ceil(grams / shop.batch_limit_g - 1e-9));
  double count = fewest;
  // The batch that is spread just as it goes off: by halving, since the one rises with its mass and the other falls.
  const auto in_time = [&](double g) { return spread(g) <= pot_life(shop, shop.temperature, g * epoxy_share); };
  if (grams > 0 && !in_time(grams / count)) {
    double low = 0, high = grams / count;
    for (int k = 0; k < 60; ++k) ((in_time((low + high) / 2)) ? low : high) = (low + high) / 2;
    count = std::ceil(grams / low - 1e-9);
  }
  out.count = static_cast<int>(std::min(count, 1e6));
  out.smaller_for_time = count > fewest;
  out.batch_g = grams / count;
  out.resin_g = 1000 * mix.resin_kg / count;
  out.hardener_g = 1000 * mix.hardener_kg / count;
  out.powder_g = 1000 * mix.powder_kg / count;
  out.resin_ml = 1000 * mix.resin_litres / count;
  out.hardener_ml = 1000 * mix.hardener_litres / count;
  out.powder_ml = 1000 * mix.powder_litres / count;
  out.minutes = pot_life(shop, shop.temperature, out.batch_g * epoxy_share);
  out.spread_minutes = spread(out.batch_g);
  out.pass_minutes = spread(grams);
  out.cannot_spread_in_time = out.pass_minutes > out.minutes;
  return out;
}

}  // namespace

std::vector<PassBatches> batches_of(const job::Job& job, const std::array<ZonePasses, 3>& passes) {
  std::vector<PassBatches> out;
  for (const ZonePasses& zone : passes) {
    for (const Pass& pass : zone.passes) out.push_back(batches_of_pass(job, zone, pass));
  }
  return out;
}

std::vector<Warning> warnings_of(const job::Workshop& shop, const std::vector<PassBatches>& batches) {
  std::vector<Warning> out;
  std::set<Zone> told;
  for (const PassBatches& one : batches) {
    if (!one.cannot_spread_in_time || !told.insert(one.zone).second) continue;
    out.push_back({"spread-time", name_of(one.zone),
                   "pass " + std::to_string(one.pass) + " takes " + fixed(one.pass_minutes, 0) + " minutes to spread at " +
                       trimmed(shop.spread_kg_per_minute, 3) + " kg a minute, and a batch stays workable for " +
                       fixed(one.minutes, 0) +
                       ": do it in parts that end at a station, port and starboard apart, or with a second pair of hands"});
  }
  return out;
}

}  // namespace fairblade::fill
