// The trailing edge's numbers, worked by hand.
#include "fill/trailing_edge.hpp"

#include <cmath>

#include "blade.hpp"
#include "catch.hpp"
#include "shapes.hpp"

using namespace fairblade;

namespace {

struct Blade {
  job::Job job;
  std::vector<target::TargetSection> targets;
};

/// Stations every 400 mm with these chords, all of one make, the leading edge 60 mm ahead of the stock.
Blade blade_of(const std::vector<double>& chords, const std::function<target::TargetSection(double)>& make) {
  Blade out;
  std::vector<job::Station> stations;
  for (std::size_t k = 0; k < chords.size(); ++k) {
    stations.push_back(blade::exact(std::string(1, char('A' + k)), 400.0 * k, chords[k], 0.12));
    auto target = make(chords[k]);
    target.station = stations.back().name;
    target.down = 400.0 * k;
    target.ahead = 60;
    out.targets.push_back(target);
  }
  out.job = blade::job_of(stations);
  return out;
}

std::function<target::TargetSection(double)> wedges(double edge, double port, double starboard) {
  return [=](double chord) {
    auto target = shapes::both(shapes::wedge(chord, edge, port), chord, 0);
    target.starboard_shape = shapes::wedge(chord, edge, starboard);
    target.trailing_edge_thickness = edge;
    return target;
  };
}

fill::EdgeCard card_of(const Blade& blade) { return fill::edge_card_of(blade.job, blade.targets, 1000); }

}  // namespace

TEST_CASE("the taper of a 4-digit form is its slope in closed form") {
  // NACA Report 460: slope at the edge 1.16925 t, half-thickness 0.0105 t; so the faces meet 0.0105/1.16925 = 0.0089801
  // chords past the edge whatever t: 3.77164 mm of 420. Two thirds are 2.514, on a rule 2.5.
  for (const double t : {0.08, 0.12, 0.21}) {
    const auto card = card_of(blade_of({420, 420}, [t](double chord) { return shapes::naca(chord, t); }));
    REQUIRE(card.heights.size() == 2);
    for (const double taper : card.heights[0].taper) CHECK(taper == Approx(1.16925 * t).epsilon(1e-9));
    CHECK(card.heights[0].widths.at(0) == Approx(0.021 * t * 420).epsilon(1e-9));
    CHECK(*card.heights[0].furthest == Approx(3.77164).epsilon(1e-5));
    CHECK(card.build_past == 2.5);
    CHECK(card.held_back);
    CHECK(card.governs == 0u);
  }
}

TEST_CASE("build past, and the furthest, by hand") {
  // 4 mm, tapers 0.1 and 0.06: they meet 4/0.16 = 25 mm past the edge; two thirds are more than the usual 10.
  const auto card = card_of(blade_of({400, 360}, wedges(4, 0.1, 0.06)));
  CHECK(card.heights[1].taper[0] == Approx(0.1));
  CHECK(card.heights[1].taper[1] == Approx(0.06));
  CHECK(*card.heights[1].furthest == Approx(25));
  CHECK(card.build_past == 10);
  CHECK_FALSE(card.held_back);
  CHECK(card.heights[0].saw == Approx(340));
  CHECK(card.heights[0].finished == Approx(340));
  CHECK(*card.heights[1].batten == Approx(310));  // 360 - 60 + 10
}

TEST_CASE("faces that run parallel or open aft have no limit; one that closes enough has") {
  CHECK_FALSE(card_of(blade_of({400, 360}, wedges(30, 0, 0))).heights[0].furthest);
  CHECK_FALSE(card_of(blade_of({400, 360}, wedges(30, -0.05, 0.01))).heights[0].furthest);
  CHECK(*card_of(blade_of({400, 360}, wedges(4, -0.02, 0.12))).heights[0].furthest == Approx(40));
  CHECK(card_of(blade_of({400, 360}, wedges(30, 0, 0))).build_past == 10);
  // Faces that meet at the edge leave nothing to build past.
  CHECK(card_of(blade_of({400, 360}, wedges(0, 0.1, 0.1))).build_past == 0);
}

TEST_CASE("a straight batten misses a curved edge") {
  // Aft of the stock 340, 320, 280, 220 mm; straight from 340 to 220: 300 and 260 in between, 20 mm inside both.
  const auto full = card_of(blade_of({400, 380, 340, 280}, wedges(4, 0.1, 0.1)));
  CHECK(full.heights[1].miss == Approx(-20));
  CHECK(full.heights[2].miss == Approx(-20));
  CHECK(*full.heights[1].batten == Approx(310));
  CHECK(full.furthest_in.has_value());
  CHECK_FALSE(full.furthest_out);
  // 340, 300, 260, 242.5: straight 307.5 and 275 in between, 7.5 and 15 mm outside.
  const auto hollow = card_of(blade_of({400, 360, 320, 302.5}, wedges(4, 0.1, 0.1)));
  CHECK(hollow.heights[1].miss == Approx(7.5));
  CHECK(hollow.heights[2].miss == Approx(15));
  CHECK(hollow.furthest_out == 2u);
  CHECK_FALSE(hollow.furthest_in);
  const auto straight = card_of(blade_of({400, 370, 340}, wedges(4, 0.1, 0.1)));
  CHECK_FALSE(straight.furthest_in);
  CHECK_FALSE(straight.furthest_out);
}

