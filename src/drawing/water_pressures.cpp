#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/plot.hpp"
#include "drawing/text_room.hpp"
#include "drawing/water_panels.hpp"

namespace fairblade::drawing {
namespace {

constexpr double pressures_type = 2.6, small_type = 2.3;
constexpr double highest_shown = 10;  // of the suction: what is beyond is a corner's, and is told as a number

// Against the root of x: what differs lies at the nose.
std::vector<Point> upwards(const std::vector<flow::CpPoint>& face) {
  std::vector<Point> out;
  for (const flow::CpPoint& p : face) out.emplace_back(std::sqrt(std::max(0.0, p.x)), -p.cp);
  return out;
}

Axis along_chord(Written written) {
  const char* const name = written == Written::all    ? "per cent of the chord aft of the leading edge, stretched near the nose"
                           : written == Written::some ? "% of the chord, stretched near the nose"
                                                      : "";
  Axis out{0, 1, name, {}};
  const std::vector<int> all{0, 1, 2, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100}, few{0, 5, 25, 50, 100};
  for (const int percent : written == Written::all ? all : few)
    out.ticks.emplace_back(std::sqrt(percent / 100.0), std::to_string(percent));
  return out;
}

double greatest(const flow::CpCurve& curve) {
  double out = 0;
  for (const auto* face : {&curve.port, &curve.starboard}) {
    for (const flow::CpPoint& p : *face) out = std::max(out, -p.cp);
  }
  return out;
}

double suction_at(const flow::SectionWater& section, double degrees) {
  return section.known ? section.flow->at(degrees).suction : 0;
}

}  // namespace

double hardest(const flow::StationWater& station, double helm) {
  double out = 0;
  for (const flow::SectionWater* section : {&station.before, &station.after}) {
    if (section->known) out = std::max(out, flow::worse_suction(*section->flow, helm));
  }
  return out;
}

void draw_pressures(Sheet& sheet, const Box& room, const flow::StationWater& station, double helm, Written written) {
  const bool large = written != Written::least;
  const Point &a = room.min_corner(), &b = room.max_corner();
  const double size = large ? 3.2 : 2.6, t = large ? pressures_type : small_type;
  const double wide = b.x() - a.x();
  std::string title = "Station " + printable(station.station);
  if (!station.before.known || !station.after.known) {
    Column column(sheet, a.x(), a.y(), wide);
    column.line(title, size, true);
    column.paragraph("Not worked out: " + (station.before.known ? station.after.why_not : station.before.why_not) + ".", t);
    return;
  }
  const double way = suction_at(station.before, helm) >= suction_at(station.before, -helm) ? 1 : -1;
  const auto before = flow::cp_curve(*station.before.flow, way * helm);
  const auto after = flow::cp_curve(*station.after.flow, way * helm);
  const double top = std::min(highest_shown, std::max({1.0, greatest(before), greatest(after)}));
  if (large) {
    title += station.before.skeg > 0 ? ", skeg and rudder, at " + trimmed(helm, 1) + "\xc2\xb0 of leeway"
                                     : ", at " + trimmed(helm, 1) + "\xc2\xb0 of helm";
    title += way > 0 ? ", suction to port" : ", suction to starboard";
  }
  add_text(sheet, {a.x(), a.y() + 0.97 * size}, shortened(title, size, true, wide), size, Anchor::start, true);
  const double left = large ? Plot::left_of_frame : 6, below = large ? Plot::below_frame : 4.5;
  const Box frame({a.x() + left, a.y() + size + 2.5}, {b.x() - 2.5, b.y() - below});
  Plot plot(sheet, frame, along_chord(written), {-1.15, 1.06 * top, large ? "suction, in the stream's pressure" : "", {}}, t);
  plot.axes();
  for (const bool old : {true, false}) {
    const auto& curve = old ? before : after;
    for (const bool port : {true, false}) {
      const std::string id = std::string("pressure-") + (old ? "before-" : "after-") + (port ? "port" : "starboard");
      plot.line(upwards(port ? curve.port : curve.starboard), old ? Pen::measured : Pen::cut, large ? id : "");
    }
  }
  const auto peak = [&](const flow::SectionWater& section) { return fixed(suction_at(section, way * helm), 1); };
  const double right = frame.max_corner().x() - 1.5;
  double y = frame.min_corner().y() + 1.2 + t;
  const auto note = [&](const std::string& words) {
    add_text_on_white(sheet, {{right, y}, words, t, Anchor::end, 0, false});
    y += 1.35 * t;
  };
  note((written == Written::all    ? "greatest suction at the nose, over half a per cent of chord: "
        : written == Written::some ? "suction at the nose: "
                                   : "") +
       peak(station.before) + " now, " + peak(station.after) + " then");
  if (!large) return;
  note("thin line: now; heavy line: then");
  if (std::max(greatest(before), greatest(after)) > highest_shown)
    note("peaks above " + trimmed(highest_shown, 0) + " are cut off");
  if (written == Written::some) return;
  const Point pressure = plot.at(0.62, -0.75);
  add_text_on_white(sheet, {pressure, "pressure side below the line, suction side above it", t, Anchor::middle, 0, false});
}

}  // namespace fairblade::drawing
