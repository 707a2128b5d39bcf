// Odd and ordinary sections to draw: every drawing is made of every one of them.
#pragma once
#include <cmath>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "blade.hpp"
#include "drawing/section_drawing.hpp"
#include "drawing/template_drawing.hpp"
#include "fill/fill.hpp"

namespace cases {

using namespace fairblade;

struct Case {
  std::string name;
  job::Job job;
  section::MeasuredSection measured;
  target::TargetSection target;
  fill::StationChange change;
  form::FittedForm fitted;
};

struct Wish {
  double chord = 420, measured_ratio = 0.115, target_ratio = 0.12;
  std::optional<double> radius, edge = 4.0;  ///< mm
  double extend_forward = 0, extend_aft = 0;
  std::optional<double> ahead = 78.0;
  double lopsided = 0, noise = 0;  ///< mm
  std::vector<double> places = blade::places14();
  std::string job_name = "Whimbrel (an invented boat), balanced spade rudder", station = "A";
  double down = 350;
  LengthUnit units = LengthUnit::mm;
};

inline target::TargetSection target_of(const Wish& wish) {
  target::TargetSection out;
  out.station = wish.station;
  out.down = wish.down;
  out.leading_edge_x = -wish.extend_forward;
  out.chord = wish.chord + wish.extend_forward + wish.extend_aft;
  if (wish.ahead) out.ahead = *wish.ahead + wish.extend_forward;
  form::Form form;
  form.thickness_ratio = wish.target_ratio;
  const auto in_chords = [&](std::optional<double> mm) { return mm ? std::optional<double>(*mm / out.chord) : std::nullopt; };
  out.curve = form::SectionCurve(form, in_chords(wish.radius), in_chords(wish.edge));
  out.thickness_ratio = wish.target_ratio;
  return out;
}

inline Case make(
    const std::string& name, const Wish& wish, const std::function<void(job::Station&)>& alter = [](job::Station&) {}) {
  const auto shape = [&](double more) {
    return [&wish, more](double x) { return blade::naca(wish.measured_ratio, x) + more * (1 - x) * std::sqrt(x) / wish.chord; };
  };
  job::Station station =
      blade::station(wish.station, wish.down, wish.chord, shape(wish.lopsided / 2), shape(-wish.lopsided / 2), wish.places);
  station.ahead = wish.ahead;
  std::mt19937 random(7);
  blade::add_noise(station, wish.noise, random);
  if (wish.noise > 0) station.readings.front().port = station.readings.front().starboard = 0;
  if (wish.noise > 0) station.readings.back().port = station.readings.back().starboard = 0.01 * wish.chord;
  alter(station);
  Case out;
  out.name = name;
  out.job = blade::job_of({station});
  out.job.name = wish.job_name;
  out.job.units = wish.units;
  out.measured = blade::measured(out.job);
  out.target = target_of(wish);
  out.change = fill::compare(out.measured, out.target);
  out.fitted = form::fit_form(out.measured, 0.5);
  return out;
}

/// A template of the finished surface.
inline drawing::Sheet template_of(const Case& c, section::Face face) {
  const auto surface = fill::stage_section(c.target, {fill::StageKind::final, 0, ""});
  return drawing::draw_template({c.job, c.target, *surface, face, c.measured.thickness_only, 0});
}

inline const std::string& long_name() {
  static const std::string name = [] {
    std::string text = "Cur\xc3\xa9 <&> \"Sandpiper\" / 'a\\b' \xf0\x9f\x90\xa6 ";
    while (text.size() < 260) text += "and a very long name besides ";
    return text;
  }();
  return name;
}

inline std::vector<Case> all() {
  std::vector<Case> out;
  Wish usual;
  usual.lopsided = 2;
  usual.noise = 0.5;
  out.push_back(make("usual", usual));
  Wish wide = usual;
  wide.chord = 1200, wide.ahead = 200, wide.edge = 8;
  out.push_back(make("chord-1200", wide));
  Wish small = usual;
  small.chord = 90, small.ahead = 20, small.edge = 2, small.lopsided = 0.4, small.noise = 0.1;
  out.push_back(make("chord-90", small));
  Wish middle = small;
  middle.ahead = 45;
  out.push_back(make("chord-90-stock-midway", middle));
  for (const double stock : {-1.0, -3.0, -5.5, -8.0, 2.0}) {  // 2026-11-28: its label lay on that of the leading edge's stop
    Wish near = usual;
    near.ahead = stock;
    out.push_back(make("stock-" + std::to_string(stock), near));
  }
  Wish tiny = small;  // 2026-11-28: its chord fractions lay on each other, and its words were letters and dots
  tiny.chord = 24, tiny.ahead = 6, tiny.edge = 0.6, tiny.lopsided = 0, tiny.noise = 0;
  out.push_back(make("chord-24", tiny));
  Wish same;
  same.edge.reset();
  same.measured_ratio = same.target_ratio;
  out.push_back(make("zero-change", same));
  Wish thick = usual;
  thick.measured_ratio = 0.03, thick.target_ratio = 0.22;
  out.push_back(make("change-40", thick));
  Wish named = small;
  named.job_name = named.station = long_name();
  out.push_back(make("long-names", named));
  named.chord = 420;
  out.push_back(make("long-names-420", named));
  Wish built = usual;
  built.extend_forward = 25, built.extend_aft = 12, built.radius = 8;
  out.push_back(make("extended", built));
  Wish transom = usual;
  transom.ahead = -40, transom.units = LengthUnit::inch;
  out.push_back(make("stock-ahead-inches", transom));
  transom.ahead = -260;
  out.push_back(make("stock-far-ahead", transom));
  Wish unknown = usual;
  unknown.ahead.reset();
  out.push_back(make("no-stock", unknown));
  Wish crowded = small;
  crowded.places.clear();
  for (int k = 0; k <= 40; ++k) crowded.places.push_back(k * k / 1600.0);
  out.push_back(make("forty-readings-on-90", crowded));
  Wish plate = usual;
  plate.chord = 300, plate.ahead = -12, plate.noise = 0, plate.lopsided = 0;
  out.push_back(make("square-plate", plate, [](job::Station& station) {
    for (job::Reading& reading : station.readings) {
      reading.caliper = 30;
      reading.port.reset();
      reading.starboard.reset();
    }
    station.measured_by = job::MeasuredBy::thickness;
  }));
  Wish crossed = usual;
  crossed.edge = 2;
  out.push_back(make("crossed-trailing-edge", crossed, [](job::Station& station) {
    station.readings.back().port = 0.7;
    station.readings.back().starboard = -1.1;
  }));
  Case between = make("no-readings", usual);
  between.measured.points.clear();
  between.change.targets.clear();
  out.push_back(between);
  return out;
}

}  // namespace cases
