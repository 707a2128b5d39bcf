#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "base/geometry.hpp"
#include "base/numerics.hpp"
#include "base/side_by_side.hpp"
#include "base/text.hpp"
#include "target/draft.hpp"
#include "target/edge_cuts.hpp"
#include "target/edges_only.hpp"
#include "target/face_shapes.hpp"
#include "target/fairness.hpp"
#include "target/hindrances.hpp"
#include "target/remedies.hpp"
#include "target/target.hpp"

namespace fairblade::target {

using form::FittedForm;
using section::MeasuredSection;

double greatest_thickness(const TargetSection& target) {
  const double whole = target.whole_chord();
  if (target.port_shape || target.starboard_shape) return target.thickness_ratio * whole;  // found on its own chord
  return 2 * whole * target.curve.at(std::max(target.curve.max_thickness_at(), target.skeg / whole));
}

void fill_in_figures(TargetSection& target) {
  target.leading_edge_radius = target.skeg > 0 ? 0 : target.chord * target.curve.radius();
  target.trailing_edge_thickness = target.whole_chord() * target.curve.edge();
  target.max_thickness_at = target.curve.max_thickness_at();
  target.thickness_ratio = target.curve.form().thickness_ratio;
  if (target.port_shape || target.starboard_shape) {
    const auto thickness = [&](double x) { return target.half_breadth(Face::port, x) + target.half_breadth(Face::starboard, x); };
    target.trailing_edge_thickness = thickness(target.trailing_edge_x());
    double greatest = 0;
    for (const double f : chord_fractions(400)) {
      const double here = thickness(std::min(target.leading_edge_x + f * target.chord, target.trailing_edge_x()));
      if (here <= greatest) continue;
      greatest = here;
      target.max_thickness_at = (f * target.chord + target.skeg) / target.whole_chord();
    }
    target.thickness_ratio = greatest / target.whole_chord();
  }
  const Polygon polygon = polygon_of(target.outline());
  target.area = area(polygon);
  target.girth = perimeter(polygon);
}

namespace {

Fault impossible(const job::Job& job, const job::Station& station, const MeasuredSection& measured, const Draft& draft) {
  std::string reading;
  if (draft.need && draft.need->governing) {
    const auto& point = measured.points[*draft.need->governing];
    reading = "; the " + std::string(section::name_of(point.face)) + " reading at x " + in_unit(point.x, job.units) + " (" +
              measured.readings_from + ":" + std::to_string(point.line) + ") governs";
  }
  return {place_of(station, {"thickness"}),
          "station " + station.name + ": no section up to 30 % thick keeps every cut within " +
              in_unit(station.target.max_removal, job.units) + reading,
          either(ways_out(job, measured, draft.wish, station.target), "this blade is too far from any foil: take edges-only")};
}

Outcome<TargetSection> finish(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                              const Draft& draft, EdgesAsked edges) {
  TargetSection out = target_of(draft.wish, draft.thickness_ratio);
  out.station = measured.station;
  out.down = measured.down;
  if (measured.ahead) out.ahead = *measured.ahead - out.leading_edge_x;
  if (auto fault = judge_curve(job, station, out.curve, out.whole_chord(), out.warnings)) return *fault;
  if (draft.need && draft.need->governing) {
    const auto& point = measured.points[*draft.need->governing];
    out.governing = Governing{point.face, point.x, point.line, draft.need->without_governing};
  }
  out.pull = draft.pull;
  fill_in_figures(out);
  if (edges != EdgesAsked::nothing) judge_edges(job, measured, station.target, draft.wish, draft.thickness_ratio, edges, out);
  if (station.target.leading_edge == job::LeadingEdgeWork::leave) leave_leading_edge(job, measured, station.target, out);
  if (!station.target.no_cut.empty()) bend_round_patches(job, measured, station.target, out);
  if (out.port_shape || out.starboard_shape) fill_in_figures(out);
  if (station.target.leading_edge == job::LeadingEdgeWork::leave) out.leading_edge_radius = measured.figures.leading_edge_radius;
  return out;
}

/// Of what the tool chooses at the two edges: the least, mm, if that can be built, and whether it may be more than a fair curve
/// asks for, so that the edge is not cut too deep.
struct BuiltOut {
  double fore = 0, aft = 0;
  bool deepens_fore = true, deepens_aft = true;
};

/// Edges-only: the extensions as given; where the tool may choose, the least that gives a fair curve, and from there on the
/// least, if there is one, at which neither edge is cut deeper than it may be.
class Rebuilt {
 public:
  Rebuilt(const job::Job& job, const job::Station& station, const MeasuredSection& measured, const FittedForm& fitted,
          const BuiltOut& least)
      : job_(job),
        station_(station),
        measured_(measured),
        fitted_(fitted),
        asked_(least),
        least_{steps_to(fore_, least.fore), steps_to(aft_, least.aft)} {}

