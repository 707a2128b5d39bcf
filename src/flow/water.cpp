#include "flow/water.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "base/side_by_side.hpp"
#include "base/text.hpp"
#include "flow/meaning.hpp"

namespace fairblade::flow {
namespace {

void settle(const job::Job& job, Water& water) {
  water.knots = job.speed.value_or(usual_knots);
  if (!job.speed) water.defaults.push_back({"speed", trimmed(usual_knots, 1) + " knots"});
  water.end_plate = job.water.end_plate.value_or(usual_end_plate(job));
  if (!job.water.end_plate) {
    const bool hinged = water.end_plate == EndPlate::none;
    water.defaults.push_back(
        {"water.end_plate",
         std::string(name_of(water.end_plate)) + (hinged ? " (hinged ahead of its leading edge: taken as on a transom)" : "")});
  }
  water.helm = job.water.helm.value_or(usual_helm);
  if (!job.water.helm) water.defaults.push_back({"water.helm", trimmed(usual_helm, 1) + " degrees"});
  water.heard = job.water.heard;
}

// Each station stands for the blade half-way to its neighbours, and the outer ones for what lies beyond.
std::vector<double> weights_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured) {
  std::vector<double> out;
  const std::size_t count = measured.size();
  double sum = 0;
  for (std::size_t k = 0; k < count; ++k) {
    const double from = k == 0 ? std::min(0.0, measured[k].down) : (measured[k - 1].down + measured[k].down) / 2;
    const double bottom = std::max(measured[k].down, job.bottom.value_or(measured[k].down));
    const double to = k + 1 == count ? bottom : (measured[k].down + measured[k + 1].down) / 2;
    out.push_back(std::max(to - from, 0.0) * measured[k].chord);
    sum += out.back();
  }
  for (double& weight : out) weight = sum > 0 ? weight / sum : 1.0 / static_cast<double>(count);
  return out;
}

Tone tone_of(const Edge& edge, const Water& water) {
  Tone out;
  out.edge = edge;
  out.frequency = shedding_band(edge, water.knots);
  if (water.heard) out.humming = humming_speeds(edge, *water.heard);
  return out;
}

/// The three things of a station that take long: before, after, and what reading errors would show.
constexpr std::size_t tasks_of_station = 3;
void work_out(StationWater& out, std::size_t task, const job::Job& job, const section::MeasuredSection& measured,
              const target::TargetSection& target, std::size_t panels, std::uint32_t seed) {
  const bool sides_known = !measured.thickness_only && !measured.one_side_only;
  // Many stations need fewer draws each: the blade's errors are averages over all of them.
  const int draws = std::clamp(72 / static_cast<int>(std::max<std::size_t>(job.stations.size(), 1)), 6, feigned_draws);
  if (task == 0) out.before = section_in_water(nodes_of(measured, target, panels), sides_known);
  if (task == 1) out.after = section_in_water(nodes_of(target, panels), sides_known);
  if (task == 2) out.feigned = feigned_by(measured, target, job.reading_error, seed, draws);
}

void compare(StationWater& out, const section::MeasuredSection& measured, const target::TargetSection& target,
             const Water& water) {
  out.station = measured.station;
  out.down = measured.down;
  if (!out.before.known) out.feigned = {};
  out.nose = compare_noses(out.before, out.after, out.feigned);
  out.tone_before = tone_of(edge_of(measured), water);
  out.tone_after = tone_of(edge_of(target), water);
}

// All stations by their weights; nothing when one of them cannot tell.
std::optional<double> cancel_of(const Water& water, SectionWater StationWater::*when) {
  double sum = 0;
  for (const StationWater& station : water.stations) {
    const SectionWater& section = station.*when;
    if (!section.known || !section.sides_known) return std::nullopt;
    sum += station.weight * section.helm_to_cancel;
  }
  return sum;
}

// Stations were read each on its own, so their errors add as squares.
double cancel_error_of(const Water& water) {
  double square = 0;
  for (const StationWater& station : water.stations) square += std::pow(station.weight * station.feigned.cancel_error, 2);
  return std::sqrt(square);
}

std::vector<std::string> limits_of(const Water& water) {
  std::vector<std::string> out{
      "Two shapes compared in water without friction, section by section; not a design. Balance, loads and the stock belong to "
      "a qualified designer.",
      "No stall angle and no cavitation is foretold: only which nose works harder at one helm.",
      "The load is the straight line of small angles, for a blade alone in a steady stream, without propeller, waves or heel.",
      "The tone's equation is from tests in air on aerofoils with a blunt edge; whether a blade answers to it, nobody can say "
      "from its outline. The band allows for a boundary layer 0.7 to 1.5 times a smooth flat plate's."};
  if (!water.blade_before.known && !water.blade_before.why_not.empty()) {
    out.push_back("No load is worked out: " + water.blade_before.why_not + ".");
  }
  const auto skegs = [](const StationWater& s) { return s.before.skeg > 0; };
  if (std::any_of(water.stations.begin(), water.stations.end(), skegs)) {
    out.push_back(
        "Behind a fixed skeg, skeg and rudder are worked out in line, the angle being the boat's leeway; the skeg, which "
        "was not measured, is taken as the target's own curve both times.");
  }
  std::string untried;
  for (const StationWater& s : water.stations) {
    const bool before = s.tone_before.edge.angle_beyond_tried, after = s.tone_after.edge.angle_beyond_tried;
    if (!before && !after) continue;
    untried += (untried.empty() ? "" : ", ") + s.station +
               (before && after ? ""
                : before        ? " (the old tail)"
                                : " (the new tail)");
  }
  if (!untried.empty()) {
    out.push_back("Tails that close by more than the " + trimmed(widest_tried, 0) +
                  " degrees that were tried, or that spread, have the tone of the nearest that was: station " + untried + ".");
  }
  for (const StationWater& s : water.stations) {
    if (s.before.known && s.before.parted <= 0) continue;
    out.push_back("Station " + s.station + ": " +
                  (s.before.known ? "the readings let the faces touch or nearly so; they were parted by up to " +
                                        fixed(s.before.parted, 2) + " mm to be worked out"
                                  : s.before.why_not) +
                  ".");
  }
  return out;
}

}  // namespace

