// The verdict, and progress from round to round.
#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;
using recheck::Verdict;

TEST_CASE("progress: each round on its own, the plan's readings first") {
  const auto low = [](double mm) { return round([mm](double x, bool) { return x > 60 && x < 330 ? -mm : 0.0; }); };
  const auto all = judged(plan(), {low(2), low(1), low(0.25)});
  REQUIRE(all.rounds.size() == 3);
  CHECK(all.first.deepest_low == Approx(2).margin(0.03));  // as the blade was made; seen 1.999
  CHECK(all.rounds[0].deepest_low == Approx(2).margin(0.02));
  CHECK(all.rounds[1].deepest_low == Approx(1).margin(0.01));
  CHECK(all.rounds[2].deepest_low == Approx(0.25).margin(0.01));
  CHECK(all.rounds[1].litres.left.add == Approx(all.rounds[0].litres.left.add / 2).epsilon(0.01));
  CHECK(all.rounds[0].within < all.rounds[2].within);
  CHECK(all.rounds[2].within == 84);
  CHECK(all.verdict == Verdict::nothing_left);
}

TEST_CASE("stop where what is left is reading error, and not before") {
  auto frozen = plan();
  frozen.reading_error = 0.5;
  int stop = 0;
  for (unsigned seed = 1; seed <= 100; ++seed) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, 0.5);
    const auto all = judged(frozen, {round([&](double, bool) { return noise(random); })});
    stop += all.verdict == Verdict::reading_error ? 1 : 0;
    // A third of the readings lie beyond one standard deviation, by the normal distribution 31.7 %.
    CHECK(all.beyond_by_chance > 10);
  }
  CHECK(stop >= 96);  // of 100; seen 100
  // The same noise about a blade that is 0.4 mm low all over is no reading error: its mean is 0.4 ± 0.05.
  int go_on = 0;
  for (unsigned seed = 1; seed <= 100; ++seed) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(-0.4, 0.5);
    go_on += judged(frozen, {round([&](double, bool) { return noise(random); })}).verdict == Verdict::go_on ? 1 : 0;
  }
  CHECK(go_on >= 96);  // seen 100
}

TEST_CASE("a round may tell its own reading error") {
  const auto all =
      judged(plan(), {"reading_error,0.1\n" + round([](double x, bool port) { return port && x > 100 && x < 150 ? 0.55 : 0; })});
  CHECK(all.now().told_error == 0.1);
  CHECK(all.verdict == Verdict::go_on);
}

TEST_CASE("port + starboard against the calipers") {
  const auto all = judged(plan(), {"station,x,port,starboard,caliper\nB,117,23.4,23.4,46.8\nB,200,20,20,44\nB,300,9,9,18.3\n"});
  std::size_t said = 0;
  for (const std::string& note : all.notes) said += has(note, "than the calipers say") ? 1 : 0;
  CHECK(said == 1);  // 4 mm at x 200; 0.3 at x 300 is reading error (4.5 · sqrt(3) · 0.3 = 2.3 mm)
}

TEST_CASE("the same for the mirrored blade") {
  const auto off = [](double x, bool port) { return port ? 0.7 * std::sin(x / 30) : -0.9 * std::cos(x / 50); };
  const auto one = judged(plan(), {round(off)});
  const auto other = judged(plan(), {round([&](double x, bool port) { return off(x, !port); })});
  CHECK(one.now().litres.left.add == Approx(other.now().litres.left.add));
  CHECK(one.now().litres.left.remove == Approx(other.now().litres.left.remove));
  CHECK(one.now().within == other.now().within);
  CHECK(one.spots.size() == other.spots.size());
}

TEST_CASE("a sheet that began as the job's: its keys count for nothing, stations left empty were not read") {
  const std::string body = "station,down,ahead,chord,x,port,starboard\n";
  std::string text = "job,Knot\nunits,mm\nbottom,640\nthickness,15%\nmeasured_by,half-breadths\nprint.paper,A4\n" + body +
                     "A,0,60,420,0,,\nA,,,,40,,\n";
  for (const double x : places(300)) {
    char row[160];
    std::snprintf(row, sizeof row, "B,300,60,390,%.6f,%.6f,%.6f\n", x, wanted(300, x), wanted(300, x));
    text += row;
  }
  const auto all = judged(plan(), {text});
  CHECK(all.verdict == Verdict::nothing_left);
  CHECK(all.now().heights.size() == 1);
  std::size_t told = 0;
  for (const std::string& note : all.notes)
    told += has(note, ": job, bottom, thickness, print.paper above the header count for nothing here") ? 1 : 0;
  CHECK(told == 1);
}

TEST_CASE("readings of another stage are suspected") {
  // The finished surface, taken for the bare one: high all over by the 0.8 mm of coats.
  const auto all = judged(plan(0.8), {round(none)});
  CHECK(all.common == Approx(-0.8).margin(0.2));  // less at the nose, where x = 0 is either's edge; seen -0.65
  REQUIRE(all.other_stage);
  CHECK(all.other_stage->name == "final");
  CHECK(all.other_stage->coats == Approx(0.8));
  // 2026-11-28: the last reading of each face 3 mm high is 0.2 mm "on the whole": no coat, but edges to cut.
  for (const double coats : {0.2, 0.4}) {
    const auto tail = [&](double x, bool) { return x > 350 ? 3.0 : 0.0; };
    CHECK_FALSE(judged(plan(coats), {round([&](double x, bool port) { return tail(x, port) - coats; })}).other_stage);
  }
  CHECK_FALSE(judged(plan(), {round(none)}).other_stage);
}

TEST_CASE("2026-11-27: an earlier round may tell its own stage") {
  // The finished surface read twice: the first says so and nothing is left of it, the last does not and is suspected.
  const auto all = judged(plan(0.8), {"stage,final\n" + round(none), round(none)});
  CHECK(all.rounds[0].stage == fill::StageKind::final);
  CHECK(all.rounds[0].within == all.rounds[0].readings);
  CHECK(all.rounds[1].stage == fill::StageKind::bare);
  CHECK(all.rounds[1].within < all.rounds[1].readings / 2);
  REQUIRE(all.other_stage);
}

TEST_CASE("a blade still too long: what lies aft of the target's edge is not judged, and is told") {
  std::string text = "station,ahead,chord,x,port,starboard\n";
  for (const double x : places(300)) {
    char row[160];
    std::snprintf(row, sizeof row, "B,60,396,%.6f,%.6f,%.6f\n", x, wanted(300, x), wanted(300, x));
    text += row;
  }
  const auto all = judged(plan(), {text + "B,60,396,396,0.5,0.5\n"});
  CHECK(all.now().heights[0].beyond_edge == 1);
  CHECK(all.now().readings == 28);
  CHECK(*all.now().heights[0].edges.trailing == Approx(-6).margin(0.01));
}
