// Litres left, by hand.
#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;

namespace {

/// Length of one face of the unit form, by 200 000 straight pieces even in sqrt(x); chords.
double girth_of_unit() {
  double out = 0, x = 0, y = 0;
  const int n = 200000;
  for (int k = 1; k <= n; ++k) {
    const double u = double(k) / n, nx = u * u, ny = blade::naca(t, nx);
    out += std::hypot(nx - x, ny - y);
    x = nx, y = ny;
  }
  return out;
}

}  // namespace

TEST_CASE("a millimetre too much everywhere is the surface times a millimetre") {
  // Along the normal, on the curve moved outwards; its nose stands 1 mm forward, so `ahead` is 61 and x counts from
  // there.
  std::string text = "station,ahead,chord,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    text += std::string(name) + ",61," + std::to_string(chord_at(down) + 1) + ",0,0,0\n";
    for (const double f : {0.005, 0.02, 0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.8, 0.97}) {
      const double x = f * chord_at(down), m = slope(down, x), s = std::sqrt(1 + m * m);
      char row[200];
      std::snprintf(row, sizeof row, "%s,,,%.6f,%.6f,%.6f\n", name, x - m / s + 1, wanted(down, x) + 1 / s,
                    wanted(down, x) + 1 / s);
      text += row;
    }
  }
  const auto all = judged(plan(), {text});
  // Two faces of girth g·c, c from 420 to 360: g · 2 · 390 · 600 mm² · 1 mm.
  const double by_hand = girth_of_unit() * 2 * 390 * 600 * 1e-6;
  CHECK(all.now().litres.left.remove == Approx(by_hand).epsilon(0.002));  // 0.4772 L; seen 0.07 % more
  CHECK(all.now().litres.left.add == Approx(0).margin(1e-6));
  double sum = 0;
  for (const auto& one : all.now().litres.by_height) sum += one.remove;
  CHECK(sum == Approx(all.now().litres.left.remove));
  CHECK(all.now().litres.by_height[1].remove == Approx(by_hand / 2).epsilon(0.001));  // B stands for the middle half
  REQUIRE(all.spots.size() == 2);  // both faces high as a whole, at all three heights
  CHECK(all.spots[0].kind == recheck::SpotKind::face_high);
  CHECK(all.spots[0].reach.size() == 3);
}

TEST_CASE("high here and low there do not cancel") {
  // Port 1 mm low at A, 1 mm high at C, straight between: half a millimetre on average over half of the face, each way.
  const auto all = [&] {
    std::string text = "station,x,port,starboard\n";
    text += rows("A", 0, places(0), [](double, bool port) { return port ? -1.0 : 0.0; });
    text += rows("C", 600, places(600), [](double, bool port) { return port ? 1.0 : 0.0; });
    return judged(plan(), {text});
  }();
  const double face = girth_of_unit() * 390 * 600 * 1e-6;
  // The millimetre is of half-breadth, which at the nose is less along the normal; and the upper half is the longer.
  CHECK(all.now().litres.left.add == Approx(face / 4).epsilon(0.1));     // seen 4.9 % more
  CHECK(all.now().litres.left.remove == Approx(face / 4).epsilon(0.1));  // seen 7.1 % less
}

TEST_CASE("readings that do not reach the plan's end stations are carried on, and it is said") {
  const auto all =
      judged(plan(), {"station,x,port,starboard\n" + rows("B", 300, places(300), [](double, bool) { return -1.0; })});
  CHECK(all.now().litres.carried_on);
  const auto whole = judged(plan(), {round([](double, bool) { return -1.0; })});
  CHECK(all.now().litres.left.add == Approx(whole.now().litres.left.add).epsilon(0.01));  // seen 0.000003
  REQUIRE(all.notes.size() >= 2);
  CHECK(has(all.notes[all.notes.size() - 2], "Not read this time: station A, C"));
}

TEST_CASE("below the last station the bottom is told apart") {
  auto deep = plan();
  deep.bottom = 700;
  const auto all = judged(deep, {round([](double, bool) { return -1.0; })});
  const auto without = judged(plan(), {round([](double, bool) { return -1.0; })});
  CHECK(all.now().litres.left.add == without.now().litres.left.add);
  // 100 mm more like station C: 100 · 360 against 600 · 390.
  CHECK(all.now().litres.beyond.add == Approx(without.now().litres.left.add * 100 * 360 / (600 * 390.0)).epsilon(0.002));
}

TEST_CASE("what reading error alone would show, by simulation") {
  // 400 blades on their target, read with 0.3 mm: mean and spread of the litres against what is foretold.
  std::mt19937 random(11);
  std::normal_distribution<double> noise(0, 0.3);
  double sum = 0, square = 0, foretold = 0, error = 0;
  const int blades = 400;
  for (int k = 0; k < blades; ++k) {
    const auto all = judged(plan(), {round([&](double, bool) { return noise(random); })});
    const double add = all.now().litres.left.add;
    sum += add / blades;
    square += add * add / blades;
    foretold += all.now().litres.by_chance / blades;
    error += all.now().litres.add_error / blades;
  }
  CHECK(foretold == Approx(sum).epsilon(0.05));                        // 0.0378 L; seen 1.6 % less
  CHECK(error == Approx(std::sqrt(square - sum * sum)).epsilon(0.1));  // 0.0116 L; seen 0.1 % more
}
