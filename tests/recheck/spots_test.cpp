// Humps, hollows, flats, whole faces and lone readings, told from reading noise.
#include <algorithm>

#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;
using recheck::SpotKind;

namespace {

std::vector<double> every(double step, double down) {
  std::vector<double> out;
  for (double x = 0; x < chord_at(down); x += step) out.push_back(x);
  out.push_back(chord_at(down));
  return out;
}
std::string closely(const std::string& station, double down, const Off& off) { return rows(station, down, every(15, down), off); }
const std::string header = "station,x,port,starboard\n";

/// 1.2 mm high in the middle of 60 mm, a half wave.
double hump(double x) { return x > 150 && x < 210 ? 1.2 * std::sin(3.14159265358979 * (x - 150) / 60) : 0; }

}  // namespace

TEST_CASE("a hump of 1.2 mm over 60 mm is named, and where") {
  const auto all =
      judged(plan(), {header + closely("A", 0, none) + closely("B", 300, [](double x, bool port) { return port ? hump(x) : 0; }) +
                      closely("C", 600, none)});
  REQUIRE(all.spots.size() == 1);
  const auto& spot = all.spots[0];
  const auto& height = all.now().heights[spot.worst_at.height];
  CHECK(spot.kind == SpotKind::hump);
  CHECK(height.surface.name == "B");
  CHECK(spot.face == section::Face::port);
  CHECK(height.readings[spot.worst_at.first].x == 165);
  CHECK(height.readings[spot.worst_at.last].x == 195);
  CHECK(spot.worst == Approx(-1.2).margin(0.01));
  CHECK(all.verdict == recheck::Verdict::go_on);
}

TEST_CASE("where the target is reached within a face that is high, there is nothing to fill") {
  // 2026-11-26: such a place was told as "low place, 0.0 low", to be filled.
  const auto off = [](double x, bool port) { return !port ? 0 : x > 100 && x < 200 ? 0.0 : 1.0; };
  const auto all = judged(plan(), {header + closely("A", 0, none) + closely("B", 300, off) + closely("C", 600, none)});
  REQUIRE(!all.spots.empty());
  for (const auto& spot : all.spots) {
    CHECK(spot.mean < -0.25);
    CHECK((spot.kind == SpotKind::hump || spot.kind == SpotKind::face_high));
  }
}

TEST_CASE("in noise of 0.3 mm that hump is found, and nothing else is") {
  int found = 0, others = 0;
  for (unsigned seed = 1; seed <= 50; ++seed) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, 0.3);
    const auto noisy = [&](double, bool) { return noise(random); };
    const auto all =
        judged(plan(), {header + closely("A", 0, noisy) +
                        closely("B", 300, [&](double x, bool port) { return noise(random) + (port ? hump(x) : 0); }) +
                        closely("C", 600, noisy)});
    for (const auto& spot : all.spots) {
      const auto& height = all.now().heights[spot.worst_at.height];
      const double from = height.readings[spot.worst_at.first].x, to = height.readings[spot.worst_at.last].x;
      const bool there = height.surface.name == "B" && spot.face == section::Face::port && from <= 180 && to >= 180;
      const bool right = there && spot.kind == SpotKind::hump;
      ++(right ? found : others);
    }
  }
  CHECK(found >= 35);  // of 50; seen 40
  CHECK(others <= 1);  // seen 0
}

TEST_CASE("noise alone raises nothing") {
  for (const double told : {0.3, 0.5}) {
    int with_spots = 0, go_on = 0, lone = 0;
    for (unsigned seed = 1; seed <= 200; ++seed) {
      std::mt19937 random(1000 + seed);
      std::normal_distribution<double> noise(0, 0.3);
      auto frozen = plan();
      frozen.reading_error = told;
      const auto all = judged(frozen, {round([&](double, bool) { return noise(random); })});
      with_spots += all.spots.empty() ? 0 : 1;
      go_on += all.verdict == recheck::Verdict::go_on ? 1 : 0;
      for (const auto& height : all.now().heights)
        lone += std::any_of(height.readings.begin(), height.readings.end(), [](const auto& one) { return one.alone; });
    }
    CHECK(with_spots <= 4);  // of 200 rounds; seen 1 told 0.3, none told 0.5
    CHECK(go_on <= 8);       // seen 2 and 1
    CHECK(lone <= 4);        // seen 0
  }
}