  Outcome<TargetSection> target() {
    auto out = fair();
    if (!out) return out;
    if (asked_.deepens_fore) deepen(out, fore_, &Steps::fore, nose_cut_too_deep);
    if (asked_.deepens_aft) deepen(out, aft_, &Steps::aft, tail_cut_too_deep);
    if (station_.target.no_cut.empty()) return out;
    bend_round_patches(job_, measured_, station_.target, *out);
    const double radius = out->leading_edge_radius;  // of the rebuilt nose, which no patch reaches
    fill_in_figures(*out);
    out->leading_edge_radius = radius;
    return out;
  }

 private:
  static constexpr int steps_ = 15;
  struct Steps {
    int fore = 0, aft = 0;
  };

  Outcome<TargetSection> at(const Steps& steps) const {
    const auto built = [](const job::Extension& one, int step) { return one.up_to ? one.mm * step / steps_ : one.mm; };
    return plan_edges_only(job_, station_, measured_, fitted_,
                           edges_wish(station_, measured_, fitted_, built(fore_, steps.fore), built(aft_, steps.aft)),
                           steps.fore + steps.aft == 0);  // of the others nobody asks what would mend them
  }

  static int steps_to(const job::Extension& extension, double mm) {
    if (!extension.up_to || !(extension.mm > 0)) return 0;
    return std::clamp(static_cast<int>(std::ceil(steps_ * mm / extension.mm - 1e-6)), 0, steps_);
  }

  Outcome<TargetSection> fair() {
    auto out = fair_from(least_);
    return out || least_.fore + least_.aft == 0 ? std::move(out) : fair_from({});
  }

  Outcome<TargetSection> fair_from(const Steps& least) {
    Outcome<TargetSection> first = Fault{};
    for (int sum = least.fore + least.aft; sum <= 2 * steps_; ++sum) {
      for (int i = least.fore; i <= std::min(sum - least.aft, steps_); ++i) {
        const int j = sum - i;
        if ((!fore_.up_to && i > 0) || j > steps_ || (!aft_.up_to && j > 0)) continue;
        auto one = at({i, j});
        if (one) chosen_ = {i, j};
        if (one) return one;
        if (sum == 0) first = std::move(one);
      }
    }
    return first;
  }

  using TooDeep = bool (*)(const MeasuredSection&, const job::TargetRequest&, const TargetSection&);
  void deepen(Outcome<TargetSection>& out, const job::Extension& extension, int Steps::*edge, TooDeep too_deep) {
    if (!extension.up_to || !too_deep(measured_, station_.target, *out)) return;
    for (Steps steps = chosen_; steps.*edge < steps_;) {
      ++(steps.*edge);
      auto one = at(steps);
      if (!one || too_deep(measured_, station_.target, *one)) continue;
      chosen_ = steps;
      out = std::move(one);
      return;
    }
  }

