// Bounds of a key that follow from the chord are told so that they hold when they are typed in.
#include "catch.hpp"
#include "has.hpp"
#include "scratch.hpp"

using namespace fairblade;

TEST_CASE("2026-11-27: the most and the least that a chord allows are told rounded inwards, and taken") {
  // 20 % of 97.83 mm are 19.566, and "at most 19.6 mm" was told and refused again. By hand: 3 % are 2.935, 30 % 29.349; of 3.8516
  // in, 0.77032, 0.115548 and 1.15548. Of 98 mm 19.6 mm are just 20 %.
  const Scratch scratch;
  const auto said = [&](const std::string& unit, const std::string& chord, const std::string& key, const std::string& value) {
    return faults_of(scratch.read("j.json", R"({ "job": "J", "units": ")" + unit + R"(", "target": { ")" + key + "\": " + value +
                                                R"( }, "stations": [ { "name": "A", "down": 0, "chord": )" + chord +
                                                R"(, "readings": [[0, 0, 0], [1, 0.3, 0.3], [2, 0.3, 0.3]] } ] })"));
  };
  struct Row {
    const char *unit, *chord, *key, *asked, *told, *value;
  };
  for (const Row& row : {Row{"mm", "97.83", "leading_edge_radius", "20", "give at most 19.5 mm", "19.5"},
                         Row{"mm", "98", "leading_edge_radius", "20", "give at most 19.6 mm", "19.6"},
                         Row{"mm", "97.83", "trailing_edge_thickness", "29.4", "give at most 29.3 mm", "29.3"},
                         Row{"mm", "97.83", "thickness", R"("2.9mm")", "give 3.0 mm at least", R"("3.0mm")"},
                         Row{"in", "3.8516", "leading_edge_radius", "0.8", "give at most 0.770 in", "0.770"},
                         Row{"in", "3.8516", "trailing_edge_thickness", "1.2", "give at most 1.155 in", "1.155"},
                         Row{"in", "3.8516", "thickness", R"("0.11in")", "give 0.116 in at least", R"("0.116in")"}}) {
    INFO(row.key << " on " << row.chord);
    CHECK(has(said(row.unit, row.chord, row.key, row.asked), row.told));
    CHECK(said(row.unit, row.chord, row.key, row.value) == "");
  }
}
