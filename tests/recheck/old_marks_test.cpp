// A round whose x still counts from the leading edge of before the work, after the nose was built out. Expected: the
// equation of NACA Report 460 (tests/recheck/blades.hpp), moved along the chord by hand.
#include <random>

#include "catch.hpp"
#include "recheck/blades.hpp"

using namespace blades;

namespace {

constexpr double built_out = 4;  // mm

/// The blade of blades::plan, whose leading edge stood 4 mm further aft before the work.
job::FrozenPlan built_out_plan(double by = built_out) {
  job::FrozenPlan out = plan();
  for (job::FrozenStation& station : out.stations) {
    for (double& x : station.x) x -= by;
    for (job::FrozenReading& one : station.readings) one.x = std::max(0.0, one.x - by);
  }
  return out;
}

/// The target itself, a layer thicker all over (square to the surface), with that error; x counted `from` mm aft of its leading
/// edge.
std::string read_from(double from, double error = 0, unsigned seed = 1, const std::string& above = "", double layer = 0) {
  std::mt19937 random(seed);
  std::normal_distribution<double> noise(0, error > 0 ? error : 1);
  std::string out = above + "station,x,port,starboard\n";
  char line[200];
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    for (const double f : blade::places14()) {
      const double x = f * (chord_at(down) - from), at = x + from, m = at > 0 ? slope(down, at) : 0;
      const double y = at > 0 ? wanted(down, at) + layer * std::sqrt(1 + m * m) : 0;
      const double p = error > 0 ? noise(random) : 0, s = error > 0 ? noise(random) : 0;
      std::snprintf(line, sizeof line, "%s,%.6f,%.6f,%.6f\n", name, x, std::max(0.0, y + p), std::max(0.0, y + s));
      out += line;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a round read by the old marks is refused before anything is listed, and told how to go on") {
  const std::string line = told(built_out_plan(), read_from(built_out));
  CHECK(has(line,
            "r.csv:2: x seems to be counted still from the old leading edge, 4.0 mm aft of the new one, for from the old "
            "one these readings lie about 0.0 mm off the target near the edges, from the new one about "));
  CHECK(has(line,
            ": put a row x_from,old-leading-edge above the header row and run again; where x does count from the new "
            "edge, a row x_from,new-leading-edge\n"));
  // The row that it asks for, and nothing is left; nor does anything say that the nose is short.
  const auto all = judged(built_out_plan(), {read_from(built_out, 0, 1, "x_from,old-leading-edge\n")});
  CHECK(all.verdict == recheck::Verdict::nothing_left);
  CHECK(all.now().readings == 84);
  CHECK(std::max(all.now().deepest_low, all.now().deepest_high) < 0.005);  // mm; seen 0.0016
  for (const auto& height : all.now().heights) CHECK_FALSE(height.edges.leading);
  CHECK(has(all.notes.front(),
            "x counts from the old leading edge, as it was before the work (A, B, C); ahead of it x is negative."));
  CHECK(all.now().heights[0].readings[0].from_old_edge);
  // The new nose itself lies ahead of the old marks.
  std::string nose = read_from(built_out, 0, 1, "x_from,old-leading-edge\n") + "A,-4,0,0\nB,-4,0,0\nC,-4,0,0\n";
  CHECK(judged(built_out_plan(), {nose}).verdict == recheck::Verdict::nothing_left);
  CHECK(has(told(built_out_plan(), nose + "C,-9,0,0\n"), "r.csv:48: x = -9.0 mm lies 5.0 mm ahead of the leading edge"));
}

TEST_CASE("who says where x counts from is believed") {
  CHECK(told(built_out_plan(), read_from(built_out, 0, 1, "x_from,new-leading-edge\n")) == "not refused");
  // `ahead` in the row: the old edge's own, so that x = 0 lies on it.
  std::string text = read_from(built_out);
  std::size_t end = text.find('\n');
  for (int row = 0; end != std::string::npos; ++row) {
    const std::string cell = row == 0 ? ",ahead" : ",56";
    text.insert(end, cell);
    end = text.find('\n', end + cell.size() + 1);
  }
  const auto all = judged(built_out_plan(), {text});
  CHECK(std::max(all.now().deepest_low, all.now().deepest_high) < 0.005);  // mm; seen 0.0016
  CHECK(*all.now().heights[0].edges.leading == Approx(4).margin(1e-6));
}

TEST_CASE("noisy rounds: none of 200 counted from the new edge is refused, all of 200 from the old one are") {
  const job::FrozenPlan plan = built_out_plan();
  int refused_right = 0, refused_wrong = 0, refused_small = 0, refused_layer = 0, refused_wrong_layer = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    refused_right += told(plan, read_from(0, 0.3, seed)) == "not refused" ? 0 : 1;
    refused_wrong += told(plan, read_from(built_out, 0.3, seed)) == "not refused" ? 0 : 1;
    // Half a millimetre is less than these readings can tell, and does no harm either.
    refused_small += told(built_out_plan(0.5), read_from(0, 0.3, seed)) == "not refused" ? 0 : 1;
    // Faces still low or high by an even layer.
    const double layer = seed % 2 == 0 ? 1.5 : -1.5;
    refused_layer += told(plan, read_from(0, 0.3, seed, "", layer)) == "not refused" ? 0 : 1;
    refused_wrong_layer += told(plan, read_from(built_out, 0.3, seed, "", layer)) == "not refused" ? 0 : 1;
  }
  CHECK(refused_layer == 0);
  CHECK(refused_wrong_layer == 200);
  CHECK(refused_right == 0);
  CHECK(refused_wrong == 200);
  CHECK(refused_small == 0);
}

TEST_CASE("a nose left proud, and one that is not built out yet, are work and no mistake") {
  // Proud by 2 mm all over along the normal, x from where that nose begins: it stands 2 mm ahead of the target's.
  const double proud = 2;
  std::string text = "station,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    text += std::string(name) + ",0,0,0\n";
    for (const double f : {0.0125, 0.025, 0.05, 0.075, 0.1, 0.15, 0.2, 0.3, 0.4, 0.55, 0.7, 0.85}) {
      const double x = f * chord_at(down), m = slope(down, x), s = std::sqrt(1 + m * m);
      char line[200];
      std::snprintf(line, sizeof line, "%s,%.6f,%.6f,%.6f\n", name, x - proud * m / s + proud, wanted(down, x) + proud / s,
                    wanted(down, x) + proud / s);
      text += line;
    }
  }
  CHECK(told(built_out_plan(), text) == "not refused");
  // The nose as it was, 4 mm short, its x from where it begins: nothing at x = 0, and thin.
  const auto thin = [](double x, bool) { return x > 0 ? -1.0 : 0.0; };
  CHECK(told(built_out_plan(), round(thin)) == "not refused");
}

TEST_CASE("calipers and an edge written as nothing tell it too") {
  std::string text = "station,x,thickness\n";
  char line[100];
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    for (const double x : {0.0, 5.0, 10.0, 20.0, 40.0, 80.0, 150.0, 250.0}) {
      std::snprintf(line, sizeof line, "%s,%g,%.6f\n", name, x, x > 0 ? 2 * wanted(down, x + built_out) : 0.0);
      text += line;
    }
  }
  CHECK(has(told(built_out_plan(), text), "r.csv:2: x seems to be counted still from the old leading edge"));
}
