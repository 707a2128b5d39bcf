// Rounds written in another unit than the plan's, or as thicknesses. The blade is the published form (tests/blade.hpp); its
// numbers are turned into the other unit here.
#include <random>

#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;

namespace {

/// The whole round with x and half-breadths divided by these.
std::string written(double x_by, double half_by, const std::string& only = "", const std::string& above = "") {
  std::string out = above + "station,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    const bool so = only.empty() || only == name;
    for (const double x : places(down)) {
      char line[200];
      const double half = wanted(down, x) - 0.4;
      std::snprintf(line, sizeof line, "%s,%.5f,%.5f,%.5f\n", name, x / (so ? x_by : 1), half / (so ? half_by : 1),
                    half / (so ? half_by : 1));
      out += line;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("2026-11-26: a round in inches or centimetres, whole, by half-breadths or by one station, is refused") {
  const std::string all = told(plan(), written(25.4, 25.4));
  CHECK(has(all,
            "r.csv:2: the readings of station A lie on this blade as in, not as mm: put a row units,in above the header, or "
            "write them in mm\n"));
  CHECK(has(all, "of station C lie on this blade as in"));
  CHECK(has(told(plan(), written(10, 10)), "the readings of station B lie on this blade as cm, not as mm"));
  CHECK(has(told(plan(), written(1, 25.4)),
            "the half-breadths of station A lie on this blade as in, its x as mm: write both in one unit"));
  CHECK(told(plan(), written(25.4, 25.4, "C")) ==
        "r.csv:30: the readings of station C lie on this blade as in, not as mm: put a row units,in above the header, or write "
        "them "
        "in mm\n");
  CHECK(told(plan(), written(25.4, 25.4, "", "units,in\n")) == "not refused");
  CHECK(has(told(plan(), written(10, 10, "", "units,in\n")), "lie on this blade as cm, not as in"));
}

TEST_CASE("2026-11-26: thicknesses in the columns of half-breadths are refused") {
  CHECK(has(told(plan(), written(1, 0.5)),
            "the half-breadths of station B are twice this blade's all along: if they are thicknesses, write them into a column "
            "caliper; else read again"));
  // 2026-11-28: a blade that is to become half as thick, read before anything was taken off it.
  auto thick = plan();
  for (auto& station : thick.stations) {
    for (auto& one : station.readings) one.measured = 1.9 * wanted(station.down, one.x);
  }
  CHECK(told(thick, written(1, 1 / 1.9)) == "not refused");
  CHECK(told(plan(), written(1, 1 / 1.9)) != "not refused");
}

namespace {

/// The whole round as gaps from boards so far off, with x and gaps divided by `by`; the blade as wanted, 0.4 mm low.
std::string gaps(double board, const std::string& above, const std::string& columns, double by = 1) {
  std::string out = above + "station,x," + columns + "\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    for (const double x : places(down)) {
      char line[200];
      const double gap = board - (wanted(down, x) - 0.4);
      std::snprintf(line, sizeof line, "%s,%.5f,%.5f,%.5f\n", name, x / by, gap / by, gap / by);
      out += line;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("2026-11-27: gaps written as half-breadths, and the other way round, are refused, and so are wrong boards") {
  // Boards 60 mm off a blade that is 0.4 mm low; the target is 25.2 mm thick to a side, so that 60 mm of gap at the edges stands
  // for nothing.
  CHECK(has(told(plan(), gaps(60, "", "port,starboard")),
            "r.csv:2: the half-breadths of station A lie on this blade as gaps from boards 60.4 mm off its centre plane: if they "
            "are, name their columns port_gap and starboard_gap, and put a row board,DISTANCE above the header\n"));
  CHECK(has(told(plan(), gaps(30, "", "port,starboard")), "lie on this blade as gaps from boards 30.4 mm off"));
  CHECK(told(plan(), gaps(60, "board,60\n", "port_gap,starboard_gap")) == "not refused");
  CHECK(has(told(plan(), round(none).replace(0, 26, "board,60\nstation,x,port_gap,starboard_gap")),
            "r.csv:3: the gaps of station A lie on this blade as half-breadths: if they are, name their columns port and "
            "starboard; else look at the boards' distance\n"));
  CHECK(has(told(plan(), gaps(60, "board,80\n", "port_gap,starboard_gap")),
            "r.csv:3: the half-breadths of station A come out 19.6 mm more than this blade's all along: look at the distance of "
            "the boards from the centre plane, and the units\n"));
  // Gaps and x in inches, the board in millimetres: all come out far too thick, and alike.
  CHECK(has(told(plan(), gaps(60, "board,60\n", "port_gap,starboard_gap", 25.4)),
            "more than this blade's all along: look at the distance of the boards from the centre plane, and the units\n"));
  // Eight millimetres left all over, read by boards.
  CHECK(told(plan(), gaps(60, "board,68\n", "port_gap,starboard_gap")) == "not refused");
}

TEST_CASE("2026-11-27: a round of which next to nothing lies near the target is refused in one line") {
  // A slab: nothing of the section is in it.
  const std::string slab = "station,x,port,starboard\nA,0,90,90\nA,100,80,80\nA,200,95,95\nA,300,90,90\nA,400,85,85\n";
  CHECK(told(plan(), slab) ==
        "r.csv:2: 0 of 10 readings lie within 10.0 mm of the target: this is not the blade that was planned: look whether gaps "
        "stand under port and starboard, at the boards' distance, at the units, and at the plan's folder\n");
  // Honest: the old blade before any work, a face that is not begun, one that was built up by 20 mm too much there alone.
  CHECK(told(plan(), round([](double, bool) { return -2.0; })) == "not refused");
  CHECK(told(plan(), round([](double x, bool port) { return port ? -12.0 * std::sin(x / 150) : 0.0; })) == "not refused");
  CHECK(told(plan(), round([](double x, bool port) { return port && x > 50 ? 20.0 : 0.2; })) == "not refused");
}

TEST_CASE("honest rounds with much left to do are not refused") {
  std::mt19937 random(5);
  std::normal_distribution<double> stray(0, 0.3);
  std::uniform_real_distribution<double> level(-8, 8), wave(0, 4);
  for (int round_of = 0; round_of < 200; ++round_of) {
    const double high = level(random), hump = wave(random);
    const std::string text =
        round([&](double x, bool port) { return high + hump * std::sin(x / 40) * (port ? 1 : -1) + stray(random); });
    CHECK(told(plan(), text) == "not refused");
  }
}

TEST_CASE("2026-11-26: a reading that stands alone is in no litres until it is read again") {
  const auto with = [](double off) { return round([=](double x, bool port) { return port && x > 195 && x < 200 ? off : 0.0; }); };
  const auto slip = judged(plan(), {with(200)}), clean = judged(plan(), {with(0)});
  std::size_t alone = 0;
  for (const auto& height : slip.now().heights) {
    for (const auto& one : height.readings) alone += one.alone ? 1 : 0;
  }
  CHECK(alone > 0);
  CHECK(slip.now().litres.left.remove ==
        Approx(clean.now().litres.left.remove).margin(1e-5));  // 2 L by 200 mm; seen 5e-6, its neighbours joined
  CHECK(slip.now().deepest_high == Approx(clean.now().deepest_high).margin(1e-9));
  CHECK(slip.now().within == slip.now().readings - alone);
}

TEST_CASE("2026-11-26: a file given twice, or the plan's own, is no round of work") {
  const Scratch folder;
  const std::string first = folder.write("first.csv", round(none)), again = folder.write("again.csv", round(none));
  auto from = plan();
  from.sources = {{"sheet.csv", *job::digest_of_file(folder.write("sheet.csv", round([](double, bool) { return -1.0; })))}};
  const auto notes = [&](const std::vector<std::string>& files) {
    const auto out = recheck::recheck(from, files, {});
    REQUIRE(out);
    std::string all;
    for (const std::string& one : out->notes) all += one + "\n";
    return all;
  };
  CHECK_FALSE(has(notes({first}), "nothing was read again"));
  CHECK(has(notes({first, again}), "again.csv is round 1 once more: nothing was read again."));
  CHECK(has(notes({folder.folder.string() + "/sheet.csv"}), "sheet.csv is what the plan was made from: nothing was read again."));
}