  const job::Job& job_;
  const job::Station& station_;
  const MeasuredSection& measured_;
  const FittedForm& fitted_;
  const job::Extension& fore_ = station_.target.extend_leading_edge;
  const job::Extension& aft_ = station_.target.extend_trailing_edge;
  BuiltOut asked_;
  Steps least_, chosen_;
};

// A patch that no station passes through is not seen by any section.
void unseen_patches(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Warning>& warnings) {
  for (const job::NoCut& patch : job.target.no_cut) {
    const bool seen =
        std::any_of(measured.begin(), measured.end(), [&](const MeasuredSection& one) { return patch.at(one.down); });
    if (seen) continue;
    warnings.push_back({"patch-between-stations", "job",
                        "no station lies in the no-cut patch from " + in_unit(patch.down_from, job.units) + " to " +
                            in_unit(patch.down_to, job.units) + " down: nothing is planned round it; measure a station there"});
  }
}

// Keys that were told and that the approach leaves without effect.
void unused_keys(const job::Job& job, std::vector<Warning>& warnings) {
  std::vector<std::string> unused;
  const auto note = [&](const char* key, bool used) {
    const auto told = [&](const job::Station& s) { return s.target.places.count(key) > 0; };
    if (!used && std::any_of(job.stations.begin(), job.stations.end(), told)) unused.push_back(std::string("\"") + key + "\"");
  };
  const bool any_edges = std::any_of(job.stations.begin(), job.stations.end(), std::mem_fn(&job::Station::edges_only));
  const bool any_full = !std::all_of(job.stations.begin(), job.stations.end(), std::mem_fn(&job::Station::edges_only));
  for (const char* key : {"thickness", "max_thickness_at"}) note(key, any_full);
  note("spanwise", !any_edges);
  note("keep", any_edges);
  const auto left = [](const job::Station& one) {
    return one.target.leading_edge == job::LeadingEdgeWork::leave && one.target.places.count("leading_edge_radius") > 0;
  };
  if (std::any_of(job.stations.begin(), job.stations.end(), left)) {
    warnings.push_back({"no-effect", "job",
                        "\"leading_edge_radius\" has no effect on a leading edge that is left as it is: take it out, or take out "
                        "\"leading_edge\""});
  }
  if (unused.empty()) return;
  warnings.push_back({"no-effect", "job",
                      joined(unused) + (unused.size() > 1 ? " have" : " has") + " no effect on " +
                          (any_edges ? "edges-only" : "full sections") + ": take " + (unused.size() > 1 ? "them" : "it") +
                          " out, or choose another \"approach\""});
}

/// A leading edge that stays as it is cannot be built out as well.
std::optional<Fault> left_and_built_out(const job::Station& station) {
  const job::TargetRequest& asked = station.target;
  if (asked.leading_edge != job::LeadingEdgeWork::leave || !(asked.extend_leading_edge.mm > 0)) return std::nullopt;
  return Fault{place_of(station, {"extend_leading_edge", "leading_edge"}),
               "station " + station.name +
                   ": the leading edge is to be left as it is (\"leading_edge\") and built out "
                   "(\"extend_leading_edge\")",
               "take one of the two out"};
}

Draft draft_alone(const job::Station& station, const MeasuredSection& measured, const FittedForm& fitted) {
  return station.edges_only() || left_and_built_out(station) ? Draft{} : draft_of(station, measured, fitted);
}

Outcome<TargetSection> target_from(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                                   const FittedForm& fitted, const Draft& draft, EdgesAsked edges = EdgesAsked::ways_round,
                                   const BuiltOut& least = {}) {
  if (auto fault = left_and_built_out(station)) return *fault;
  if (draft.need && !draft.need->possible) return impossible(job, station, measured, draft);
  return station.edges_only() ? Rebuilt(job, station, measured, fitted, least).target()
                              : finish(job, station, measured, draft, edges);
}

bool faired(const job::Job& job) {
  return fairs_the_span(job) && std::none_of(job.stations.begin(), job.stations.end(), std::mem_fn(&job::Station::edges_only));
}

// Edges-only stations whose extensions are looked at together?
bool edges_to_choose(const job::Job& job) {
  return job.stations.size() > 1 && std::any_of(job.stations.begin(), job.stations.end(), [](const job::Station& one) {
           return one.edges_only() && chooses_extension(one.target);
         });
}

}  // namespace

bool stations_stand_alone(const job::Job& job) { return !faired(job) && !edges_to_choose(job); }

Outcome<TargetSection> plan_target(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                                   const FittedForm& fitted) {
  return target_from(job, station, measured, fitted, draft_alone(station, measured, fitted));
}

namespace {

std::vector<Draft> drafts_alone(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                const std::vector<FittedForm>& fitted) {
  std::vector<Draft> drafts(measured.size());
  side_by_side(drafts.size(), [&](std::size_t k) { drafts[k] = draft_alone(job.stations[k], measured[k], fitted[k]); });
  return drafts;
}

std::vector<Draft> drafts_of(const job::Job& job, const std::vector<MeasuredSection>& measured,
                             const std::vector<FittedForm>& fitted, std::vector<Warning>& warnings) {
  auto drafts = drafts_alone(job, measured, fitted);
  if (faired(job)) fair_drafts(job, measured, drafts, warnings);
  return drafts;
}

// One edges-only station built out alone, so that its edge is not cut too deep, would stand out of the edge's line: all are, as
// far as the one that needs most; where one cannot be, none is further at that edge than its own curve asks for.
void line_up(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Outcome<TargetSection>>& targets,
             const std::function<void(std::size_t, const BuiltOut&)>& plan) {
  constexpr double same = 1e-6;  // mm
  const auto built = [&](std::size_t k) {
    if (!job.stations[k].edges_only() || !targets[k]) return BuiltOut{};
    return BuiltOut{-targets[k]->leading_edge_x, targets[k]->trailing_edge_x() - measured[k].chord};
  };
  const auto short_of = [&](std::size_t k, const BuiltOut& most) {
    const job::TargetRequest& request = job.stations[k].target;
    const auto is = [](const job::Extension& extension, double now, double wanted) {
      return extension.up_to && now < std::min(wanted, extension.mm) - same;
    };
    const BuiltOut now = built(k);
    return job.stations[k].edges_only() && targets[k] &&
           (is(request.extend_leading_edge, now.fore, most.fore) || is(request.extend_trailing_edge, now.aft, most.aft));
  };
  BuiltOut most;
  for (std::size_t k = 0; k < targets.size(); ++k) {
    const job::TargetRequest& request = job.stations[k].target;
    if (request.extend_leading_edge.up_to) most.fore = std::max(most.fore, built(k).fore);
    if (request.extend_trailing_edge.up_to) most.aft = std::max(most.aft, built(k).aft);
  }
  const auto all_reach = [&](const BuiltOut& wanted) {
    for (std::size_t k = 0; k < targets.size(); ++k) {
      if (short_of(k, wanted)) return false;
    }
    return true;
  };
  const auto plan_all = [&](const BuiltOut& wanted) {
    for (std::size_t k = 0; k < targets.size(); ++k) {
      if (job.stations[k].edges_only()) plan(k, wanted);
    }
  };
  if (all_reach(most)) return;
  for (const BuiltOut& wanted : {most, BuiltOut{most.fore, 0, true, false}, BuiltOut{0, most.aft, false, true}}) {
    plan_all(wanted);
    if (all_reach(wanted)) return;
  }
  plan_all({0, 0, false, false});
}

Outcome<std::vector<TargetSection>> targets_from(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                                 const std::vector<FittedForm>& fitted, const std::vector<Draft>& drafts,
                                                 EdgesAsked edges) {
  std::vector<Outcome<TargetSection>> targets(measured.size(), Fault{});
  const auto plan = [&](std::size_t k, const BuiltOut& least) {
    targets[k] = target_from(job, job.stations[k], measured[k], fitted[k], drafts[k], edges, least);
  };
  side_by_side(targets.size(), [&](std::size_t k) { plan(k, {}); });
  if (edges_to_choose(job)) line_up(job, measured, targets, plan);
  side_by_side(targets.size(), [&](std::size_t k) {
    const bool told = edges != EdgesAsked::nothing && job.stations[k].edges_only() && targets[k];
    if (told) judge_rebuilt_edges(job, job.stations[k], measured[k], fitted[k], edges, *targets[k]);
  });
  return all_or_faults(std::move(targets));
}

}  // namespace

std::vector<Hindrance> hindrances(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                  const std::vector<FittedForm>& fitted) {
  std::vector<Hindrance> out;
  std::vector<Warning> unheard;
  const auto drafts = drafts_of(job, measured, fitted, unheard);
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    const auto& need = drafts[k].need;
    if (!need || need->possible || !need->governing) continue;
    const auto& point = measured[k].points[*need->governing];
    out.push_back({measured[k].station, point.face, point.x, impossible(job, job.stations[k], measured[k], drafts[k])});
  }
  return out;
}

