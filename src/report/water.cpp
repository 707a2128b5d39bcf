#include "report/water.hpp"

#include <cmath>
#include <functional>
#include <numbers>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

using flow::BladeWater;
using flow::StationWater;

const std::string unknown = "-";

std::string hertz_words(const std::optional<flow::Band>& band) {
  return band ? fixed(band->low, 0) + " to " + fixed(band->high, 0) : unknown;
}

PlainTable water_blade(const Plan& plan) {
  const flow::Water& water = plan.water;
  PlainTable out{"The blade as a whole", {{"", "now", "then"}}};
  using Words = std::function<std::string(const BladeWater&)>;
  const auto row = [&](const std::string& name, bool there, const Words& words) {
    if (there) out.rows.push_back({name, words(water.blade_before), words(water.blade_after)});
  };
  const auto maybe = [](const std::optional<double>& value, const std::function<std::string(double)>& words) {
    return value ? words(*value) : unknown;
  };
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  const bool known = water.blade_before.known && water.blade_after.known;
  row("area ahead of the stock, %", true,
      [&](const BladeWater& b) { return maybe(b.balance_percent, [](double v) { return fixed(v, 1); }); });
  row("aspect ratio, geometric", known, [](const BladeWater& b) { return fixed(b.geometric_aspect, 2); });
  row(std::string("aspect ratio, effective (hull as end plate: ") + flow::name_of(water.end_plate) + ")", known,
      [](const BladeWater& b) { return fixed(b.effective_aspect, 2); });
  row("lift per degree of helm", known, [](const BladeWater& b) { return fixed(b.lift_slope * std::numbers::pi / 180, 4); });
  row("centre of pressure, mean chords aft", known, [](const BladeWater& b) { return fixed(b.centre_of_pressure, 3); });
  row("its lever aft of the stock", known, [&](const BladeWater& b) { return maybe(b.lever, length); });
  row("lever by class rules, going ahead", known, [&](const BladeWater& b) { return maybe(b.class_lever_ahead, length); });
  row("lever by class rules, going astern", known, [&](const BladeWater& b) { return maybe(b.class_lever_astern, length); });
  const std::string at = " at " + trimmed(water.helm, 1) + "\xc2\xb0 and " + trimmed(water.knots, 1) + " knots";
  row("force" + at + ", N", known, [](const BladeWater& b) { return fixed(b.load.force, 0); });
  row("torque at the stock" + at + ", Nm", known,
      [&](const BladeWater& b) { return maybe(b.load.torque, [](double v) { return fixed(v, 0); }); });
  if (water.cancel_before && water.cancel_after) {
    out.rows.push_back({"helm that cancels its pull, give or take " + fixed(water.cancel_error, 1) + "\xc2\xb0",
                        fixed(*water.cancel_before, 1) + "\xc2\xb0", fixed(*water.cancel_after, 1) + "\xc2\xb0"});
  }
  return out;
}

PlainTable water_stations(const Plan& plan) {
  const flow::Water& water = plan.water;
  PlainTable out{"Station by station, now and then", {}};
  const std::string at = " at " + trimmed(flow::judged_helm, 0) + "\xc2\xb0";
  out.rows.push_back({"station", "nose suction" + at + " now", "then", "same suction at", "edge now", "edge then", "tone now, Hz",
                      "tone then, Hz"});
  for (const StationWater& s : water.stations) {
    const auto& nose = s.nose;
    out.rows.push_back({s.station, nose.known ? fixed(nose.before, 2) : unknown, nose.known ? fixed(nose.after, 2) : unknown,
                        nose.known && nose.same_suction_helm ? fixed(*nose.same_suction_helm, 1) + "\xc2\xb0" : unknown,
                        both_units(s.tone_before.edge.thickness, plan.job.units),
                        both_units(s.tone_after.edge.thickness, plan.job.units), hertz_words(s.tone_before.frequency),
                        hertz_words(s.tone_after.frequency)});
  }
  return out;
}

}  // namespace

WaterPage water_page(const Plan& plan) {
  const flow::Water& water = plan.water;
  WaterPage out;
  out.sentences = {water.meaning.stall, water.meaning.hum, water.meaning.helm};
  if (!water.meaning.pull.empty()) out.sentences.push_back(water.meaning.pull);
  out.verdict = water.meaning.verdict;
  out.caution = "A comparison of two shapes, not a design: balance, loads and the stock belong to a qualified designer.";
  out.blade = water_blade(plan);
  out.stations = water_stations(plan);
  for (const flow::EdgeOption& option : water.edge_options) {
    std::string words = option.name + ": " + option.words;
    if (option.frequency) words += " (" + hertz_words(option.frequency) + " Hz at " + trimmed(water.knots, 1) + " knots)";
    out.edge_options.push_back(words + "; common practice, no promise");
  }
  out.limits = water.limits;
  return out;
}

std::string water_text(const Plan& plan) {
  const WaterPage page = water_page(plan);
  std::string out;
  for (const std::string& each : page.sentences) out += wrapped("  " + on_one_line(each), 4);
  return out + wrapped("  " + page.verdict, 4) + wrapped("  " + page.caution, 4);
}

}  // namespace fairblade::report