TEST_CASE("coats move the saw line and narrow the edge") {
  // d = 0.74, taper 0.149451 a side, 4 mm: 2.724751 wide (worked by hand in coats_test); sawn 0.74 ahead.
  auto blade = blade_of({400, 360}, wedges(4, 0.149451, 0.149451));
  blade.job.coats = {blade::coat_of(0.74)};
  const auto card = card_of(blade);
  REQUIRE(card.stages.size() == 2);
  CHECK(card.heights[0].widths[0] == Approx(2.724751).margin(2e-5));
  CHECK(card.heights[0].widths[1] == Approx(4));
  CHECK(card.heights[0].saw == Approx(340 - 0.74));
  CHECK(card.heights[0].finished == Approx(340));
  CHECK(*card.heights[0].furthest == Approx(2.724751 / 0.298902).margin(1e-3));
}

TEST_CASE("the width under coats is that of the moved outline") {  // two routes
  auto blade = blade_of({420, 420}, [](double chord) {
    auto target = shapes::naca(chord, 0.12);
    target.curve = form::SectionCurve(target.curve.form(), std::nullopt, 4 / chord);
    target::fill_in_figures(target);
    return target;
  });
  blade.job.coats = {blade::coat_of(0.74)};
  const auto card = card_of(blade);
  REQUIRE(card.shown);
  CHECK(card.heights[0].widths[1] == Approx(4));
  CHECK(card.shown->edge_width == Approx(card.heights[0].widths[0]).margin(0.004));  // seen 0.0009
  CHECK(card.shown->trailing_edge_x == Approx(420 - 0.74).margin(1e-3));
}

TEST_CASE("one station, and no stock") {
  const auto one = card_of(blade_of({400}, wedges(4, 0.1, 0.1)));
  CHECK(one.heights.size() == 1);
  CHECK_FALSE(one.heights[0].batten);
  auto blade = blade_of({400, 360}, wedges(4, 0.1, 0.1));
  blade.targets[1].ahead.reset();
  const auto adrift = card_of(blade);
  CHECK_FALSE(adrift.from_stock);
  CHECK(adrift.heights[0].saw == Approx(400));  // from the leading edge
  // 2026-11-27: a nose built out 6 mm stands there by then or not; x counts from the edge as it was measured.
  for (auto& target : blade.targets) {
    target.leading_edge_x = -6;
    target.chord += 6;
  }
  CHECK(card_of(blade).heights[0].saw == Approx(400));
  CHECK_FALSE(adrift.heights[0].batten);
}

TEST_CASE("a card has a row at least every spacing, but none nearer than 50 mm") {
  const auto blade = blade_of({400, 380, 360}, wedges(4, 0.1, 0.1));
  CHECK(fill::edge_card_of(blade.job, blade.targets, 100).heights.size() == 9);
  CHECK(fill::edge_card_of(blade.job, blade.targets, 10).heights.size() == 17);
}

TEST_CASE("an edge that comes no further aft and no thicker is only sawn") {
  const Blade blade = blade_of({400, 360}, wedges(4, 0.1, 0.06));  // as above, 10 mm would be built past it
  std::vector<section::MeasuredSection> now(2);
  now[0].chord = 400, now[1].chord = 360;
  for (auto& one : now) one.figures.trailing_edge_thickness = 4;
  const auto card = [&] { return fill::edge_card_of(blade.job, blade.targets, 1000, now); };
  CHECK(card().nothing_to_build);
  CHECK(card().nothing_to_saw);
  CHECK(card().build_past == 0);
  CHECK_FALSE(card().held_back);
  CHECK(*card().heights[1].batten == Approx(300));  // the timber stands on the saw line: 360 - 60
  now[1].chord = 362;                               // it moves forward there
  CHECK(card().nothing_to_build);
  CHECK_FALSE(card().nothing_to_saw);
  now[1].chord = 359;  // aft
  CHECK_FALSE(card().nothing_to_build);
  CHECK(card().build_past == 10);
  now[1].chord = 360;
  now[0].figures.trailing_edge_thickness = 3.5;  // thicker
  CHECK_FALSE(card().nothing_to_build);
}

TEST_CASE("2026-11-26: what is built past the saw line is foretold in litres") {
  // A wedge 6 mm thick at the edge, its faces closing by 0.05 and 0.03: 10 mm past it is 5.2 mm thick, 56 mm² in all. Twice
  // 400 mm down the blade that is 44800 mm³.
  const auto card = card_of(blade_of({420, 400, 380}, wedges(6, 0.05, 0.03)));
  REQUIRE(card.build_past == 10);
  CHECK(fill::litres_sawn_off(card) == Approx(0.0448).epsilon(1e-6));
  fill::EdgeCard none = card;
  none.build_past = 0;
  CHECK(fill::litres_sawn_off(none) == 0);
}