TEST_CASE("2026-11-28: readings crowded onto the round of the nose do not have the rest judged too strictly") {
  // A half-breadth's error reaches the depth by the cosine of the slope alone: their scatter was taken for that of all, and a
  // third of perfect blades were told to go on.
  constexpr double error = 0.2;
  const std::vector<double> crowded{0, 0.0025, 0.005, 0.0075, 0.01, 0.0125, 0.02, 0.04, 0.07, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 1};
  int go_on = 0;
  double judged_with = 0;
  const int rounds = 60;
  for (unsigned seed = 1; seed <= rounds; ++seed) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, error);
    auto frozen = plan();
    frozen.reading_error = 2.5 * error;
    std::string text = "station,x,port,starboard\n";
    for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}})
      text += blades::rows(name, down, blades::places(down, crowded), [&](double, bool) { return noise(random); });
    const auto all = judged(frozen, {text});
    go_on += all.verdict == recheck::Verdict::go_on ? 1 : 0;
    judged_with += all.now().reading_error / rounds;
  }
  CHECK(go_on <= 2);
  // By the 54 readings off the round of the nose, taken higher by 2/sqrt(n); seen 0.261, and 0.208 by all of them.
  CHECK(judged_with == Approx(error * (1 + 2 / std::sqrt(54.0))).epsilon(0.06));
}

TEST_CASE("2026-11-28: a reading that was read again and alike is work") {
  // "Read again" stood there however often it was: one pit, and a trailing edge that was never built up.
  const auto pit = [](double off) { return round([=](double x, bool port) { return port && x > 195 && x < 200 ? off : 0.0; }); };
  const auto alone_in = [](const recheck::Recheck& all) {
    std::size_t out = 0;
    for (const auto& height : all.now().heights)
      out += static_cast<std::size_t>(
          std::count_if(height.readings.begin(), height.readings.end(), [](const auto& one) { return one.alone; }));
    return out;
  };
  const double x = 0.55 * 360, y = wanted(600, x);
  const auto row = [&](double off) {
    char text[100];
    std::snprintf(text, sizeof text, "C,%.6f,%.6f,\n", x, y + off);
    return std::string(text);
  };
  const auto with = [](double at_edge) { return round([=](double place, bool) { return place > 350 ? at_edge : 0.0; }); };
  CHECK(alone_in(judged(plan(), {pit(-2)})) > 0);
  CHECK(alone_in(judged(plan(), {pit(-2) + row(-2.1)})) == 0);  // twice on one sheet
  CHECK(alone_in(judged(plan(), {pit(-2) + row(1)})) > 0);      // but not alike
  CHECK(alone_in(judged(plan(), {pit(-2), pit(-1.9)})) == 0);   // on a second sheet
  CHECK(alone_in(judged(plan(), {pit(-2), pit(-4)})) > 0);      // not alike either
  CHECK(alone_in(judged(plan(), {pit(-2), pit(0)})) == 0);      // it was a slip
  const auto all = judged(plan(), {pit(-2), pit(-1.9)});
  CHECK(all.now().deepest_low == Approx(1.9).margin(0.02));
  CHECK(all.now().litres.left.add > judged(plan(), {pit(0)}).now().litres.left.add + 0.005);
  CHECK(alone_in(judged(plan(), {with(-2)})) == 0);  // at all heights
}

TEST_CASE("a flat sanded into the face is told from a hollow") {
  // Straight from 105 to 225 mm: below the curve by up to about 1.6 mm, by hand 120²/8R with R about 1140 mm there.
  const double a = wanted(300, 105), b = wanted(300, 225);
  const auto flat = [&](double x, bool port) {
    return port && x > 105 && x < 225 ? a + (b - a) * (x - 105) / 120 - wanted(300, x) : 0.0;
  };
  const auto all = judged(plan(), {header + closely("B", 300, flat)});
  REQUIRE_FALSE(all.spots.empty());
  CHECK(all.spots[0].kind == SpotKind::flat);
  CHECK(all.spots[0].worst > 1.2);  // seen 1.34, at a reading
  CHECK(all.spots[0].worst < 1.9);
  const auto hollow = [&](double x, bool port) { return 3 * flat(x, port); };
  const auto other = judged(plan(), {header + closely("B", 300, hollow)});
  REQUIRE_FALSE(other.spots.empty());
  CHECK(other.spots[0].kind == SpotKind::hollow);
}

