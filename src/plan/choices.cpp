#include "plan/choices.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "base/side_by_side.hpp"
#include "base/text.hpp"
#include "job/build.hpp"
#include "target/least_fill.hpp"

namespace fairblade::plan {
namespace {

using job::TargetRequest;

/// What an idea brings, for its sentence.
enum class Gain { published_section, edges_alone, thinnest, thinnest_built_out };

struct Idea {
  std::string name;
  std::vector<job::Override> asks;
  std::function<void(TargetRequest&)> change;
  Gain gain = Gain::published_section;
};

Idea ratio_idea(int percent) {
  const std::string digits = percent < 10 ? "0" + std::to_string(percent) : std::to_string(percent);
  return {"00" + digits + " throughout",
          {{"approach", "full-section"}, {"thickness", std::to_string(percent) + "%"}, {"max_thickness_at", "form"}},
          [percent](TargetRequest& t) {
            t.approach = job::Approach::full_section;
            t.thickness = {job::Thickness::Kind::ratio, percent / 100.0};
            t.max_thickness_at = {};
          }};
}

// How far the tool may build the edges where the owner did not say: 3 % of the longest chord ahead, 8 % aft.
constexpr double reach_ahead = 0.03, reach_aft = 0.08;

std::vector<Idea> ideas(const job::Job& job, const std::vector<form::FittedForm>& fitted) {
  double chord = 0;
  double ratio = 0;
  for (const auto& station : job.stations) chord = std::max(chord, station.chord);
  for (const auto& one : fitted) ratio += one.form.thickness_ratio / static_cast<double>(fitted.size());
  // The gap to a skeg is not known here, and an edge that is left is not built out.
  const bool stays = std::any_of(job.stations.begin(), job.stations.end(), [](const auto& one) {
    return one.skeg > 0 || one.target.leading_edge == job::LeadingEdgeWork::leave;
  });
  const double unit = millimetres_in(job.units), least = unit > 1 ? 0.01 * unit : 1;  // as it is written
  const double ahead = stays ? 0 : least * std::round(reach_ahead * chord / least);
  const double aft = least * std::round(reach_aft * chord / least);
  const auto up_to = [unit](double mm) { return "up_to " + trimmed(mm / unit, 2); };
  std::vector<Idea> out;
  out.push_back({"edges only",
                 {{"approach", "edges-only"}},
                 [](TargetRequest& t) { t.approach = job::Approach::edges_only; },
                 Gain::edges_alone});
  out.push_back({"closest form",
                 {{"approach", "full-section"}, {"thickness", "closest"}, {"max_thickness_at", "form"}},
                 [](TargetRequest& t) {
                   t.approach = job::Approach::full_section;
                   t.thickness = {job::Thickness::Kind::closest, 0};
                   t.max_thickness_at = {};
                 }});
  const int below = std::clamp(static_cast<int>(std::floor(100 * ratio)), 3, 39);
  out.push_back(ratio_idea(below));
  out.push_back(ratio_idea(below + 1));
  out.push_back({"least fill",
                 {{"approach", "full-section"}, {"thickness", "least-fill"}},
                 [](TargetRequest& t) {
                   t.approach = job::Approach::full_section;
                   t.thickness = {job::Thickness::Kind::least_fill, 0};
                 },
                 Gain::thinnest});
  std::vector<job::Override> built_out{{"approach", "full-section"}, {"thickness", "least-fill"}};
  if (ahead > 0) built_out.push_back({"extend_leading_edge", up_to(ahead)});
  built_out.push_back({"extend_trailing_edge", up_to(aft)});
  out.push_back({ahead > 0 ? "least fill, edges built out" : "least fill, tail built out", std::move(built_out),
                 [ahead, aft](TargetRequest& t) {
                   t.approach = job::Approach::full_section;
                   t.thickness = {job::Thickness::Kind::least_fill, 0};
                   if (ahead > 0) t.extend_leading_edge = {true, ahead};
                   t.extend_trailing_edge = {true, aft};
                 },
                 Gain::thinnest_built_out});
  out.push_back({"closest modified form",
                 {{"approach", "full-section"}, {"thickness", "closest"}, {"max_thickness_at", "closest"}},
                 [](TargetRequest& t) {
                   t.approach = job::Approach::full_section;
                   t.thickness = {job::Thickness::Kind::closest, 0};
                   t.max_thickness_at = {job::MaxThicknessAt::Kind::closest, 0};
                 }});
  return out;
}

DeepestPlace deepest(const Plan& plan, bool add) {
  DeepestPlace out;
  for (const auto& change : plan.changes) {
    const fill::Deepest& one = add ? change.add : change.removal;
    if (one.depth > out.depth) out = {one.depth, one.x, change.station, one.face};
  }
  return out;
}

bool breaks_limit(const Plan& plan) {
  for (std::size_t k = 0; k < plan.changes.size(); ++k) {
    if (target::cuts_beyond(plan.changes[k].removal.depth, plan.job.stations[k].target.max_removal)) return true;
  }
  return false;
}

std::string thickness_words(const Plan& plan) {
  double low = 1;
  double high = 0;
  for (const auto& target : plan.targets) {
    low = std::min(low, target.thickness_ratio);
    high = std::max(high, target.thickness_ratio);
  }
  const std::string least = trimmed(100 * low, 1), most = trimmed(100 * high, 1);
  if (least == most || high - low < 0.0005) return most + " % thick";
  return least + " to " + most + " % thick";
}

std::string gain_of(const Idea& idea, const Plan& plan, const Choice& choice) {
  switch (idea.gain) {
    case Gain::edges_alone:
      return std::string("Leaves the body as it is and rebuilds nose and run aft, so the old section stays what it was") +
             (!job::coats_over(plan.job).tell_over_old() ? "" : " but for the coats, for which as much comes off it");
    case Gain::thinnest:
      return "The thinnest sections that keep your cutting limit at every reading on the faces, the edges apart, " +
             thickness_words(plan);
    case Gain::thinnest_built_out:
      return "The same with the edges built out where that saves filler, " + thickness_words(plan) + ", " +
             trimmed((choice.after.area - choice.before.area) / 100, 0) + " cm² more blade";
    case Gain::published_section: break;
  }
  return "A published section on every station, " + thickness_words(plan);
}

std::string sentence(const Idea& idea, const Plan& plan, const Choice& choice) {
  const auto mm = [&](double v) { return both_units(v, plan.job.units); };
  const std::string gain = gain_of(idea, plan, choice);
  if (choice.breaks_limit) {
    return gain + ", at the price of a cut of " + mm(choice.deepest_removal.depth) + " at station " +
           choice.deepest_removal.station + ", more than you allow.";
  }
  return gain + ", for " + fixed(choice.add, 2) + " litres and nothing off deeper than you allow.";
}

Choice weigh(const job::Job& job, const Sections& sections, const Idea& idea) {
  Choice out;
  out.name = idea.name;
  out.asks = idea.asks;
  job::Job changed = job;
  idea.change(changed.target);
  for (auto& station : changed.stations) idea.change(station.target);
  const auto plan = run_line(std::move(changed), sections);
  if (!plan) {
    const Fault& fault = plan.faults().front();
    out.refused = fault.what + ": " + fault.remedy;
    return out;
  }
  out.add = plan->volumes.add;
  out.remove = plan->volumes.remove;
  out.add_error = plan->volumes.add_error;
  out.deepest_add = deepest(*plan, true);
  out.deepest_removal = deepest(*plan, false);
  out.before = plan->before;
  out.after = plan->after;
  out.breaks_limit = breaks_limit(*plan);
  out.gain_and_price = sentence(idea, *plan, out);
  return out;
}

}  // namespace

std::vector<Choice> weigh_choices(const job::Job& job, const std::vector<job::Override>& overrides) {
  const auto sections = read_sections(job);
  if (!sections) return {};
  const std::vector<Idea> all = ideas(job, sections->fitted);
  std::vector<Choice> out(all.size());
  side_by_side(all.size(), [&](std::size_t k) { out[k] = weigh(job, *sections, all[k]); });
  for (Choice& one : out) {
    for (const job::Override& also : overrides) {
      const auto same = [&](const job::Override& own) { return own.first == also.first; };
      if (std::none_of(one.asks.begin(), one.asks.end(), same)) one.asks.push_back(also);
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const Choice& a, const Choice& b) {
    if (a.refused.has_value() != b.refused.has_value()) return !a.refused;
    return !a.refused && a.add < b.add;
  });
  return out;
}

}  // namespace fairblade::plan
