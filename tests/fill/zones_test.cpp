#include <algorithm>
#include <cmath>

#include "base/geometry.hpp"
#include "catch.hpp"
#include "fill/stages.hpp"
#include "planned.hpp"
#include "target/face_lines.hpp"

using namespace fairblade;
using fill::Zone;

namespace {

// Area between forms dt apart from 0 to x, both sides, chords²: the 4-digit equation integrated term by term.
double area_to(double dt, double x) {
  return 10 * dt *
         (0.2969 * 2 / 3 * std::pow(x, 1.5) - 0.063 * x * x - 0.1172 * x * x * x + 0.071075 * std::pow(x, 4) -
          0.0203 * std::pow(x, 5));
}

void check_sums(const planned::Plan& p) {
  const auto& zones = p.work.zones;
  double net = 0, to_mix = 0, variance = 0, area = 0;
  for (const auto& zone : zones.by_zone) {
    net += zone.net;
    to_mix += zone.to_mix;
    variance += zone.error * zone.error;
    area += zone.filled_area;
    CHECK(zone.filler + zone.sanding + zone.loss == Approx(zone.to_mix).epsilon(1e-12));
    CHECK(zone.loss == Approx(zone.to_mix * p.job.workshop.loss_percent / 100).margin(1e-12));
    CHECK(zone.low <= zone.net);
    // 19 times in 20: two standard deviations either way (Gauss: 95.4 %), and never less than nothing.
    CHECK(zone.low == Approx(std::max(0.0, zone.net - 2 * zone.error)).margin(1e-12));
    CHECK(zone.high == Approx(zone.net + 2 * zone.error).margin(1e-12));
  }
  CHECK(net == Approx(p.volumes.add).epsilon(1e-6).margin(1e-9));
  CHECK(zones.whole.net == Approx(p.volumes.add).epsilon(1e-6).margin(1e-9));
  CHECK(zones.whole.to_mix == Approx(to_mix).epsilon(1e-12));
  CHECK(std::sqrt(variance) == Approx(p.volumes.add_error).epsilon(1e-6));
  CHECK(zones.scaled_by == Approx(1).epsilon(0.01));
  CHECK(zones.whole.sanding == Approx(area * p.job.workshop.sanding_allowance).epsilon(1e-12));
}

}  // namespace

TEST_CASE("litres by zone by the closed form") {
  auto job = planned::tapered(3, 1000, 500, 300, 0.10, 0.13);
  job.bottom = 1100;
  for (const auto& [fore, aft] : {std::pair{0.15, 0.15}, {0.3, 0.05}, {0.0, 0.45}}) {
    job.zones = {fore, aft};
    const auto p = planned::plan(job);
    check_sums(p);
    const double squares = 1000 * (500.0 * 500 + 500 * 300 + 300 * 300) / 3 / 1e6;  // integral of chord², litres per chord²
    const double all = area_to(0.03, 1);
    CHECK(p.work.zones[Zone::leading_edge].net == Approx(squares * area_to(0.03, fore)).epsilon(1e-3).margin(1e-9));  // seen 1e-4
    CHECK(p.work.zones[Zone::trailing_edge].net == Approx(squares * (all - area_to(0.03, 1 - aft))).epsilon(1e-3));
    CHECK(p.work.zones[Zone::faces].net == Approx(squares * (area_to(0.03, 1 - aft) - area_to(0.03, fore))).epsilon(1e-3));
    CHECK(p.work.zones.whole.beyond == Approx(100 * 300.0 * 300 / 1e6 * all).epsilon(1e-3));
    CHECK(p.work.zones.scaled_by == Approx(1).epsilon(1e-3));  // seen 1e-5
  }
}

TEST_CASE("an extension belongs to its edge, and noise does not spoil the sums") {
  std::mt19937 random(21);
  auto job = planned::tapered(4, 1000, 450, 330, 0.11, 0.12);
  for (auto& station : job.stations) {
    blade::add_noise(station, 0.7, random);
    station.target.extend_leading_edge.mm = 8;
    station.target.extend_trailing_edge.mm = 12;
    station.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 4};
  }
  job.reading_error = 0.7;
  const auto p = planned::plan(job);
  check_sums(p);
  CHECK(p.work.zones[Zone::leading_edge].deepest >= 7.9);
  CHECK(p.work.zones[Zone::trailing_edge].deepest >= 11.9);
  CHECK(p.work.zones.whole.deepest >= p.changes[0].add.depth);
  CHECK(p.work.zones.whole.error > 0);
}

TEST_CASE("nothing to fill, nothing to mix") {
  const auto p = planned::plan(planned::tapered(3, 1000, 500, 300, 0.13, 0.12));
  check_sums(p);
  CHECK(p.work.zones.whole.to_mix == Approx(0).margin(1e-6));
  for (const auto& zone : p.work.passes) CHECK(zone.passes.empty());
  CHECK(p.work.batches.empty());
  CHECK(p.work.floating.buoyancy_gained < 0);
  const auto lone = planned::plan(blade::job_of({blade::exact("A", 0, 400, 0.12)}));  // one station has no volume
  CHECK(lone.work.zones.whole.to_mix == Approx(0).margin(1e-9));
}

