// Readings laid against the target: where x is counted from, gaps, calipers, repeats, inches, edges.
#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;

namespace {

double deepest(const recheck::Recheck& all) { return std::max(all.now().deepest_low, all.now().deepest_high); }

std::string line(const char* format, double a, double b, double c) {
  char out[200];
  std::snprintf(out, sizeof out, format, a, b, c);
  return out;
}

}  // namespace

TEST_CASE("perfect readings leave nothing") {
  const auto all = judged(plan(), {round(none)});
  CHECK(all.verdict == recheck::Verdict::nothing_left);
  CHECK(all.now().readings == 84);
  CHECK(all.now().within == 84);
  CHECK(deepest(all) < 0.005);                                             // mm; seen 0.0016, for faces are thinned to 0.002
  CHECK(all.now().litres.left.add + all.now().litres.left.remove < 1e-3);  // litres; seen 0.0004
  CHECK(all.spots.empty());
}

TEST_CASE("perfect readings on the blade before its coats leave nothing at that stage") {
  // On the curve moved inwards by 0.8 mm along its normal, by hand: (x + 0.8 y'/s, y - 0.8/s), s = sqrt(1 + y'²); x
  // from the bare leading edge, which lies 0.8 mm aft of the finished one.
  const double d = 0.8;
  std::string text = "station,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    text += std::string(name) + ",0,0,0\n";
    for (const double f : {0.01, 0.03, 0.06, 0.1, 0.2, 0.3, 0.5, 0.7, 0.85, 0.93}) {
      const double x = f * chord_at(down), m = slope(down, x), s = std::sqrt(1 + m * m);
      text += name + line(",%.6f,%.6f,%.6f\n", x + d * m / s - d, wanted(down, x) - d / s, wanted(down, x) - d / s);
    }
  }
  const auto all = judged(plan(d), {text});
  CHECK(all.frozen.stage.kind == fill::StageKind::bare);
  CHECK(all.verdict == recheck::Verdict::nothing_left);
  CHECK(deepest(all) < 0.01);  // mm; seen 0.0018
  // Taken for the finished surface, the same readings are low by a coat: 0.8 mm, less at the nose, where x = 0 is the
  // edge.
  recheck::Options options;
  options.stage = "final";
  const auto other = judged(plan(d), {text}, options);
  CHECK(other.now().deepest_low > 0.75);
  CHECK(other.now().deepest_low < 1);  // seen 0.90
  CHECK(other.verdict == recheck::Verdict::go_on);
}

TEST_CASE("x from the stock, from the trailing edge, and gaps: the same blade") {
  const auto off = [](double x, bool port) { return port && x > 100 && x < 200 ? 1.5 : 0; };
  const auto plain = judged(plan(), {round(off)});
  std::string stock = "x_from,stock\nstation,x,port,starboard\n", trailing = "x_from,trailing-edge\nstation,x,port,starboard\n";
  std::string gaps = "board,40\nstation,x,port_gap,starboard_gap\n", inches = "units,in\nstation,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    for (const double x : places(down)) {
      const double p = wanted(down, x) + off(x, true), s = wanted(down, x);
      stock += name + line(",%.6f,%.6f,%.6f\n", x - ahead, p, s);
      trailing += name + line(",%.6f,%.6f,%.6f\n", chord_at(down) - x, p, s);
      gaps += name + line(",%.6f,%.6f,%.6f\n", x, 40 - p, 40 - s);
      inches += name + line(",%.8f,%.8f,%.8f\n", x / 25.4, p / 25.4, s / 25.4);
    }
  }
  CHECK(plain.now().deepest_high == Approx(1.5).margin(0.01));  // where the face runs all but straight aft; seen 1.5015
  for (const std::string& text : {stock, trailing, gaps, inches}) {
    INFO(text.substr(0, 40));
    const auto other = judged(plan(), {text});
    REQUIRE(other.now().readings == plain.now().readings);
    for (std::size_t h = 0; h < 3; ++h) {
      for (std::size_t k = 0; k < other.now().heights[h].readings.size(); ++k) {
        CHECK(other.now().heights[h].readings[k].depth == Approx(plain.now().heights[h].readings[k].depth).margin(1e-5));
      }
    }
  }
}

