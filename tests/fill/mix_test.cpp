#include <algorithm>

#include "catch.hpp"
#include "planned.hpp"

using namespace fairblade;

TEST_CASE("four mixes worked by hand") {
  const auto rows = blade::truth("mixes.csv");
  REQUIRE(rows.size() == 5);
  for (std::size_t k = 1; k < rows.size(); ++k) {
    const auto& row = rows[k];
    INFO(row[0]);
    const auto cell = [&](std::size_t i) { return std::stod(row[i]); };
    job::Filler filler = job::filler_with(cell(7), cell(8));
    filler.resin_density = cell(1);
    filler.unmixed_resin_density = cell(5);
    filler.hardener_density = cell(6);
    filler.ratio_by_volume = row[4] == "volume";
    filler.resin_by_weight = cell(2) * (filler.ratio_by_volume ? cell(5) : 1);
    filler.hardener_by_weight = cell(3) * (filler.ratio_by_volume ? cell(6) : 1);
    const auto mix = fill::mix_of(filler, cell(9));
    const double found[] = {mix.paste_density, mix.paste_kg,     mix.resin_kg,       mix.hardener_kg,
                            mix.powder_kg,     mix.resin_litres, mix.hardener_litres};
    for (std::size_t i = 0; i < 7; ++i)
      CHECK(found[i] == Approx(cell(10 + i)).margin(1e-6));  // seen 5e-7, the rounding of the table
    CHECK(mix.resin_kg + mix.hardener_kg + mix.powder_kg == Approx(mix.paste_kg).epsilon(1e-12));
    const auto& given = filler.ratio_by_volume ? mix.ratio_by_volume : mix.ratio_by_weight;
    CHECK(given[1] / given[0] == Approx(cell(3) / cell(2)).epsilon(1e-12));
  }
}

TEST_CASE("the default parts mix to the default epoxy") {
  // 138/(100/1.18 + 38/1.08) = 138/(84.745763 + 35.185185) = 1.150653.
  const job::Filler filler;
  const auto mix = fill::mix_of(filler, 1);
  CHECK(mix.epoxy_kg / (mix.resin_litres + mix.hardener_litres) == Approx(1.150653).margin(1e-6));
}

TEST_CASE("pot life shortens with mass") {
  const job::Workshop shop;                              // 25 minutes at 25 °C for 100 g
  CHECK(fill::pot_life(shop, 25, 800) == Approx(12.5));  // cube root of 8, the estimate the header states
  CHECK(fill::pot_life(shop, 25, 50) == Approx(25));
}

namespace {

// Over all batches, mass is litres to mix times paste density, 0.1 %.
void check_masses(const planned::Plan& p) {
  for (const auto& zone : p.work.zones.by_zone) {
    double mass = 0, resin = 0, litres = 0;
    for (const auto& batch : p.work.batches) {
      if (batch.zone != zone.zone) continue;
      mass += batch.count * (batch.resin_g + batch.hardener_g + batch.powder_g) / 1000;
      resin += batch.count * batch.resin_g / 1000;
      const job::Filler& filler = fill::filler_of(p.job, batch.zone);
      CHECK(batch.powder_ml == Approx(batch.powder_g / filler.powder_density).margin(1e-9));
      // Mixed epoxy takes its own density, powder that of its particles.
      litres += batch.count * ((batch.resin_g + batch.hardener_g) / filler.resin_density + batch.powder_ml) / 1000;
      CHECK(batch.batch_g <= p.job.workshop.batch_limit_g * (1 + 1e-9));
      CHECK(batch.spread_minutes <= batch.minutes * (1 + 1e-9));
      CHECK(batch.cannot_spread_in_time == (batch.pass_minutes > batch.minutes));
    }
    const double density = fill::paste_density(fill::filler_of(p.job, zone.zone));
    CHECK(mass == Approx(zone.to_mix * density).epsilon(1e-3));  // seen 1e-15
    CHECK(litres == Approx(zone.to_mix).epsilon(1e-3));          // seen 1e-15
    CHECK(resin == Approx(p.work.mixes[std::size_t(zone.zone)].mix.resin_kg).epsilon(1e-3));
  }
}

}  // namespace

TEST_CASE("batches hold what the zones need, and none is too large or too slow") {
  for (const double temperature : {8.0, 20.0, 33.0}) {
    for (const double rate : {0.004, 0.05}) {
      auto job = planned::tapered(3, 900, 450, 350, 0.09, 0.13);
      job.workshop.temperature = temperature;
      job.workshop.spread_kg_per_minute = rate;
      const auto p = planned::plan(job);
      check_masses(p);
      const bool told =
          std::any_of(p.work.warnings.begin(), p.work.warnings.end(), [](const Warning& w) { return w.code == "spread-time"; });
      const bool slow =
          std::any_of(p.work.batches.begin(), p.work.batches.end(), [](const auto& b) { return b.cannot_spread_in_time; });
      CHECK(told == slow);
      if (temperature > 30) CHECK(slow);
    }
  }
}

TEST_CASE("weight and buoyancy") {
  // 1000 mm of chord 400, 10 to 12 %: 8221/12000 x 0.02 x 400² x 1000 = 2.19227 L, in faces' and edges' filler alike
  // here.
  auto job = planned::tapered(2, 1000, 400, 400, 0.10, 0.12);
  job.edges = job.faces;
  const auto p = planned::plan(job);
  CHECK(p.work.floating.weight_added == Approx(2.19227 * 0.722093).epsilon(1e-3));
  CHECK(p.work.floating.buoyancy_gained == Approx(2.19227 * 1.025).epsilon(1e-3));
  CHECK(p.work.floating.weight_in_water == Approx(2.19227 * (0.722093 - 1.025)).epsilon(1e-3));
}
