// The map of highs and lows: depths known in closed form, and every odd blade readable.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "catch.hpp"
#include "drawing/contours.hpp"
#include "drawing/highs_and_lows.hpp"
#include "drawing/maps.hpp"
#include "drawing/readable.hpp"

using namespace fairblade;
using namespace fairblade::drawing;
using section::Face;

namespace {

Field sampled(double from, double to, std::size_t count, const std::function<double(double, double)>& f) {
  Field out;
  out.columns = count;
  const auto at = [&](std::size_t k) { return from + (to - from) * static_cast<double>(k) / static_cast<double>(count - 1); };
  for (std::size_t r = 0; r < count; ++r) {
    for (std::size_t c = 0; c < count; ++c) {
      out.places.emplace_back(at(c), at(r));
      out.values.push_back(f(at(c), at(r)));
    }
  }
  return out;
}

/// A face of one half-breadth all along.
struct Flat : target::FaceShape {
  double half;
  explicit Flat(double mm) : half(mm) {}
  double at(double) const override { return half; }
  double slope(double) const override { return 0; }
};

/// Boards of half-breadth 10 whose faces shall stand `port` and `starboard` mm further out, at each height.
struct Wanted {
  double down, port, starboard;
};
maps::Blade boards(const std::vector<Wanted>& wanted) {
  maps::Blade out;
  std::vector<job::Station> stations;
  for (const Wanted& one : wanted) {
    const blade::Shape flat = [](double) { return 0.025; };
    stations.push_back(blade::station("at " + std::to_string(int(one.down)), one.down, 400, flat, flat));
  }
  out.job = blade::job_of(stations);
  for (std::size_t k = 0; k < wanted.size(); ++k) {
    out.measured.push_back(blade::measured(out.job, k));
    target::TargetSection target;
    target.station = stations[k].name;
    target.down = wanted[k].down;
    target.ahead = stations[k].ahead;
    target.chord = 400;
    target.port_shape = std::make_shared<Flat>(10 + wanted[k].port);
    target.starboard_shape = std::make_shared<Flat>(10 + wanted[k].starboard);
    out.targets.push_back(target);
    out.changes.push_back(fill::compare(out.measured[k], target));
  }
  return out;
}

const std::vector<maps::Blade>& all() {
  static const std::vector<maps::Blade> out = maps::all();
  return out;
}

}  // namespace

TEST_CASE("contours of a slope, a cone and a ring") {
  // Closed forms; straight between the grid's places, so a slope is exact. Curves: 61 places over 12 mm.
  const auto slope = contour_lines(sampled(0, 10, 11, [](double x, double) { return x; }), 3.4);
  REQUIRE(slope.size() == 1);
  for (const Point& p : slope[0]) CHECK(p.x() == Approx(3.4));
  CHECK(std::abs(slope[0].front().y() - slope[0].back().y()) == Approx(10));
  const auto cone = [](double x, double y) { return 5 - std::hypot(x, y); };
  const Field hill = sampled(-6, 6, 61, cone);
  const auto circle = contour_lines(hill, 2);
  REQUIRE(circle.size() == 1);
  CHECK(circle[0].front().x() == circle[0].back().x());                                         // closed
  for (const Point& p : circle[0]) CHECK(std::hypot(p.x(), p.y()) == Approx(3).margin(0.005));  // seen 0.0014
  CHECK(area(area_above(hill, 2)) == Approx(9 * std::numbers::pi).epsilon(0.002));              // seen 9.5e-4
  const Field crater = sampled(-6, 6, 61, [&](double x, double y) { return 1 - std::abs(std::hypot(x, y) - 3); });
  const MultiPolygon ring = area_above(crater, 0);
  REQUIRE(ring.size() == 1);
  CHECK(ring[0].inners().size() == 1);
  CHECK(area(ring) == Approx((16 - 4) * std::numbers::pi).epsilon(0.003));  // seen 3.2e-5
  // An island in the crater is a piece of its own.
  const Field island = sampled(-6, 6, 121, [](double x, double y) { return std::cos(std::hypot(x, y) * std::numbers::pi / 2); });
  CHECK(area_above(island, 0.5).size() >= 2);
}

