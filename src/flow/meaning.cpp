#include "flow/meaning.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <initializer_list>
#include <utility>

#include "base/text.hpp"

namespace fairblade::flow {
namespace {

constexpr double sure = 2;          // standard deviations
constexpr double sure_suction = 3;  // the same; suctions stray further upwards than a normal law has it
constexpr double sure_pull = 2.5;   // a fixed handful of draws knows the deviation to a tenth
const std::string not_worth = "inside the measurement error, so for this alone it is not worth doing";

std::string degrees(double value) { return trimmed(value, 1) + "°"; }
std::string percent(double value) { return trimmed(value, value < 10 ? 1 : 0) + " %"; }

// All stations that have a nose, by their weights; errors add as squares.
struct Noses {
  double weight = 0, before = 0, after = 0, excess = 0, error = 0, sure_helm = 0;
  bool errors_known = true, helm_known = true;
};

Noses noses_of(const Water& water) {
  Noses out;
  double square = 0;
  for (const StationWater& s : water.stations) {
    if (!s.nose.known) continue;
    out.weight += s.weight;
    out.before += s.weight * s.nose.before;
    out.after += s.weight * s.nose.after;
    out.excess += s.weight * s.nose.feigned.excess;
    square += std::pow(s.weight * s.nose.feigned.suction_error, 2);
    out.errors_known = out.errors_known && s.nose.feigned.known;
    out.helm_known = out.helm_known && s.nose.sure_helm.has_value();
    out.sure_helm += s.weight * s.nose.sure_helm.value_or(0);
  }
  if (!(out.weight > 0)) return out;
  for (double* value : {&out.before, &out.after, &out.excess, &out.sure_helm}) *value /= out.weight;
  out.error = std::sqrt(square) / out.weight;
  return out;
}

void say_stall(const Water& water, Meaning& out) {
  const Noses noses = noses_of(water);
  if (!(noses.weight > 0)) {
    const std::string why = water.stations.empty() ? "no station" : water.stations.front().nose.why_not;
    out.stall = "Stall: not compared, for " + why + ".";
    return;
  }
  // Errors can only have made the old nose look worse: they are taken off a gain, not added to a loss.
  const double shown = noses.before - noses.after;
  const double real = shown > 0 ? std::max(0.0, shown - noses.excess) : shown;
  const bool clear = noses.errors_known && std::abs(real) > sure_suction * noses.error;
  out.stall_gain = clear && real > 0;
  out.stall_loss = clear && real < 0;
  const double share = 100 * (1 - noses.after / noses.before);
  out.stall = "Stall: at " + degrees(judged_helm) + " of helm the suction at the nose goes from " + fixed(noses.before, 1) +
              " to " + fixed(noses.after, 1) + " times the stream's pressure, " + percent(std::abs(share)) +
              (share >= 0 ? " less" : " more");
  if (!noses.errors_known) {
    out.stall += "; how much of that is reading error cannot be told.";
    return;
  }
  out.stall += ", where reading errors alone would show " + fixed(noses.after + noses.excess, 1) + " (give or take " +
               fixed(noses.error, 1) + ") on a blade that needs nothing";
  if (!clear) {
    out.stall += ": the gain is " + not_worth + ".";
    return;
  }
  if (noses.helm_known && real > 0) {
    out.stall += "; that taken off, the new nose works as hard as the old one at " + degrees(noses.sure_helm);
  }
  out.stall += real > 0 ? ", so it should hold on longer." : ", so it may let go earlier.";
}

struct EdgeSpan {
  double thickness = 0;  // weighted mean, mm
  std::optional<Band> hertz, knots;
};

EdgeSpan edges_of(const Water& water, Tone StationWater::*when) {
  EdgeSpan out;
  const auto widen = [](std::optional<Band>& all, const std::optional<Band>& one) {
    if (!one) return;
    if (!all) all = one;
    all->low = std::min(all->low, one->low);
    all->high = std::max(all->high, one->high);
  };
  for (const StationWater& s : water.stations) {
    out.thickness += s.weight * (s.*when).edge.thickness;
    widen(out.hertz, (s.*when).frequency);
    widen(out.knots, (s.*when).humming);
  }
  return out;
}

std::string hertz(const std::optional<Band>& band) {
  if (!band) return "too thin to shed a tone that can be worked out";
  const auto round = [](double f) {
    const double step = f >= 1000 ? 100 : f >= 100 ? 10 : 1;
    return fixed(std::round(f / step) * step, 0);
  };
  return round(band->low) + " to " + round(band->high) + " Hz";
}

void say_hum(const job::Job& job, const Water& water, Meaning& out) {
  const EdgeSpan before = edges_of(water, &StationWater::tone_before);
  const EdgeSpan after = edges_of(water, &StationWater::tone_after);
  const double count = std::max<double>(1, static_cast<double>(water.stations.size()));
  const double error = job.reading_error * std::sqrt(2 / count);
  out.hum_change = std::abs(after.thickness - before.thickness) > sure * error;
  const auto edge = [&](const char* which, const EdgeSpan& span) {
    std::string size = in_unit(span.thickness, LengthUnit::mm);
    if (job.units != LengthUnit::mm) size += ", " + in_unit(span.thickness, job.units);
    return std::string(which) + " edge (" + size + ") " + (span.hertz ? "sheds at " : "is ") + hertz(span.hertz);
  };
  out.hum = "Hum: at " + trimmed(water.knots, 1) + " knots the " + edge("old", before) + " and the " + edge("new", after);
  if (water.heard) {
    const auto when = [&](const EdgeSpan& span) {
      if (!span.knots) return std::string("at no speed");
      return "at " + fixed(span.knots->low, 1) + " to " + fixed(span.knots->high, 1) + " knots";
    };
    out.hum += "; the " + trimmed(*water.heard, 0) + " Hz that are heard would come from the old edge " + when(before) +
               ", from the new one " + when(after);
  }
  out.hum += out.hum_change ? "; whether the blade answers to it cannot be told beforehand."
                            : "; the change of edge is " + not_worth + ".";
}

std::string from_to(const std::string& before, const std::string& after) {
  return before == after ? "stays at " + before : "goes from " + before + " to " + after;
}

std::string torque_words(const Water& water) {
  const auto& before = water.blade_before.load.torque;
  const auto& after = water.blade_after.load.torque;
  if (!before || !after) return "";
  const int decimals = std::max(std::abs(*before), std::abs(*after)) < 10 ? 1 : 0;
  const std::string then = fixed(*after, decimals);
  std::string out = ", and the torque at the stock at " + degrees(water.helm) + " and " + trimmed(water.knots, 1) + " knots " +
                    from_to(fixed(*before, decimals), then) + " Nm";
  if (then.starts_with('-')) out += ", and the minus means that the helm would go over by itself";
  return out;
}

void say_helm(const job::Job& job, const Water& water, Meaning& out) {
  const auto& before = water.blade_before.balance_percent;
  const auto& after = water.blade_after.balance_percent;
  if (!before || !after) {
    const std::string why = water.blade_before.area > 0 ? "where the stock stands (`ahead`) was not given at every station"
                                                        : water.blade_before.why_not;
    out.helm = "Helm: no balance (the usual bound is some 20 % of the area), for " + why + ".";
    return;
  }
  const double count = std::max<double>(1, static_cast<double>(water.stations.size()));
  const double error = 100 * job.reading_error / water.blade_before.mean_chord / std::sqrt(count);
  out.helm_change = std::abs(*after - *before) > sure * error;
  out.helm = "Helm: the area ahead of the stock " + from_to(fixed(*before, 1), fixed(*after, 1)) + " %" + torque_words(water);
  if (!out.helm_change && *after != *before) out.helm += "; the change of balance is inside the measurement error";
  out.helm += *after > twitchy_balance ? "; above some 20 % helms turn twitchy (common practice)."
                                       : "; that is within the 20 % or so above which helms turn twitchy (common practice).";
}

void say_pull(const Water& water, Meaning& out) {
  if (!water.cancel_before || !water.cancel_after) return;
  const double before = std::abs(*water.cancel_before);
  const double after = std::abs(*water.cancel_after);
  if (!(before > sure_pull * water.cancel_error && before >= 0.1)) return;  // nothing shows
  out.pull_gain = before - after > sure_pull * water.cancel_error;
  out.pull = std::string("Pull: with the helm amidships the blade pulls to ") +
             (*water.cancel_before < 0 ? "port" : "starboard") + " as " + degrees(before) + " of helm would (give or take " +
             degrees(water.cancel_error) + "), afterwards as " + degrees(after) + ".";
}

}  // namespace

Meaning meaning_of(const job::Job& job, const Water& water) {
  Meaning out;
  say_stall(water, out);
  say_hum(job, water, out);
  say_helm(job, water, out);
  say_pull(water, out);
  const auto listed = [](std::initializer_list<std::pair<bool, const char*>> parts) {
    std::string words;
    for (const auto& [there, name] : parts) {
      if (there) words += (words.empty() ? "" : ", ") + std::string(name);
    }
    return words;
  };
  const std::string better = listed({{out.stall_gain, "the nose's suction"}, {out.pull_gain, "the pull amidships"}});
  const std::string other = listed({{out.hum_change, "the edge's tone"}, {out.helm_change, "the balance"}});
  if (out.stall_loss) out.verdict += "Worse: the nose works harder than the old one. ";
  if (!better.empty()) out.verdict += "Better by more than errors of reading could make it look: " + better + ". ";
  if (!other.empty()) out.verdict += "Changed by more than errors of reading could make it look: " + other + ". ";
  if (out.verdict.empty()) {
    out.verdict = "Nothing here changes by more than the readings can tell: for the water's sake alone it is not worth doing.";
  } else {
    out.verdict.pop_back();
  }
  return out;
}

}  // namespace fairblade::flow
