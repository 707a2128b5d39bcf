// The sheet of the blade in the water: readable whatever the blade, and drawn where its numbers are.
#include <algorithm>
#include <cmath>
#include <set>

#include "catch.hpp"
#include "drawing/maps.hpp"
#include "drawing/readable.hpp"
#include "drawing/water_drawing.hpp"

using namespace fairblade;
using namespace fairblade::drawing;
using readable::path_named;

namespace {

struct Case {
  std::string name;
  job::Job job;
  flow::Water water;
};

Case in_water(maps::Blade blade, const std::string& more = {}) {
  constexpr std::size_t panels = 120;  // enough for a picture
  return {blade.name + more, blade.job, flow::before_and_after(blade.job, blade.measured, blade.targets, panels)};
}

const std::vector<Case>& all() {
  static const std::vector<Case> out = [] {
    const std::set<std::string> wanted{
        "usual",          "chord-1200", "chord-90", "zero-change", "no-stock",  "square-plate", "crossed-trailing-edge",
        "long-names",     "five",       "twelve",   "wide",        "built-out", "forty-to-add", "inches-stock-far-ahead",
        "all-long-names", "raked"};
    std::vector<Case> cases;
    for (const maps::Blade& blade : maps::all()) {
      if (wanted.count(blade.name) == 0) continue;
      cases.push_back(in_water(blade));
      if (blade.name != "five") continue;
      maps::Blade other = blade;
      other.job.water = {job::EndPlate::half, 12.0, 180.0};
      other.job.speed = 18;
      cases.push_back(in_water(other, ", fast and heard"));
      other.job.water.heard = 5000;
      cases.push_back(in_water(other, ", a whistle"));
      for (auto& one : other.measured) one.skeg = 120;
      for (auto& one : other.targets) one.skeg = 120;
      cases.push_back(in_water(other, ", behind a skeg"));
      Case unknown = in_water(blade, ", not resolved");
      for (std::size_t k = 0; k < 2; ++k) {
        unknown.water.stations[k].before = {};
        unknown.water.stations[k].before.why_not =
            "the outline cannot be resolved: its faces cross or touch over too much of the chord";
      }
      cases.push_back(unknown);
      for (std::size_t k = 2; k < 5; ++k) unknown.water.stations[k].before = unknown.water.stations[0].before;
      unknown.name += " at all";
      cases.push_back(unknown);
      Case sharp = in_water(blade, ", edges too thin");
      for (auto& station : sharp.water.stations) station.tone_before.edge.thickness = station.tone_after.edge.thickness = 0;
      cases.push_back(sharp);
    }
    return cases;
  }();
  return out;
}

const Case& named(const std::string& name) {
  for (const Case& one : all()) {
    if (one.name == name) return one;
  }
  throw std::runtime_error("no case " + name);
}

}  // namespace

TEST_CASE("every blade's water sheet is readable and fits both papers") {
  CHECK(all().size() == 22);
  for (const Case& one : all()) {
    INFO(one.name);
    const Sheet sheet = draw_water(one.job, one.water);
    readable::check(sheet);
    CHECK(sheet.width == 190);
    CHECK(sheet.height == 259);
    const std::string words = readable::words_of(sheet);
    for (const char* needed : {"Before and after in the water", "Stall: ", "Hum: ", "Helm: ", "not a design", "Lever and balance",
                               "Tone of the trailing edge", "Station "}) {
      INFO(needed << " in " << words);
      CHECK(words.find(needed) != std::string::npos);
    }
  }
}

TEST_CASE("every blade's water pictures for a telephone are readable at its width") {
  for (const Case& one : all()) {
    INFO(one.name);
    const Sheet sheet = draw_water_for_telephone(one.job, one.water);
    readable::check(sheet);
    CHECK(sheet.width == 92);
    const std::string words = readable::words_of(sheet);
    for (const char* needed : {"Lever and balance", "Tone of the trailing edge", "Station ", "as it will be"}) {
      INFO(needed << " in " << words);
      CHECK(words.find(needed) != std::string::npos);
    }
  }
}