TEST_CASE("an area ends at the rim, and a level never reached has none") {
  const Field flat = sampled(0, 10, 11, [](double, double) { return 2; });
  CHECK(area(area_above(flat, 1)) == Approx(100));
  CHECK(contour_lines(flat, 1).empty());
  CHECK(area_above(flat, 3).empty());
  // Corners high two and two: whatever is joined, high and low share the square (by symmetry at the mean's level).
  const Field saddle = sampled(0, 1, 2, [](double x, double y) { return (x - 0.5) * (y - 0.5); });
  CHECK(area(area_above(saddle, 0.1)) == Approx(2 * 0.5 * 0.3 * 0.3));  // by hand: triangles with legs (0.25 - 0.1)/0.5
}

TEST_CASE("two millimetres everywhere are two millimetres everywhere") {
  const auto map = boards({{0, 2, 2}, {300, 2, 2}, {800, 2, 2}}).map();
  double least = 9, most = 0;
  for (const fill::MapRow& row : map.rows) {
    for (const Face face : {Face::port, Face::starboard}) {
      for (const double depth : row.of(face)) least = std::min(least, depth), most = std::max(most, depth);
    }
  }
  CHECK(least == Approx(2));
  CHECK(most == Approx(2));
  for (const fill::MapPlace& one : map.readings) CHECK(one.depth == Approx(2));
  REQUIRE(map.deepest_add);
  CHECK(map.deepest_add->depth == Approx(2));
  CHECK_FALSE(map.deepest_removal);
}

TEST_CASE("depths straight down the blade have their contours at known heights") {
  // Port from +0.6 at the top to +3.4, so +1, +2, +3 lie at 1/7, 1/2, 6/7; starboard the same to take off.
  const auto blade = boards({{0, 0.6, -0.6}, {700, 3.4, -3.4}});
  const Sheet sheet = draw_highs_and_lows(blade.job, blade.map());
  for (const std::string face : {"port", "starboard"}) {
    const Path& outline = readable::path_named(sheet, face + "-new-outline");
    const double top = outline.runs[0].front().y(), bottom = outline.runs[0].back().y();
    std::vector<double> seen;
    for (const auto& line : readable::path_named(sheet, face + "-contours").runs) {
      double from = 1e9, to = -1e9;
      for (const Point& p : line) from = std::min(from, p.y()), to = std::max(to, p.y());
      CHECK(to - from < 0.01);  // seen 0
      seen.push_back(((from + to) / 2 - top) / (bottom - top));
    }
    std::sort(seen.begin(), seen.end());
    REQUIRE(seen.size() == 3);
    CHECK(seen[0] == Approx(1.0 / 7).margin(1e-5));
    CHECK(seen[1] == Approx(0.5).margin(1e-5));
    CHECK(seen[2] == Approx(6.0 / 7).margin(1e-5));
  }
  const std::string words = readable::words_of(sheet);
  INFO(words);
  CHECK(words.find("lowest +3.4\n") != std::string::npos);
  CHECK(words.find("highest \xe2\x88\x92"
                   "3.4\n") != std::string::npos);
  CHECK(words.find("Take off first") != std::string::npos);
}

TEST_CASE("add and take off are hatched apart, and neither inside the reading error") {
  const auto inked = [](const Sheet& sheet, const char* id) { return !readable::path_named(sheet, id).runs.empty(); };
  const auto blade = boards({{0, 2, -2}, {700, 2, -2}});
  const Sheet sheet = draw_highs_and_lows(blade.job, blade.map());
  CHECK(inked(sheet, "port-add"));
  CHECK_FALSE(inked(sheet, "port-take-off"));
  CHECK(inked(sheet, "starboard-take-off"));
  CHECK_FALSE(inked(sheet, "starboard-add"));
  CHECK(readable::path_named(sheet, "starboard-take-off").fill == Fill::light);
  CHECK(readable::path_named(sheet, "port-add").fill == Fill::none);
  const auto little = boards({{0, 0.49, -0.49}, {700, 0.49, -0.49}});  // the reading error is 0.5
  const Sheet white = draw_highs_and_lows(little.job, little.map());
  for (const char* id : {"port-add", "port-take-off", "starboard-add", "starboard-take-off"}) CHECK_FALSE(inked(white, id));
  CHECK(readable::words_of(white).find("Nowhere: no place is further out than the reading error of 0.5 mm") != std::string::npos);
}