TEST_CASE("calipers tell the thickness, and what is left is shared by both faces") {
  std::string text = "station,x,thickness\n";
  for (const double x : places(300)) text += "B" + line(",%.6f,%.6f\n", x, std::max(0.0, 2 * wanted(300, x) - 2), 0);
  const auto all = judged(plan(), {text});
  const auto& readings = all.now().heights[0].readings;
  REQUIRE(readings.size() == 28);
  CHECK(readings[8].both);
  CHECK(readings[8].depth == Approx(1).margin(0.005));  // at the greatest thickness: half of 2 mm
  CHECK(readings[8].sigma <= 0.15 + 1e-12);             // half of what calipers stray by
  CHECK(readings[22].depth == readings[8].depth);
}

TEST_CASE("readings of one place are one, and surer") {
  const auto all = judged(plan(), {"station,x,port,starboard\nB,117,23,\nB,117,24,\nB,117,25,\nB,200,20,\n"});
  const auto& readings = all.now().heights[0].readings;
  REQUIRE(readings.size() == 2);
  CHECK(readings[0].half_breadth == Approx(24));
  CHECK(readings[0].repeats == 3);
  CHECK(readings[0].sigma == Approx(0.3 / std::sqrt(3.0)));
}

TEST_CASE("where the edges are now: ahead and chord in the row") {
  // The nose was built 3 mm too far forward and the trailing edge 5 mm too far aft: read from that nose, the blade
  // between them is perfect.
  std::string text = "station,ahead,chord,x,port,starboard\n";
  bool first = true;
  for (const double x : places(300)) {
    text += first ? "B,63,398" : "B,,";
    text += line(",%.6f,%.6f,%.6f\n", x + 3, wanted(300, x), wanted(300, x));
    first = false;
  }
  const auto all = judged(plan(), {text});
  CHECK(deepest(all) < 0.005);
  const auto& edges = all.now().heights[0].edges;
  CHECK(*edges.leading == Approx(-3).margin(1e-6));
  CHECK(*edges.trailing == Approx(-5).margin(1e-3));
  CHECK(all.defaults.size() == 2);  // x_from and reading_error; the leading edge was told
  // Without ahead the same sheet shifts the section by 3 mm, and that it was taken so is said.
  const auto shifted = judged(plan(), {round(none)});
  const auto said = [](const DefaultUsed& one) { return one.key == "ahead"; };
  CHECK(std::any_of(shifted.defaults.begin(), shifted.defaults.end(), said));
}

TEST_CASE("a reading at a height between stations") {
  const std::string text = "station,down,x,port,starboard\n" + [] {
    std::string out = rows("AB,150", 150, places(150), [](double, bool port) { return port ? 0.0 : 1.0; });
    return out;
  }();
  const auto all = judged(plan(), {text});
  REQUIRE(all.now().heights.size() == 1);
  const auto& height = all.now().heights[0];
  CHECK(height.surface.between == "A and B");
  for (const auto k : height.of(section::Face::port)) CHECK(std::abs(height.readings[k].depth) < 0.005);  // seen 0.0016
  CHECK(all.now().deepest_high == Approx(1).margin(0.01));
}

TEST_CASE("2026-11-26: of the plan's calipers, too, each face strays by half of a reading's error") {
  auto from = plan();
  from.stations[1].calipers = true;
  const auto frozen = recheck::freeze(from, "");
  REQUIRE(frozen);
  const auto heights = recheck::place_first(*frozen, from);
  REQUIRE(heights);
  for (std::size_t k = 0; k < heights->size(); ++k) {
    REQUIRE_FALSE((*heights)[k].readings.empty());
    for (const auto& one : (*heights)[k].readings) {
      CHECK(one.both == (k == 1));
      CHECK(one.sigma * std::sqrt(double(one.repeats)) == Approx(from.reading_error / (k == 1 ? 2 : 1)));
    }
  }
}
