#include <cmath>

#include "catch.hpp"
#include "planned.hpp"

using namespace fairblade;

TEST_CASE("too damp within three degrees of the dew point") {
  auto job = planned::tapered(2, 900, 420, 400, 0.11, 0.12);
  CHECK_FALSE(planned::plan(job).work.schedule.too_damp);
  job.workshop.humidity_percent = 85;  // 20 °C and 85 %: 17.4, 2.6 below the room
  const auto damp = planned::plan(job);
  CHECK(damp.work.schedule.too_damp);
  CHECK(damp.work.schedule.room == Approx(2.6).margin(0.05));
  CHECK(damp.work.warnings.back().code == "dew-point");
}

TEST_CASE("longboard and flat block") {
  // The rise of a chord L on a circle R is R - sqrt(R² - L²/4).
  CHECK(1000 - std::sqrt(1e6 - 400) == Approx(0.2).epsilon(1e-3));
  const auto p = planned::plan(planned::tapered(2, 900, 400, 400, 0.11, 0.12));
  // 4-digit form, t = 0.12 at x = 0.3: y'' = 5t(-0.2969/4 x^-1.5 - 0.7032 + 1.7058 x - 1.218 x²) = -0.45005 where
  // y' = 0 nearly; R = 400/0.45005 = 888.8 mm.
  const double second = 0.6 * (-0.2969 / 4 * std::pow(0.3, -1.5) - 0.7032 + 1.7058 * 0.3 - 1.218 * 0.09);
  for (const auto& place : p.work.schedule.blocks) {
    if (std::abs(place.chord_fraction - 0.3) > 1e-9) continue;
    REQUIRE(place.radius);
    CHECK(*place.radius == Approx(-400 / second).epsilon(1e-3));  // seen 2e-5
    CHECK(*place.block == Approx(std::sqrt(1.6 * -400 / second)).epsilon(1e-3));
  }
  // The roundest place of the faces is where they begin, at 0.15 of the chord: R = chord (1 + y'²)^1.5 / -y'' there.
  const double x = 0.15, rise = 0.6 * (0.2969 / (2 * std::sqrt(x)) - 0.1260 - 0.7032 * x + 0.8529 * x * x - 0.406 * x * x * x);
  const double bend = 0.6 * (-0.2969 / 4 * std::pow(x, -1.5) - 0.7032 + 1.7058 * x - 1.218 * x * x);
  CHECK(p.work.schedule.longboard.radius == Approx(400 * std::pow(1 + rise * rise, 1.5) / -bend).epsilon(2e-3));
  CHECK(p.work.schedule.longboard.thickness == Approx(p.work.schedule.longboard.radius / 100));
  CHECK(p.work.schedule.blocks.size() == 2 * 2 * 7);
}

TEST_CASE("coats of one day by the clock") {
  // Three coats of 40 minutes from 8:00, window 1 to 2 hours: 8:00, 9:00, 10:00, done 10:40.
  const auto day = fill::day_of("paint", 3, 480, 40, {1, 2}, 12 * 60);
  REQUIRE(day);
  REQUIRE(day->size() == 3);
  CHECK(fill::clock_text((*day)[2].start) == "10:00");
  CHECK(fill::clock_text((*day)[2].end) == "10:40");
  CHECK(fill::clock_text((*day)[0].latest) == "9:20");   // 12:00 less two hours and forty minutes
  CHECK(fill::clock_text((*day)[1].latest) == "10:00");  // the window closes two hours after 8:00
  CHECK(fill::clock_text((*day)[2].latest) == "11:00");
  const auto slow = fill::day_of("paint", 3, 480, 150, {1, 2}, 1200);
  REQUIRE_FALSE(slow);
  CHECK(slow.faults()[0].what == "one coat of paint takes 150 minutes, and it must be coated again within 120");
  const auto dark = fill::day_of("paint", 3, 480, 40, {1, 2}, 10 * 60);
  REQUIRE_FALSE(dark);
  CHECK(dark.faults()[0].remedy == "begin by 7:20, or plan fewer coats a day");
  CHECK(fill::day_of("paint", 1, 480, 150, {1, 2}, 1200));  // one coat waits for none
}

TEST_CASE("shopping is in whole packs, and adds up") {
  auto job = planned::tapered(3, 900, 450, 400, 0.10, 0.13);
  job.packs.resin = job::Pack{1, 20.0};
  job.packs.hardener = job::Pack{0.4, 12.0};
  job.packs.faces_powder = job::Pack{0.25, 9.0};
  job.packs.currency = "shells";
  const auto p = planned::plan(job);
  const auto& list = p.work.shopping;
  double cost = 0, resin = 0;
  for (const auto& mix : p.work.mixes) resin += mix.mix.resin_kg;
  resin += p.work.coats.pinhole_litres * 1.15 * 100 / 138;
  for (const auto& item : list.items) {
    if (item.pack_size) {
      CHECK(item.packs * *item.pack_size >= item.needed);
      CHECK((item.packs - 1) * *item.pack_size < item.needed);
    }
    cost += item.cost.value_or(0);
  }
  CHECK(list.items.at(0).what == "epoxy resin");  // one epoxy for both fillers
  CHECK(list.items[0].needed == Approx(resin).epsilon(1e-9));
  CHECK(list.cost == Approx(cost));
  CHECK_FALSE(list.all_priced);  // no price for the edges' powder
  job.faces.hardener_by_weight = 30;
  CHECK(planned::plan(job).work.shopping.items.at(0).what == "epoxy resin for the edges");
}

TEST_CASE("what two coatings cost a year") {
  const auto years = fill::compare_coatings({"hard", 400, 10}, {"soft", 100, 2});
  CHECK(years.cheaper == "soft");
  CHECK(years.cheaper_a_year == Approx(50));
  CHECK(years.dearer_a_year == Approx(40));
}