TEST_CASE("outlines to scale, forward to the left and to the right") {
  // By hand: chord 400 and 300, edges 60 and 20 ahead of the stock, 500 apart.
  cases::Wish wish;
  wish.chord = 400, wish.ahead = 60;
  const auto blade =
      maps::make("", 2, 0, 500, wish, [](cases::Wish& own, double w) { own.chord -= 100 * w, *own.ahead -= 40 * w; });
  const Sheet sheet = draw_highs_and_lows(blade.job, blade.map());
  const std::string words = readable::words_of(sheet);
  const double scale = std::stod(words.substr(words.find("scale 1 : ") + 10));
  for (const bool port : {true, false}) {
    const std::string face = port ? "port" : "starboard";
    const auto& runs = readable::path_named(sheet, face + "-new-outline").runs;
    const Path& stock = readable::path_named(sheet, face + "-stock");
    const double way = port ? 1 : -1, x = stock.runs[0][0].x();
    CHECK((runs[0].front().x() - x) * way * scale == Approx(-60));
    CHECK((runs[0].back().x() - x) * way * scale == Approx(-20));
    CHECK((runs[1].front().x() - x) * way * scale == Approx(340));
    CHECK((runs[1].back().x() - x) * way * scale == Approx(280));
    CHECK((runs[0].back().y() - runs[0].front().y()) * scale == Approx(500));
  }
}

TEST_CASE("the old outline shows where the blade is built out or cut back, and only there") {
  for (const maps::Blade& blade : all()) {
    if (blade.name != "built-out" && blade.name != "five") continue;
    const Sheet sheet = draw_highs_and_lows(blade.job, blade.map());
    const bool there = std::any_of(sheet.items.begin(), sheet.items.end(), [](const Item& item) {
      const Path* path = std::get_if<Path>(&item);
      return path && path->id == "port-old-outline";
    });
    CHECK(there == (blade.name == "built-out"));
  }
}

TEST_CASE("what an extension adds is as deep as it is long") {
  // A nose built 25 mm forward and an edge 12 mm aft: no place is further from the old blade than its new tips.
  for (const maps::Blade& blade : all()) {
    if (blade.name != "built-out") continue;
    const auto map = blade.map();
    const auto& row = map.rows.front();
    CHECK(row.port.front() == Approx(25).margin(0.01));  // seen 0 both
    CHECK(row.port.back() == Approx(12).margin(0.01));
  }
}

TEST_CASE("depths of a map are those of the stations' own comparison") {
  // Two routes: the map's grid against fill::compare's deepest, on common nodes. Seen 0.012 mm off; 0.096 on the
  // extended nose, whose cut is a peak between two columns.
  for (const maps::Blade& blade : all()) {
    INFO(blade.name);
    const auto map = blade.map();
    double add = 0, removal = 0, wanted_add = 0, wanted_removal = 0;
    for (const fill::MapRow& row : map.rows) {
      for (const Face face : {Face::port, Face::starboard}) {
        for (const double depth : row.of(face)) add = std::max(add, depth), removal = std::max(removal, -depth);
      }
    }
    for (const auto& change : blade.changes) {
      wanted_add = std::max(wanted_add, change.add.depth);
      wanted_removal = std::max(wanted_removal, change.removal.depth);
    }
    CHECK(add == Approx(wanted_add).epsilon(0.02).margin(0.1));
    CHECK(removal == Approx(wanted_removal).epsilon(0.02).margin(0.1));
  }
}

TEST_CASE("every blade's map is readable, fits both papers and names what it shows") {
  for (const maps::Blade& blade : all()) {
    INFO(blade.name);
    const Sheet sheet = draw_highs_and_lows(blade.job, blade.map());
    readable::check(sheet);
    const bool upright = sheet.width == 174 && sheet.height == 243, lying = sheet.width == 243 && sheet.height == 174;
    CHECK((upright || lying));
    const std::string words = readable::words_of(sheet);
    for (const char* needed : {"Highs and lows", "BEGIN HERE", "PORT\n", "STARBOARD\n", "FWD\n", "leading edge\n",
                               "trailing edge\n", "scale 1 : ", "reading error"}) {
      INFO(needed << " in " << words);
      CHECK(words.find(needed) != std::string::npos);
    }
    const auto map = blade.map();
    if (map.deepest_add) CHECK(words.find("lowest +") != std::string::npos);
    if (map.deepest_removal) CHECK(words.find("highest \xe2\x88\x92") != std::string::npos);
  }
}

