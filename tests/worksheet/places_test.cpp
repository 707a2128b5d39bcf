// Where to read, and at which heights. Expected: by hand, and from what yards do (crowded into the first
// tenth; common practice, no source).
#include <cmath>

#include "catch.hpp"
#include "worksheet/worksheet.hpp"

using namespace fairblade;
using namespace fairblade::worksheet;

namespace {

job::StationToMeasure station(double chord, job::XFrom from = job::XFrom::leading_edge, std::optional<double> ahead = {}) {
  job::StationToMeasure out;
  out.name = "A";
  out.chord = chord;
  out.x_from = from;
  out.ahead = ahead;
  return out;
}

bool whole(double value) { return std::abs(value - std::round(value)) < 1e-9; }

Outcome<std::vector<job::StationToMeasure>> spaced(int count, double span, double chord, double tip,
                                                   LengthUnit units = LengthUnit::mm) {
  return evenly_spaced({count, span, chord, tip, units});
}

}  // namespace

TEST_CASE("places crowd to the nose, rise, and end at the trailing edge") {
  for (const LengthUnit units : {LengthUnit::mm, LengthUnit::cm, LengthUnit::inch}) {
    for (double chord = 50; chord < 4000; chord *= 1.037) {
      INFO(chord << " mm, " << name_of(units));
      const auto x = suggested_places(station(chord), units);
      REQUIRE(x.size() == 12);
      CHECK(x.front() == 0);
      CHECK(x.back() == chord);
      double widest = 0;
      int in_first_tenth = 0;
      for (std::size_t k = 0; k < x.size(); ++k) {
        if (x[k] <= 0.1 * chord) ++in_first_tenth;
        if (k == 0) continue;
        CHECK(x[k] > x[k - 1]);
        widest = std::max(widest, std::sqrt(x[k] / chord) - std::sqrt(x[k - 1] / chord));
      }
      CHECK(in_first_tenth >= 6);
      CHECK(widest < 0.17);  // of 1, where eleven even steps are 0.09 each (seen 0.154)
    }
  }
}

TEST_CASE("places are numbers that a rule has") {
  // By hand: 0.7, 1.5, 3, 5.5, 9, 16, 28, 43, 62 and 82 % of 420, to 1, 2, 5 or 10 mm as they grow.
  CHECK(suggested_places(station(420), LengthUnit::mm) == std::vector<double>{0, 3, 6, 13, 23, 38, 68, 120, 180, 260, 340, 420});
  for (double chord = 300; chord < 2000; chord += 7.3) {
    auto x = suggested_places(station(chord), LengthUnit::mm);
    x.pop_back();
    for (const double one : x) CHECK(whole(one));
    auto inches = suggested_places(station(chord), LengthUnit::inch);
    inches.pop_back();
    for (const double one : inches) CHECK(whole(one / 25.4 * 16));
  }
}

TEST_CASE("2026-11-27: behind a skeg the edge is square, and no places crowd to it") {
  auto behind = station(330);
  behind.skeg = 230;
  // By hand: 0, 3 and then every tenth of 330, to 1, 2, 5 or 10 mm as they grow (steps of a twentieth of x at most).
  CHECK(suggested_places(behind, LengthUnit::mm) == std::vector<double>{0, 10, 33, 66, 100, 130, 165, 200, 230, 260, 300, 330});
}

TEST_CASE("places from the trailing edge and from the stock") {
  const auto back = suggested_places(station(420, job::XFrom::trailing_edge), LengthUnit::mm);
  CHECK(back.front() == 420);
  CHECK(back.back() == 0);
  const auto stock = suggested_places(station(420.5, job::XFrom::stock, 78.25), LengthUnit::mm);
  CHECK(stock.front() == -78.25);
  CHECK(stock.back() == 420.5 - 78.25);
  for (std::size_t k = 1; k < back.size(); ++k) {
    CHECK(back[k] < back[k - 1]);
    CHECK(stock[k] > stock[k - 1]);
    if (k + 1 < back.size()) CHECK((whole(back[k]) && whole(stock[k])));
  }
}

TEST_CASE("lengths as a rule has them") {
  const auto in = [](double inches) { return on_rule(25.4 * inches, LengthUnit::inch); };
  CHECK(in(0) == "0");
  CHECK(in(0.1875) == "3/16");
  CHECK(in(16.5) == "16 1/2");
  CHECK(in(-1.125) == "-1 1/8");
  CHECK(in(12) == "12");
  CHECK(in(15.0 / 64) == "15/64");
  CHECK(in(16.535) == "16.535");
  CHECK(on_rule(420, LengthUnit::mm) == "420");
  CHECK(on_rule(66.5, LengthUnit::mm) == "66.5");
  CHECK(on_rule(68, LengthUnit::cm) == "6.8");
  CHECK(on_rule_with_unit(1000, LengthUnit::cm) == "100 cm");
}

TEST_CASE("stations from the top to the bottom") {
  const auto five = spaced(5, 1000, 420, 300);
  REQUIRE(five);
  const double downs[] = {0, 250, 500, 750, 1000}, chords[] = {420, 390, 360, 330, 300};  // by hand: 420 - 0.12 down
  for (std::size_t k = 0; k < 5; ++k) {
    CHECK((*five)[k].name == std::string(1, static_cast<char>('A' + k)));
    CHECK((*five)[k].down == downs[k]);
    CHECK((*five)[k].chord == Approx(chords[k]));
  }
  const auto odd = spaced(4, 973, 420, 420);
  REQUIRE(odd);
  CHECK((*odd)[1].down == 325);  // 324.3 and 648.7 to the next 5
  CHECK((*odd)[2].down == 650);
  CHECK((*odd)[3].down == 973);  // the bottom is where it is
  const auto lone = spaced(1, 800, 400, 300);
  REQUIRE(lone);
  CHECK((*lone)[0].down == 400);
  CHECK((*lone)[0].chord == Approx(350));
  const auto most = spaced(26, 2000, 400, 300);
  REQUIRE(most);
  for (std::size_t k = 1; k < 26; ++k) CHECK((*most)[k].down > (*most)[k - 1].down);
  CHECK((*most)[25].name == "Z");
  CHECK_FALSE(spaced(0, 1000, 420, 420));
  CHECK_FALSE(spaced(27, 1000, 420, 420));
  CHECK_FALSE(spaced(26, 40, 420, 420));
}

TEST_CASE("too few stations are told, and one is measured twice") {
  const auto sheet = [&](int count, double span) {
    job::ToMeasure job;
    job.stations = *spaced(count, span, 400, 400);
    job.bottom = span;
    return worksheet_of(job);
  };
  CHECK(sheet(2, 900).advice.size() == 1);
  CHECK(sheet(3, 900).advice.empty());
  CHECK(sheet(4, 1200).advice.size() == 1);
  CHECK(sheet(5, 1200).advice.empty());
  CHECK(sheet(1, 900).twice == 0);
  CHECK(sheet(5, 900).twice == 2);
}