TEST_CASE("a face that is low all over is one thing to say, and a hump on it another") {
  const auto all = judged(plan(), {header + closely("A", 0, [](double, bool port) { return port ? -1.0 : 0; }) +
                                   closely("B", 300, [](double x, bool port) { return port ? 2 * hump(x) - 1.0 : 0; })});
  REQUIRE(all.spots.size() >= 2);
  const auto of = [&](SpotKind kind) {
    return std::find_if(all.spots.begin(), all.spots.end(), [&](const auto& one) { return one.kind == kind; });
  };
  REQUIRE(of(SpotKind::face_low) != all.spots.end());
  CHECK(of(SpotKind::face_low)->reach.size() == 2);
  CHECK(of(SpotKind::hump) != all.spots.end());
}

TEST_CASE("one reading far out is to be read again, and is no hump") {
  const auto all = judged(plan(), {header + closely("B", 300, [](double x, bool port) { return port && x == 180 ? 4.0 : 0; })});
  CHECK(all.spots.empty());
  std::size_t alone = 0;
  for (const auto& one : all.now().heights[0].readings) {
    alone += one.alone ? 1 : 0;
    if (one.alone) CHECK(one.x == 180);
  }
  CHECK(alone == 1);
}

TEST_CASE("both faces out the same way: the section stands aside") {
  const auto all =
      judged(plan(), {header + closely("A", 0, none) + closely("B", 300, [](double, bool port) { return port ? 1.0 : -1.0; }) +
                      closely("C", 600, none)});
  REQUIRE(all.aside.size() == 1);
  CHECK(all.aside[0].height == 1);
  CHECK(all.aside[0].to_port == Approx(1).epsilon(0.1));  // along the normal; seen 0.976
}

TEST_CASE("a hump between templates is told with its neighbours") {
  const std::string text = "station,down,x,port,starboard\n" +
                           rows("low,450", 450, every(15, 450), [](double x, bool port) { return port ? hump(x) : 0; });
  const auto all = judged(plan(), {text});
  REQUIRE(all.spots.size() == 1);
  CHECK(all.now().heights[0].surface.between == "B and C");
}

TEST_CASE("the run that stands out most is found as by looking at every run") {
  // 2026-11-27: runs that cannot stand out are passed over by their sums; here by every first and last reading.
  std::mt19937 random(11);
  std::normal_distribution<double> noise(0, 0.3);
  for (int trial = 0; trial < 12; ++trial) {
    const double high = 0.1 * trial, from = 100 + 10 * trial;
    const auto off = [&](double x, bool port) { return noise(random) + (port && x > from && x < from + 40 ? high : 0); };
    auto frozen = plan();
    frozen.reading_error = 0.3;
    const auto all = judged(frozen, {header + rows("A", 0, every(0.7, 0), none) + rows("B", 300, every(0.7, 300), off)});
    const auto& height = all.now().heights[1];
    double runs = 0;
    for (const auto& one : all.now().heights) {
      for (const auto face : {section::Face::port, section::Face::starboard}) {
        const double n = static_cast<double>(one.of(face).size());
        runs += n * (n - 1) / 2;
      }
    }
    double least = 0, z_high = 12;  // the z that false_spots / runs of a normal variable passes, by bisection
    for (int k = 0; k < 100; ++k) {
      const double z = (least + z_high) / 2;
      (std::erfc(z / std::sqrt(2.0)) > 0.005 / runs ? least : z_high) = z;
    }
    double best = 0;
    const auto own = height.of(section::Face::port);
    for (std::size_t i = 0; i < own.size(); ++i) {
      double sum = 0, weight = 0, greatest = 0, smallest = 0;
      int count = 0;
      for (std::size_t j = i; j < own.size() && j - i < 400; ++j) {
        const auto& one = height.readings[own[j]];
        if (one.alone) continue;
        const double w = 1 / (one.sigma * one.sigma), part = one.depth * w;
        sum += part;
        weight += w;
        greatest = std::max(greatest, part);
        smallest = std::min(smallest, part);
        if (++count < 2 || height.readings[own[i]].alone || std::abs(sum / weight) < all.options.tolerance / 2) continue;
        const double rest = sum > 0 ? sum - greatest : smallest - sum;
        if (rest < 2 * std::sqrt(weight * (count - 1) / count)) continue;
        const double z = std::abs(sum) / std::sqrt(weight);
        if (z > least) best = std::max(best, z);
      }
    }
    double told = 0;
    for (const auto& spot : all.spots) {
      if (spot.face == section::Face::port && spot.worst_at.height == 1) told = std::max(told, spot.chance);
    }
    INFO(trial << ": " << best << " " << told);
    CHECK(told == Approx(best).epsilon(1e-9));
  }
}