TEST_CASE("a map takes less where wide margins leave less, and stays readable") {
  // 25 mm of margin and a ruler that reads 90: the least that a page gives, by hand in tests/pages.
  for (const PaperRoom& room : {PaperRoom{190, 128, 128}, PaperRoom{223, 150, 174}}) {
    for (const maps::Blade& blade : all()) {
      INFO(blade.name << " in " << room.long_side << " by " << room.short_side);
      const Sheet sheet = draw_highs_and_lows(blade.job, blade.map(), {}, room);
      readable::check(sheet);
      CHECK(std::max(sheet.width, sheet.height) == room.long_side);
      CHECK(std::min(sheet.width, sheet.height) == room.short_side);
    }
  }
}

TEST_CASE("every blade's map for a telephone is readable at its width, one face above the other, without a scale") {
  for (const maps::Blade& blade : all()) {
    INFO(blade.name);
    const Sheet sheet = draw_highs_and_lows_for_telephone(blade.job, blade.map());
    readable::check(sheet);  // no type under 2.2 mm: on 358 of a telephone's pixels 92 mm make that 8.6 of them
    CHECK(sheet.width == 92);
    const std::string words = readable::words_of(sheet);
    for (const char* needed : {"BEGIN HERE", "PORT\n", "STARBOARD\n", "FWD\n", "reading error"}) {
      INFO(needed << " in " << words);
      CHECK(words.find(needed) != std::string::npos);
    }
    CHECK(words.find("scale 1 : ") == std::string::npos);
    const auto top_of = [&](const char* id) { return readable::path_named(sheet, id).runs[0].front().y(); };
    CHECK(top_of("port-new-outline") < top_of("starboard-new-outline"));
  }
}

TEST_CASE("a map of what is left, from readings alone") {
  // Port: 4 mm at 100, 0 at 300, straight between; starboard read at the lower station only.
  using At = fill::StationDepths::At;
  fill::StationDepths upper{"A", 0, 50.0, 400, false, {At{100, Face::port, 4}, At{300, Face::port, 0}}};
  fill::StationDepths lower{"B", 500,   30.0,
                            400, false, {At{100, Face::port, 4}, At{300, Face::port, 0}, At{200, Face::starboard, -1.5}}};
  const auto map = fill::map_of_readings({lower, upper}, 0.5);
  REQUIRE(map.rows.size() == 2);
  for (const fill::MapRow& row : map.rows) {
    for (std::size_t c = 0; c < map.fractions.size(); ++c) {
      const double x = 400 * map.fractions[c];
      CHECK(row.port[c] == Approx(4 - 4 * std::clamp((x - 100) / 200, 0.0, 1.0)));
      CHECK(row.starboard[c] == Approx(-1.5));
    }
  }
  CHECK(map.deepest_add->station == "A");
  CHECK(map.deepest_removal->station == "B");
  REQUIRE(map.notes.size() == 1);
  CHECK(map.notes[0] == "Not read to starboard: station A.");
  auto job = blade::job_of({});
  const Sheet sheet = draw_highs_and_lows(job, map, {"What is left", "Sand station B first.", "the reading error", ""});
  readable::check(sheet);
  const std::string words = readable::words_of(sheet);
  CHECK(words.find("What is left") != std::string::npos);
  CHECK(words.find("Sand station B first.") != std::string::npos);
  CHECK(words.find("leave it alone") != std::string::npos);
  // 2026-11-27: with coats to come it says which surface the depths are to.
  const Sheet coated = draw_highs_and_lows(job, map, {"Highs", "Begin at B.", "the reading error", "Shaped 0.6 mm deeper."});
  readable::check(coated);
  const std::string said = readable::words_of(coated);
  CHECK(said.find("Shaped 0.6 mm deeper.") != std::string::npos);
  CHECK(fill::map_of_readings({}, 0.5).rows.empty());
  CHECK(draw_highs_and_lows(job, {}).items.empty());
}