Outcome<std::vector<TargetSection>> plan_targets(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                                 const std::vector<FittedForm>& fitted, std::vector<Warning>& warnings) {
  unseen_patches(job, measured, warnings);
  unused_keys(job, warnings);
  return targets_from(job, measured, fitted, drafts_of(job, measured, fitted, warnings), EdgesAsked::ways_round);
}

Outcome<std::vector<TargetSection>> plan_targets(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                                 const std::vector<FittedForm>& fitted, EdgesAsked edges) {
  std::vector<Warning> unheard;
  return targets_from(job, measured, fitted, drafts_of(job, measured, fitted, unheard), edges);
}

TargetsAgain::TargetsAgain(const job::Job& job, const std::vector<MeasuredSection>& measured,
                           const std::vector<FittedForm>& fitted)
    : job_(job),
      measured_(measured),
      fitted_(fitted),
      drafts_(std::make_shared<const std::vector<Draft>>(drafts_alone(job, measured, fitted))) {}

std::optional<std::vector<TargetSection>> TargetsAgain::with(std::size_t k) const {
  std::vector<Draft> drafts = *drafts_;
  drafts[k] = draft_alone(job_.stations[k], measured_[k], fitted_[k]);
  std::vector<Warning> unheard;
  if (faired(job_)) fair_drafts(job_, measured_, drafts, unheard);
  auto targets = targets_from(job_, measured_, fitted_, drafts, EdgesAsked::nothing);
  if (!targets) return std::nullopt;
  return std::move(*targets);
}

}  // namespace fairblade::target