TEST_CASE("coats over the filler fill some of it") {
  auto job = planned::tapered(2, 1000, 400, 400, 0.10, 0.13);
  const auto bare = planned::plan(job);
  job::Coat coat;
  coat.name = "glass";
  coat.stage = "glass";
  coat.thickness = 0.3;
  coat.layers = 2;
  job.coats = {coat};
  const auto coated = planned::plan(job);
  const auto& zone = coated.work.zones[Zone::faces];
  CHECK(zone.net == Approx(bare.work.zones[Zone::faces].net));
  // Faces from 15 to 85 % of 400 mm, both sides, 1 m, all deeper than 0.6: 2 x 0.28 m² x 0.6 mm = 0.336 L.
  CHECK(zone.taken_by_coats == Approx(0.336).epsilon(0.01));
  CHECK(zone.filler == Approx(zone.net - zone.taken_by_coats).epsilon(1e-12));
  CHECK(coated.work.coats.build == Approx(0.6));
}

TEST_CASE("2026-11-27: coats do not thin as the chord shortens between two stations") {
  auto job = planned::tapered(2, 1000, 480, 200, 0.10, 0.14);
  job.coats = {blade::coat_of(1.1)};
  const auto zones = planned::plan(job).work.zones;
  // Faces from 15 to 85 % of the chord, both sides, 1 m, all deeper than 1.1: 2 x 0.7 x 0.340 m² x 1.1 mm = 0.5236 L. It had been
  // 0.5536, and the filler too little: their thickness had run straight in chords, not in mm.
  CHECK(zones[Zone::faces].taken_by_coats == Approx(0.5236).epsilon(0.01));
  auto again = planned::tapered(9, 1000, 480, 200, 0.10, 0.14);
  again.coats = job.coats;
  CHECK(zones.whole.filler == Approx(planned::plan(again).work.zones.whole.filler).epsilon(0.003));
}

TEST_CASE(
    "2026-11-27: under coats a trailing edge built out takes filler for its own thickness, not for its distance to the old "
    "edge") {
  // A prism: the other route is the polygon difference (Boost.Geometry) of the section under the coats and the old one, by its
  // height. It had been told 2.4 times what it is.
  std::vector<job::Station> stations{blade::exact("A", 0, 400, 0.12), blade::exact("B", 1000, 400, 0.12)};
  for (auto& station : stations) {
    station.target.approach = job::Approach::edges_only;
    station.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 4};
    station.target.extend_trailing_edge.mm = 10;
    station.target.keep_to = {false, 0.7};
  }
  auto job = blade::job_of(stations);
  job::Coat coat;
  coat.name = coat.stage = "glass";
  coat.thickness = 1.1;
  job.coats = {coat};
  const auto p = planned::plan(job);
  const auto bare = fill::stage_section(p.targets[0], {fill::StageKind::bare, 1.1, ""});
  REQUIRE(bare);
  Polyline face;
  for (int k = 0; k <= 2000; ++k) {
    const double x = 400 * std::pow(k / 2000.0, 2);
    face.emplace_back(x, p.measured[0].port.at(x));
  }
  const auto added = fairblade::difference(target::outline_of(bare->port, bare->starboard), target::outline_of(face, face));
  CHECK(p.work.zones.whole.filler == Approx(fairblade::area(added) * 1000 / 1e6).epsilon(0.01));  // seen 0.002
  check_sums(p);
}

TEST_CASE("2026-11-27: what lies below the last station has its coats too") {
  // A prism of 1 m, and a tenth more below it: a tenth more of everything.
  auto job = planned::tapered(2, 1000, 400, 400, 0.10, 0.13);
  job::Coat coat;
  coat.name = coat.stage = "glass";
  coat.thickness = 0.6;
  job.coats = {coat};
  const auto first = planned::plan(job).work.zones;
  job.bottom = 1100;
  const auto longer = planned::plan(job).work.zones;
  REQUIRE(first.whole.taken_by_coats > 0.3);
  for (const Zone zone : {Zone::leading_edge, Zone::faces, Zone::trailing_edge}) {
    CHECK(longer[zone].taken_by_coats == Approx(1.1 * first[zone].taken_by_coats).epsilon(1e-3));
    CHECK(longer[zone].filler == Approx(1.1 * first[zone].filler).epsilon(1e-3));
  }
}