EndPlate usual_end_plate(const job::Job& job) {
  const auto hinged = [](const job::Station& s) { return s.ahead && *s.ahead <= 0 && !(s.skeg > 0); };
  const bool all = !job.stations.empty() && std::all_of(job.stations.begin(), job.stations.end(), hinged);
  return all ? EndPlate::none : EndPlate::full;
}

Water before_and_after(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                       const std::vector<target::TargetSection>& targets, std::size_t panels) {
  assert(measured.size() == targets.size());
  Water out;
  settle(job, out);
  const auto weights = weights_of(job, measured);
  bool behind_skeg = false;
  out.stations.resize(measured.size());
  side_by_side(tasks_of_station * measured.size(), [&](std::size_t task) {
    const std::size_t k = task / tasks_of_station;
    work_out(out.stations[k], task % tasks_of_station, job, measured[k], targets[k], panels, static_cast<std::uint32_t>(k + 1));
  });
  for (std::size_t k = 0; k < measured.size(); ++k) {
    compare(out.stations[k], measured[k], targets[k], out);
    out.stations[k].weight = weights[k];
    behind_skeg = behind_skeg || measured[k].skeg > 0;
  }
  out.blade_before = blade_in_water(outline_of(job, measured), behind_skeg, out.end_plate, out.knots, out.helm);
  out.blade_after = blade_in_water(outline_of(job, targets), behind_skeg, out.end_plate, out.knots, out.helm);
  out.cancel_before = cancel_of(out, &StationWater::before);
  out.cancel_after = cancel_of(out, &StationWater::after);
  out.cancel_error = cancel_error_of(out);
  if (!out.stations.empty()) {
    out.edge_options = edge_options(out.stations[out.stations.size() / 2].tone_after.edge, out.knots);
  }
  out.limits = limits_of(out);
  out.meaning = meaning_of(job, out);
  return out;
}

}  // namespace fairblade::flow
