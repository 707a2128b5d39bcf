// Every drawing of every case: readable, whole, and true.
#include <cmath>
#include <random>

#include "base/polyline.hpp"
#include "blade.hpp"
#include "catch.hpp"
#include "drawing/cases.hpp"
#include "drawing/form_drawing.hpp"
#include "drawing/hatch.hpp"
#include "drawing/outline.hpp"
#include "drawing/readable.hpp"
#include "drawing/section_picture.hpp"

using namespace fairblade;
using namespace fairblade::drawing;
using readable::path_named;

namespace {

const std::vector<cases::Case>& all() {
  static const std::vector<cases::Case> out = cases::all();
  return out;
}

/// Usual, small with a blunt nose, long with many places, and in inches.
std::vector<target::FormAsked> forms() {
  form::Form modified{0.10, 4, 0.5};
  std::vector<double> many;
  for (int k = 1; k < 60; ++k) many.push_back(0.5 * k);
  return {{form::Form{}, 420, {}, 4.0, {}, LengthUnit::mm},
          {form::Form{0.15}, 60, 5.0, 3.0, {}, LengthUnit::mm},
          {form::Form{0.09}, 1500, {}, {}, many, LengthUnit::cm},
          {modified, 16.5 * 25.4, {}, 0.125 * 25.4, {}, LengthUnit::inch}};
}

std::vector<std::pair<std::string, Sheet>> drawn_sheets() {
  std::vector<std::pair<std::string, Sheet>> out;
  for (const cases::Case& c : all()) {
    out.emplace_back(c.name + " section", draw_section(c.job, c.measured, c.target, c.change, &c.fitted));
    out.emplace_back(c.name + " section, no fit", draw_section(c.job, c.measured, c.target, c.change));
    for (const Face face : {Face::port, Face::starboard}) {
      out.emplace_back(c.name + " " + section::name_of(face), cases::template_of(c, face));
    }
    const auto surface = fill::stage_section(c.target, {fill::StageKind::final, 0, ""});
    out.emplace_back(c.name + " the section itself",
                     framed(draw_positive({c.job, c.target, *surface, Face::port, c.measured.thickness_only, 0}), c.job.units));
  }
  for (const target::FormAsked& asked : forms()) {
    const auto offsets = target::offsets_of(asked);
    out.emplace_back("form " + offsets->name, draw_form(*offsets));
  }
  return out;
}

std::vector<std::pair<std::string, Sheet>> pictures() {
  std::vector<std::pair<std::string, Sheet>> out;
  for (const cases::Case& c : all()) {
    out.emplace_back(c.name + " picture", draw_section_picture(c.job, c.measured, c.target, c.change));
  }
  return out;
}

}  // namespace

TEST_CASE("no text lies on another or leaves its sheet; every point is on the sheet") {
  auto drawn = drawn_sheets();
  for (auto& one : pictures()) drawn.push_back(std::move(one));
  for (const auto& [name, sheet] : drawn) {
    INFO(name);
    readable::check(sheet);
  }
}

TEST_CASE("check bars are 100 mm, one each way") {
  for (const auto& [name, sheet] : drawn_sheets()) {
    INFO(name);
    const auto& across = path_named(sheet, "check-across").runs.at(0);
    const auto& along = path_named(sheet, "check-along").runs.at(0);
    CHECK(std::abs(across.back().x() - across.front().x()) == Approx(100).margin(1e-9));
    CHECK(across.back().y() == across.front().y());
    CHECK(std::abs(along.back().y() - along.front().y()) == Approx(100).margin(1e-9));
    CHECK(along.back().x() == along.front().x());
  }
}

TEST_CASE("a sheet says where it belongs") {
  const cases::Case& c = all().front();
  for (const Face face : {Face::port, Face::starboard}) {
    const Sheet sheet = cases::template_of(c, face);
    std::string words;
    for (const Item& item : sheet.items) {
      if (const Text* text = std::get_if<Text>(&item)) words += text->words + "\n";
    }
    INFO(words);
    const std::string side = face == Face::port ? "PORT FINAL" : "STARBOARD FINAL";
    for (const std::string& needed :
         {side, std::string("Station A"), std::string("Whimbrel"), std::string("UP"), std::string("FWD"),
          std::string("350.0 mm below the top"), std::string("stock"), std::string("leading edge stop"),
          std::string("trailing edge stop"), std::string("chord line"), std::string("actual size (100 %)")}) {
      CHECK(words.find(needed) != std::string::npos);
    }
  }
}

TEST_CASE("the side and the stage are whole on every template, whatever its room and names") {
  for (const cases::Case& c : all()) {
    for (const Face face : {Face::port, Face::starboard}) {
      const Sheet sheet = cases::template_of(c, face);
      std::string words;
      for (const Item& item : sheet.items) {
        if (const Text* text = std::get_if<Text>(&item)) words += text->words + "\n";
      }
      INFO(c.name << ": " << words);
      CHECK(words.find(face == Face::port ? "PORT FINAL" : "STARBOARD FINAL") != std::string::npos);
      CHECK((words.find("RD\xe2\x80\xa6") == std::string::npos && words.find("RT\xe2\x80\xa6") == std::string::npos));
    }
  }
}