TEST_CASE("passes cover the deepest place, none deeper than its limit") {
  std::mt19937 random(4);
  for (const double to : {0.101, 0.115, 0.13, 0.16}) {
    auto job = planned::tapered(3, 800, 420, 380, 0.10, to);
    for (auto& station : job.stations) blade::add_noise(station, 0.3, random);
    const auto p = planned::plan(job);
    double deepest = 0;
    for (const auto& change : p.changes) deepest = std::max(deepest, change.add.depth);
    double covered = 0;
    for (const auto& zone : p.work.passes) {
      double sum = 0, litres = 0;
      for (const auto& pass : zone.passes) {
        CHECK(pass.depth <= zone.layer_limit * (1 + 1e-9));
        sum += pass.depth;
        litres += pass.litres;
        CHECK(pass.litres >= 0);
        // Pass 1 goes to the bottom of the deepest places, the last over everything: what is to come over it grows less,
        // and no pass takes less paste than the one below it.
        const auto index = static_cast<std::size_t>(pass.number - 1);
        CHECK(pass.left_over == Approx(static_cast<double>(zone.passes.size() - index - 1) * pass.depth).margin(1e-9));
        if (index > 0) CHECK(pass.litres >= zone.passes[index - 1].litres * (1 - 1e-9));
      }
      CHECK(sum == Approx(zone.deepest).epsilon(1e-9));
      CHECK(litres == Approx(p.work.zones[zone.zone].to_mix).epsilon(1e-9));
      for (const auto& station : zone.stations) {
        CHECK(station.passes * (zone.passes.empty() ? 0 : zone.passes[0].depth) >= station.depth - 0.02);
      }
      covered = std::max(covered, sum);
      if (!zone.passes.empty()) CHECK(zone.passes.back().stations.size() >= zone.passes.front().stations.size());
    }
    CHECK(covered >= deepest);
    // What is to be sanded off goes on too. Between the stations a straight loft is no deeper than they are.
    CHECK(covered == Approx(deepest + job.workshop.sanding_allowance).margin(0.05));
  }
}

TEST_CASE("past 15 mm a core is offered, of the thickness that saves most") {
  // Chord 400, 6 to 15 %: 18 mm deep. Where 400 naca(0.09, x) reaches thickness + 3 mm, a board fits: by hand, over x.
  const auto p = planned::plan(planned::tapered(2, 1000, 400, 400, 0.06, 0.15));
  const auto& zone = p.work.passes[std::size_t(Zone::faces)];
  REQUIRE(zone.core);
  const auto saved = [&](double thickness) {
    double width = 0;
    for (int k = 0; k < 70000; ++k) {
      const double x = 0.15 + 0.70 * (k + 0.5) / 70000;
      if (400 * blade::naca(0.09, x) >= thickness + 3) width += 0.70 / 70000 * 400;
    }
    return 2 * width * 1000 * thickness / 1e6;
  };
  CHECK(zone.core->filler_saved == Approx(saved(zone.core->thickness)).epsilon(0.04));  // normal depth, not half-breadth
  for (double other = 5; other < 15; ++other) CHECK(saved(other) <= 1.05 * zone.core->filler_saved);
  // 18 mm at the deepest (half of 400 x 0.09) and 0.5 to sand off, in passes of 6: over the board what it leaves, and beside it
  // what is too shallow for the board and the 3 mm over it.
  CHECK(zone.passes.size() == 4);
  CHECK(zone.core->passes_after == int(std::ceil((0.5 + std::max(18 - zone.core->thickness, zone.core->thickness + 3)) / 6)));
  CHECK_FALSE(planned::plan(planned::tapered(2, 1000, 400, 400, 0.10, 0.13)).work.passes[1].core);
  // Cloth round the nose that ends before the deep place leaves the offer standing there: 0 to 12 mm of depth under the
  // cloth's end, and more than 15 mm where the zone ends.
  auto job = planned::tapered(2, 1000, 400, 400, 0.06, 0.18);
  job.nose_glass = job::NoseGlass{job::Cloth{300, 1000, 50, 2.54, {}}, 2};
  const auto nose = planned::plan(job);
  CHECK(nose.work.coats.nose_glass->cloth_area == 0);
  REQUIRE(nose.work.passes[0].core);
  CHECK(nose.work.passes[0].core->filler_saved > 0);
}

TEST_CASE("2026-11-27: what an edges-only target keeps has no error of litres") {
  std::mt19937 random(5);
  auto job = planned::tapered(3, 1000, 450, 400, 0.12, 0.12);
  for (auto& station : job.stations) {
    blade::add_noise(station, 0.4, random);
    station.target.approach = job::Approach::edges_only;
    station.target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, 3.5};
  }
  job.reading_error = 0.4;
  job.zones = {0.2, 0.25};  // where edges-only keeps the body unless told
  const auto p = planned::plan(job);
  check_sums(p);
  REQUIRE(p.volumes.add_error > 0);
  CHECK(p.work.zones[Zone::faces].net < 1e-3);
  CHECK(p.work.zones[Zone::faces].error == 0);
}
