#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/plot.hpp"
#include "drawing/round_step.hpp"
#include "drawing/text_room.hpp"
#include "drawing/water_panels.hpp"

namespace fairblade::drawing {
namespace {

constexpr double tone_title = 3.2, tone_type = 2.6;
constexpr int speeds = 40;

struct Bands {
  std::vector<Point> low, high;  // Hz over knots
  double thickest = 0, thinnest = 1e9;
  bool none() const { return low.empty(); }
};

// All stations together: from the lowest to the highest of any.
Bands bands_of(const flow::Water& water, flow::Tone flow::StationWater::*when, double fastest) {
  Bands out;
  for (const flow::StationWater& station : water.stations) {
    const double e = (station.*when).edge.thickness;
    out.thickest = std::max(out.thickest, e);
    out.thinnest = std::min(out.thinnest, e);
  }
  for (int k = 0; k <= speeds; ++k) {
    const double knots = flow::slowest_knots + (fastest - flow::slowest_knots) * k / speeds;
    std::optional<flow::Band> all;
    for (const flow::StationWater& station : water.stations) {
      const auto one = flow::shedding_band((station.*when).edge, knots);
      if (!one) continue;
      if (!all) all = one;
      all->low = std::min(all->low, one->low);
      all->high = std::max(all->high, one->high);
    }
    if (!all) return out;
    out.low.emplace_back(knots, all->low);
    out.high.emplace_back(knots, all->high);
  }
  return out;
}

std::string edge_words(const job::Job& job, const Bands& bands, const char* which) {
  const int decimals = job.units == LengthUnit::mm ? 1 : job.units == LengthUnit::cm ? 2 : 3;
  const double unit = millimetres_in(job.units);
  return std::string(which) + " " + fixed_range(bands.thinnest / unit, bands.thickest / unit, decimals) + " " +
         std::string(name_of(job.units));
}

void draw_band(Plot& plot, const Bands& bands, bool old) {
  if (bands.none()) return;
  plot.band(bands.low, bands.high, old ? 2.4 : 1.2, !old);
  plot.line(bands.low, old ? Pen::measured : Pen::outline, old ? "tone-before-low" : "tone-after-low");
  plot.line(bands.high, old ? Pen::measured : Pen::outline, old ? "tone-before-high" : "tone-after-high");
}

/// The band's name as far right as it goes: in it where it is wide enough, else beside it.
void name_band(Sheet& sheet, TextRoom& placing, const Plot& plot, const Bands& bands, const std::string& words, bool bold) {
  if (bands.none()) return;
  for (const double part : {0.9, 0.75, 0.6, 0.45, 0.3}) {
    const auto k = static_cast<std::size_t>(part * static_cast<double>(bands.low.size() - 1));
    const Point low = plot.at(bands.low[k].x(), bands.low[k].y()), high = plot.at(bands.low[k].x(), bands.high[k].y());
    std::vector<double> baselines;
    if (low.y() - high.y() > 3 * tone_type) baselines.push_back((low.y() + high.y()) / 2 + 0.36 * tone_type);
    for (const double away : {1.0, 4.0, 8.0}) {
      baselines.push_back(high.y() - away - 0.5 * tone_type);
      baselines.push_back(low.y() + away + 1.5 * tone_type);
    }
    for (const double y : baselines) {
      if (placing.put(sheet, {{low.x(), y}, words, tone_type, Anchor::end, 0, bold})) return;
    }
  }
}

}  // namespace

void draw_tone(Sheet& sheet, const Box& room, const job::Job& job, const flow::Water& water) {
  const Point &a = room.min_corner(), &b = room.max_corner();
  Column head(sheet, a.x(), a.y(), b.x() - a.x());
  head.line("Tone of the trailing edge", tone_title, true);
  const double fastest = std::clamp(std::ceil(1.5 * water.knots), 8.0, flow::fastest_knots);
  const Bands before = bands_of(water, &flow::StationWater::tone_before, fastest);
  const Bands after = bands_of(water, &flow::StationWater::tone_after, fastest);
  Column notes(sheet, a.x(), head.bottom(), b.x() - a.x());
  for (const auto& [bands, which] : {std::pair{&before, "old"}, std::pair{&after, "new"}}) {
    if (bands->none())
      notes.paragraph("The " + std::string(which) + " edge is too thin for a tone that can be worked out.", tone_type);
  }
  if (before.none() && after.none()) return;
  double highest = water.heard ? 1.1 * *water.heard : 0;
  for (const Bands* bands : {&before, &after}) {
    if (!bands->none()) highest = std::max(highest, bands->high.back().y());
  }
  Plot plot(sheet, Box({a.x() + Plot::left_of_frame, notes.bottom() + 2}, {b.x() - 2.5, b.y() - Plot::below_frame}),
            {0, fastest, "knots", {}}, {0, 1.05 * highest, "Hz", {}}, tone_type);
  plot.axes();
  draw_band(plot, before, true);
  draw_band(plot, after, false);
  plot.line({{water.knots, 0}, {water.knots, 1.05 * highest}}, Pen::guide, "tone-speed");
  if (water.heard) plot.line({{0, *water.heard}, {fastest, *water.heard}}, Pen::datum, "tone-heard");
  TextRoom placing(plot.frame());
  const double y = plot.frame().min_corner().y();
  const Point speed = plot.at(water.knots, 0);
  for (const Anchor anchor : {Anchor::end, Anchor::start}) {
    const double x = speed.x() + (anchor == Anchor::end ? -1.2 : 1.2);
    if (placing.put(sheet,
                    {{x, y + 1 + tone_type}, "the job's " + trimmed(water.knots, 1) + " knots", tone_type, anchor, 0, false}))
      break;
  }
  if (water.heard) {
    const Point heard = plot.at(0.02 * fastest, *water.heard);
    const std::string words = "heard: " + trimmed(*water.heard, 0) + " Hz";
    for (const double up : {-0.8, 0.8 + tone_type}) {
      if (placing.put(sheet, {{heard.x(), heard.y() + up}, words, tone_type, Anchor::start, 0, false})) break;
    }
  }
  name_band(sheet, placing, plot, after, edge_words(job, after, "new edge"), true);
  name_band(sheet, placing, plot, before, edge_words(job, before, "old edge"), false);
}

}  // namespace fairblade::drawing
