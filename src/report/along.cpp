#include "report/along.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/words.hpp"
#include "target/loft.hpp"

namespace fairblade::report {
namespace {

std::string station_words(const Plan& plan, std::size_t k) { return "station " + on_one_line(plan.measured[k].station); }

std::string blade_sentence(const Plan& plan) {
  const auto area = [](double mm2) { return fixed(mm2 / 100, 0) + " cm²"; };
  std::string out = "side area " + area(plan.before.area) + " now, " + area(plan.after.area) + " then";
  if (plan.before.balance_percent && plan.after.balance_percent) {
    out += "; " + fixed(*plan.before.balance_percent, 1) + " % of it ahead of the stock now, " +
           fixed(*plan.after.balance_percent, 1) +
           " % then (common practice: up to about 17 % on yachts; above 20 % the helm turns twitchy)";
  } else {
    out += plan.measured.size() < 2 ? "; one station alone tells no area and no balance"
                                    : "; without \"ahead\" at every station there is no balance figure";
  }
  return out;
}

std::string governing_sentence(const Plan& plan, const plan::GoverningReading& one) {
  const auto& measured = plan.measured[one.station];
  const auto& governing = *plan.targets[one.station].governing;
  return station_words(plan, one.station) + " is governed by the reading at x " + both_units(governing.x, plan.job.units) + ", " +
         side_words(measured, governing.face) + " (" + measured.readings_from + ":" + std::to_string(governing.line) +
         "): without it the blade would take " + fixed(one.litres_without, 2) + " L instead of " + fixed(plan.volumes.add, 2) +
         " L" + (plan.volumes.add - one.litres_without > plan.volumes.add_error ? ", so measure it again" : "");
}

/// Readings that settle a target and yet no litres are told in one breath: nothing hangs on any one of them.
void governing_sentences(const Plan& plan, std::vector<std::string>& out) {
  std::vector<std::string> idle;
  for (const auto& one : plan.governing) {
    if (fixed(one.litres_without, 2) != fixed(plan.volumes.add, 2)) out.push_back(governing_sentence(plan, one));
    else idle.push_back(on_one_line(plan.targets[one.station].station));
  }
  if (idle.empty()) return;
  out.push_back((idle.size() == 1 ? "station " : "stations ") + joined(idle) +
                ": no reading there is worth litres by itself; the others hold the fair line where it is");
}

void pull_sentences(const Plan& plan, std::vector<std::string>& out) {
  std::string moved;
  for (std::size_t k = 0; k < plan.targets.size(); ++k) {
    const target::Pull& pull = plan.targets[k].pull;
    std::string parts;
    const auto part = [&](double mm, const char* what, const char* plus, const char* minus) {
      if (std::abs(mm) < 0.05) return;
      parts += (parts.empty() ? "" : ", ") + std::string(what) + " " + both_units(std::abs(mm), plan.job.units) + " " +
               (mm > 0 ? plus : minus);
    };
    part(pull.thickness, "greatest thickness", "up", "down");
    part(pull.leading_edge, "leading edge", "forward", "aft");
    part(pull.trailing_edge, "trailing edge", "aft", "forward");
    if (!parts.empty())
      moved += (moved.empty() ? "" : "; ") + std::string("station ") + on_one_line(plan.targets[k].station) + " " + parts;
  }
  if (!moved.empty()) out.push_back("to make the blade fair from station to station the targets were moved: " + moved);
}

void screed_sentence(const Plan& plan, std::vector<std::string>& out) {
  double worst = 0;
  std::size_t at = 0;
  for (std::size_t k = 0; k + 1 < plan.targets.size(); ++k) {
    const double miss = std::abs(target::screed_miss(plan.targets[k], plan.targets[k + 1]).mm);
    if (miss > worst) worst = miss, at = k;
  }
  if (plan.targets.size() < 2) return;
  out.push_back("a straight screed laid from station to station along lines of equal chord fraction misses the target by " +
                (worst < 0.05 ? std::string("less than 0.1 mm")
                              : both_units(worst, plan.job.units) + " at most, between " + on_one_line(plan.targets[at].station) +
                                    " and " + on_one_line(plan.targets[at + 1].station)));
}

void twist_sentences(const Plan& plan, std::vector<std::string>& out) {
  const target::StationTwist* most = nullptr;
  for (const auto& one : plan.twist.stations) {
    if (one.known && (!most || std::abs(one.twist_degrees) > std::abs(most->twist_degrees))) most = &one;
  }
  if (most && std::abs(most->twist_degrees) >= 0.05) {
    out.push_back("against the centre plane of station " + on_one_line(plan.twist.centre_station) + ", station " +
                  on_one_line(most->station) + " is turned most: " + fixed(std::abs(most->twist_degrees), 1) +
                  "° (its trailing edge " + both_units(std::abs(most->twist_mm), plan.job.units) + " to " +
                  (most->twist_degrees >= 0 ? "port" : "starboard") + " of a line through its leading edge), give or take " +
                  fixed(most->error_degrees, 2) + "°");
  }
  const auto& lean = plan.twist.lean_degrees;
  if (lean && std::abs(*lean) >= 0.05) {
    out.push_back("the blade leans " + fixed(std::abs(*lean), 1) + "° to " + (*lean >= 0 ? "port" : "starboard") + " going down");
  }
}

}  // namespace

std::vector<std::string> of_the_target(const Plan& plan) {
  std::vector<std::string> out{blade_sentence(plan)};
  governing_sentences(plan, out);
  pull_sentences(plan, out);
  screed_sentence(plan, out);
  return out;
}

std::vector<std::string> of_the_blade(const Plan& plan) {
  std::vector<std::string> out;
  twist_sentences(plan, out);
  bool told = false;
  for (const auto& one : plan.asymmetry) {
    const std::string words = target::words_of(plan.job, one);
    if (words.empty()) continue;
    out.push_back("station " + on_one_line(one.station) + ": " + words);
    told = true;
  }
  const bool full = std::any_of(plan.job.stations.begin(), plan.job.stations.end(),
                                [](const job::Station& s) { return s.target.approach == job::Approach::full_section; });
  if (told) {
    out.push_back("bringing the thinner side up to the fuller, and nothing else, would take " +
                  fixed(plan.make_one.add_litres, 2) + " L" +
                  (full ? "; a full section is the same on both sides, so its litres pay for that too" : ""));
  }
  return out;
}

std::vector<std::string> along_the_blade(const Plan& plan) {
  std::vector<std::string> out = of_the_target(plan);
  for (std::string& one : of_the_blade(plan)) out.push_back(std::move(one));
  return out;
}

}  // namespace fairblade::report
