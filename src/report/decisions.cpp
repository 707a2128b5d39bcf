#include "report/decisions.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

constexpr double thin = 2, usual = 3, thick = 4;  // mm of trailing edge: 2.5 to 4 is usual; common practice, no source

std::string of_stations(const Plan& plan, const std::vector<std::size_t>& which) {
  std::vector<std::string> names;
  for (const std::size_t k : which) names.push_back(plan.measured[k].station);
  return (names.size() == 1 ? "station " : "stations ") + listed(names, 6);
}

/// "0.8 mm", "0.8 to 1.0 mm".
std::string from_to(double low, double high, LengthUnit unit) {
  const std::string a = both_units(low, unit), b = both_units(high, unit);
  return a == b ? a : number_in_unit(low, LengthUnit::mm) + " to " + b;
}

void thin_edge(const Plan& plan, std::vector<Warning>& out) {
  std::vector<std::size_t> stations;
  double now_least = 0, now_most = 0, then_least = 0, then_most = 0;
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    using Kind = job::TrailingEdgeThickness::Kind;
    if (plan.job.stations[k].target.trailing_edge_thickness.kind != Kind::form) continue;
    const double now = plan.measured[k].figures.trailing_edge_thickness, then = plan.targets[k].trailing_edge_thickness;
    const double stray = std::sqrt(2.0) * plan.job.reading_error;  // of an edge read on both sides
    if (then >= thin || now - then <= stray) continue;
    const bool first = stations.empty();
    now_least = first ? now : std::min(now_least, now);
    now_most = first ? now : std::max(now_most, now);
    then_least = first ? then : std::min(then_least, then);
    then_most = first ? then : std::max(then_most, then);
    stations.push_back(k);
  }
  if (stations.empty()) return;
  const LengthUnit unit = plan.job.units;
  const auto ask = [&](double mm) { return "--trailing-edge-thickness " + number_in_unit(mm, unit); };
  std::string text = "the trailing edge is " + from_to(now_least, now_most, unit) + " thick now and becomes " +
                     from_to(then_least, then_most, unit) +
                     ", the section's own, because no thickness was asked for: so thin an edge chips, and paste that thin does "
                     "not hold. Ask for ";
  if (now_least < thick && number_in_unit(now_least, unit) != number_in_unit(usual, unit)) {
    text += (now_least == now_most ? "what it is now (" : "the least that it is now (") + ask(now_least) + ") or for ";
  }
  text += both_units(usual, unit) + " (" + ask(usual) + "; 2.5 to 4 mm square is the usual compromise: common practice)";
  out.push_back({"thin-edge", of_stations(plan, stations), text});
}

void flat_noses(const Plan& plan, const check::Findings& findings, std::vector<Warning>& out) {
  std::vector<std::size_t> stations;
  std::vector<std::string> words;
  std::string remedy;
  for (const check::Finding& one : findings.list) {
    if (one.code != "leading-edge-worn" || one.sure != check::Sureness::certain) continue;
    for (std::size_t k = 0; k < plan.measured.size(); ++k) {
      const job::TargetRequest& request = plan.job.stations[k].target;
      if (plan.measured[k].station != one.station || request.leading_edge == job::LeadingEdgeWork::leave) continue;
      if (request.extend_leading_edge.mm > 0) continue;  // it was decided
      stations.push_back(k);
      words.push_back(one.what);
      remedy = one.remedy;
    }
  }
  if (stations.empty()) return;
  std::string text = words.front() + " (almost certain)";
  if (words.size() > 1) text += ", and much the same at the others";
  out.push_back({"flat-leading-edge", of_stations(plan, stations),
                 text + "; the target begins at the flat, for nothing is planned ahead of it: " + remedy});
}

void cut_by_default(const Plan& plan, std::vector<Warning>& out) {
  const auto& defaults = plan.job.defaults;
  const bool asked =
      std::none_of(defaults.begin(), defaults.end(), [](const DefaultUsed& one) { return one.key == "target.max_removal"; });
  if (asked) return;
  double deepest = 0;
  for (const fill::StationChange& change : plan.changes) deepest = std::max(deepest, change.removal.depth);
  constexpr double nothing = 0.05;  // mm
  if (deepest < nothing) return;
  std::string text = "up to " + both_units(deepest, plan.job.units) +
                     " comes off, which nobody asked for (max_removal is a default): how thick is the skin there?";
  const auto at_edges = [](const job::Station& one) { return one.target.approach == job::Approach::edges_only; };
  if (!std::all_of(plan.job.stations.begin(), plan.job.stations.end(), at_edges)) {  // else no face is cut
    const auto litres_then = plan::litres_uncut(plan);                               // of a scan it takes too long to know
    const std::string now = litres(plan.volumes.add), then = litres_then ? litres(*litres_then) : "";
    if (then != now) {  // else it is the edges that are cut
      text += " For the faces to stay uncut ask for --max-removal 0";
      if (!then.empty()) text += ": " + then + " to add instead of " + now;
    }
  }
  out.push_back({"default-cut", "job", text});
}

}  // namespace

std::vector<Warning> decisions(const Plan& plan, const check::Findings& findings) {
  std::vector<Warning> out;
  flat_noses(plan, findings, out);
  thin_edge(plan, out);
  cut_by_default(plan, out);
  return out;
}

bool by_default_alone(const Warning& warning) { return warning.code == "thin-edge" || warning.code == "default-cut"; }

}  // namespace fairblade::report