TEST_CASE("2026-11-28: words made to fit their room are not shortened for a rounding") {
  // "STARBOARD BA…", on ten of 136 blades' templates.
  for (int chord = 60; chord <= 110; ++chord) {
    cases::Wish wish;
    wish.chord = chord;
    wish.ahead = 2;
    wish.edge = 2;
    for (const Item& item : cases::template_of(cases::make("small", wish), Face::starboard).items) {
      const Text* text = std::get_if<Text>(&item);
      if (!text || (text->words.rfind("STARB", 0) != 0 && text->words.rfind("FINAL", 0) != 0)) continue;
      INFO(chord);
      CHECK(text->words.find("\xe2\x80\xa6") == std::string::npos);
    }
  }
}

TEST_CASE("hatching covers its area and stays inside it") {
  for (const cases::Case& c : all()) {
    const MultiPolygon add = difference(target_outline(c.target), measured_outline(c.measured));
    if (area(add) < 100) continue;
    INFO(c.name);
    for (const bool rising : {true, false}) {
      const Path lines = hatch(add, 0.5, rising);
      double length = 0;
      for (const auto& run : lines.runs) {
        const double dx = run[1].x() - run[0].x(), dy = run[1].y() - run[0].y();
        length += std::hypot(dx, dy);
        // Rising on paper, where y runs down, is dy = -dx.
        CHECK(dy == Approx(rising ? -dx : dx).margin(1e-6));
      }
      // Lines 0.5 mm apart: length times spacing is the area. Tolerance 2 % (seen 0.06 %).
      CHECK(length * 0.5 == Approx(area(add)).epsilon(0.02));
    }
  }
}

TEST_CASE("what is hatched is what the change says") {
  // Two routes: the drawing's polygons against the fill room's areas. Tolerance 0.2 % or 0.5 mm2 (seen 0.17 mm2).
  for (const cases::Case& c : all()) {
    INFO(c.name);
    const Polygon target = target_outline(c.target), measured = measured_outline(c.measured);
    CHECK(area(difference(target, measured)) == Approx(c.change.add_area).epsilon(0.002).margin(0.5));
    CHECK(area(difference(measured, target)) == Approx(c.change.remove_area).epsilon(0.002).margin(0.5));
  }
}

TEST_CASE("2026-11-27: the areas of a noisy scan are cut in strips, and are those of the whole") {
  // Five stations of 16,000 readings took 10 s, four times as long as half of them. The other route is the polygon difference
  // (Boost.Geometry) of the uncut outlines.
  cases::Wish wish;
  wish.noise = 0.3;
  wish.measured_ratio = 0.13;
  wish.extend_forward = 5;
  wish.extend_aft = 9;
  wish.places.clear();
  for (int k = 0; k <= 2400; ++k) wish.places.push_back(k / 2400.0);
  const cases::Case c = cases::make("noisy scan", wish);
  const Polygon blade = measured_outline(c.measured), target = target_outline(c.target);
  REQUIRE(blade.outer().size() > 3000);
  const Apart strips = outlines_apart(c.measured, c.target);
  CHECK(area(strips.a) == Approx(area(difference(target, blade))).epsilon(1e-3));
  CHECK(area(strips.b) == Approx(area(difference(blade, target))).epsilon(1e-3));
  CHECK(area(strips.a) - area(strips.b) == Approx(area(target) - area(blade)).margin(0.05));
  CHECK(area(strips.b) > 10);  // there is something to take off
}

TEST_CASE("a scan is drawn by few points, none of its readings more than a third of a pen's width from the line") {
  std::vector<double> places;
  for (int k = 0; k < 3000; ++k) places.push_back(k / 2999.0);
  auto station = blade::exact("A", 0, 420, 0.12, places);
  std::mt19937 random(20261126);
  blade::add_noise(station, 0.05, random);
  *station.readings[1500].port -= 1;  // one place, 0.14 mm wide, that would be lost between every tenth
  const auto measured = blade::measured(blade::job_of({station}));
  for (const Face face : {Face::port, Face::starboard}) {
    const auto line = measured_line(measured, face);
    CHECK(line.size() < 900);  // of 3000 readings and 401 places beside them
    double furthest = 0;
    for (const auto& reading : station.readings) {
      const double wanted = face == Face::port ? *reading.port : *reading.starboard;
      if (reading.x < 5) continue;  // the nose is steep: there the nearest point of the line counts, not the ordinate
      furthest = std::max(furthest, std::abs(ordinate_at(line, reading.x) - wanted));
    }
    CHECK(furthest < 0.12);  // square to the line 0.1
  }
  const auto outline = measured_outline(measured);
  CHECK(outline.outer().size() < 1800);
  CHECK(area(outline) == Approx(measured.figures.area).epsilon(2e-4));
}