TEST_CASE("a water sheet says why something is not drawn") {
  const auto words = [](const std::string& name) {
    const Case& one = named(name);
    std::string out = readable::words_of(draw_water(one.job, one.water));
    std::replace(out.begin(), out.end(), '\n', ' ');
    return out;
  };
  CHECK(words("five, behind a skeg").find("No lever: the rudder turns behind a fixed skeg") != std::string::npos);
  CHECK(words("five, behind a skeg").find("of leeway") != std::string::npos);
  CHECK(words("five, not resolved").find("Not worked out") != std::string::npos);
  CHECK(words("five, edges too thin").find("The old edge is too thin") != std::string::npos);
  CHECK(words("no-stock").find("No lever: ") != std::string::npos);
  CHECK(words("twelve").find("hardest worked of 12 stations") != std::string::npos);
  CHECK(words("five, fast and heard").find("heard: 180 Hz") != std::string::npos);
}

TEST_CASE("the tone's lines stand where the frequencies are") {
  const Case& one = named("five, fast and heard");
  const Sheet sheet = draw_water(one.job, one.water);
  const Point foot = path_named(sheet, "tone-speed").runs[0][0], heard = path_named(sheet, "tone-heard").runs[0][0];
  // The speed's line begins on 0 Hz at 18 knots, the heard frequency's at 0 knots: two points fix both scales.
  const double floor = std::max(foot.y(), path_named(sheet, "tone-speed").runs[0][1].y());
  const double per_hertz = (floor - heard.y()) / 180, per_knot = (foot.x() - heard.x()) / 18;
  for (const auto& [id, when] : {std::pair{"tone-before-high", &flow::StationWater::tone_before},
                                 std::pair{"tone-after-high", &flow::StationWater::tone_after}}) {
    INFO(id);
    const Point end = path_named(sheet, id).runs.back().back();
    double highest = 0;
    for (const auto& station : one.water.stations) {
      highest = std::max(highest, flow::shedding_band((station.*when).edge, (end.x() - heard.x()) / per_knot)->high);
    }
    CHECK((floor - end.y()) / per_hertz == Approx(highest).epsilon(1e-9));  // seen 2e-16
  }
}

TEST_CASE("the lever's dot stands a lever from the stock") {
  const Case& one = named("five");
  const Sheet sheet = draw_water(one.job, one.water);
  const double stock = path_named(sheet, "lever-stock").runs[0][0].x();
  for (const bool old : {true, false}) {
    const auto& bar = path_named(sheet, old ? "lever-before" : "lever-after").runs[0];
    const flow::BladeWater& blade = old ? one.water.blade_before : one.water.blade_after;
    const double scale = (bar[1].x() - bar[0].x()) / blade.mean_chord;
    const double edge = (bar[0].x() - stock) / scale;  // aft of the stock
    CHECK(edge + blade.centre_of_pressure * blade.mean_chord == Approx(*blade.lever).margin(1e-6));
  }
}

TEST_CASE("pressures are drawn before and after, on both faces") {
  const Case& one = named("five");
  const Sheet sheet = draw_water(one.job, one.water);
  for (const char* when : {"before", "after"}) {
    const auto& port = path_named(sheet, std::string("pressure-") + when + "-port").runs;
    const auto& starboard = path_named(sheet, std::string("pressure-") + when + "-starboard").runs;
    REQUIRE_FALSE(port.empty());
    REQUIRE_FALSE(starboard.empty());
    // Both faces leave the trailing edge at one speed (Kutta), so their lines meet there.
    CHECK(port.back().back().x() == Approx(starboard.back().back().x()).margin(1e-6));
    CHECK(port.back().back().y() == Approx(starboard.back().back().y()).margin(1e-6));
  }
}
