// What the owner should decide on, gathered from every room and from the cuts.
#include <algorithm>
#include <cmath>
#include <string_view>

#include "job/build.hpp"
#include "report/edges.hpp"
#include "report/plan.hpp"
#include "report/words.hpp"
#include "target/least_fill.hpp"

namespace fairblade::report {
namespace {

void suspect_readings(const Plan& plan, std::size_t k, std::vector<Warning>& out) {
  const auto& measured = plan.measured[k];
  for (const form::Residual& one : plan.fitted[k].suspects) {
    const std::string line = one.line > 0 ? " (" + measured.readings_from + ":" + std::to_string(one.line) + ")" : "";
    out.push_back({"reading-suspect", "station " + measured.station,
                   "the reading at x " + both_units(one.x, plan.job.units) + ", " + side_words(measured, one.face) + line +
                       ", stands " + both_units(std::abs(one.residual), plan.job.units) +
                       (one.residual < 0 ? " inside" : " outside") +
                       " the section that the others agree on; the fit set it aside, the plan did not: measure it again"});
  }
}

void too_deep_cut(const Plan& plan, std::size_t k, std::vector<Warning>& out) {
  const job::Station& station = plan.job.stations[k];
  const double limit = station.target.max_removal;
  const fill::Deepest& deepest = plan.changes[k].removal;
  if (!target::cuts_beyond(deepest.depth, limit)) return;
  const auto& target = plan.targets[k];
  const double chord = plan.measured[k].chord;
  const bool rebuilt = station.edges_only();
  const double from = (rebuilt ? 0.5 : target::cut_from) * chord, to = (rebuilt ? 0.5 : target::cut_to) * chord;
  if ((deepest.x < from && target.nose_cut) || (deepest.x > to && target.tail_cut)) return;  // told with the ways round it
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  out.push_back({"max-removal", "station " + station.name,
                 length(deepest.depth) + " would come off at x " + length(deepest.x) + ", " +
                     side_words(plan.measured[k], deepest.face) + "; max_removal is " + length(limit) +
                     ": allow it at this station alone (\"max_removal\" in it), or ask for a thicker section (--thickness)" +
                     (deepest.x > target::cut_to * chord ? " or edge" : "")});
}

constexpr double told_cut = 0.05;  // mm: less is printed as nothing

// Readings where something would come off although the owner said that nothing may.
void forbidden_cuts(const Plan& plan, std::size_t k, std::vector<Warning>& out) {
  const job::Station& station = plan.job.stations[k];
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  for (const job::NoCut& patch : station.target.no_cut) {
    if (!patch.at(station.down)) continue;
    std::optional<fill::OffsetRow> worst;
    for (const fill::OffsetRow& row : fill::Offsets(plan.measured[k], plan.changes[k])) {
      if (!patch.at(station.down, row.x) || row.change() > -told_cut) continue;
      if (!worst || row.change() < worst->change()) worst = row;
    }
    if (!worst) continue;
    out.push_back(
        {"no-cut", "station " + station.name,
         length(-worst->change()) + " would come off at x " + length(worst->x) + ", " +
             side_words(plan.measured[k], worst->face) + ", inside a no_cut patch: " +
             (worst->x < target::cut_from * plan.measured[k].chord ? "build the leading edge forward (--extend-leading-edge)"
                                                                   : "ask for a thicker section")});
  }
}

// The target bends round a patch for its coats as well, but an edge within one has room for them only where it is built out.
void edges_under_coats(const Plan& plan, std::size_t k, std::vector<Warning>& out) {
  const double coats = job::coats_over(plan.job).over_old;
  if (coats < told_cut) return;
  const job::Station& station = plan.job.stations[k];
  const target::TargetSection& target = plan.targets[k];
  const double chord = plan.measured[k].chord;
  const auto tell = [&](const char* edge, double x, double built_out) {
    const double missing = coats - built_out;
    if (missing < told_cut || !station.target.spares(station.down, x)) return;
    const std::string length = both_units(missing, plan.job.units);
    out.push_back({"no-cut", "station " + station.name,
                   std::string("before the coats ") + length + " would come off the " + edge +
                       " edge, inside a no_cut patch, for them to have room: build it out by " +
                       both_units(coats, plan.job.units) + " (--extend-" + edge + "-edge), or keep the coats off it"});
  };
  if (!(target.skeg > 0) && station.target.leading_edge != job::LeadingEdgeWork::leave) {
    tell("leading", 0, -target.leading_edge_x);
  }
  tell("trailing", chord, target.trailing_edge_x() - chord);
}

}  // namespace

std::vector<Warning> told_once(const std::vector<Warning>& warnings) {
  constexpr std::string_view station = "station ";
  std::vector<Warning> out;
  std::vector<std::vector<std::string>> stations;  // of each
  for (const Warning& one : warnings) {
    const bool at_station = one.where.compare(0, station.size(), station) == 0;
    const auto same = std::find_if(out.begin(), out.end(), [&](const Warning& other) {
      return at_station && other.code == one.code && other.text == one.text &&
             !stations[static_cast<std::size_t>(&other - out.data())].empty();
    });
    if (same == out.end()) {
      out.push_back(one);
      stations.push_back(at_station ? std::vector<std::string>{one.where.substr(station.size())} : std::vector<std::string>{});
      continue;
    }
    auto& names = stations[static_cast<std::size_t>(same - out.begin())];
    names.push_back(one.where.substr(station.size()));
    same->where = "stations " + listed(names, 6);
  }
  return out;
}

namespace {

std::vector<Warning> gathered(const Plan& plan, bool edges_together) {
  std::vector<Warning> out = plan.job.warnings;
  const auto add = [&](const std::vector<Warning>& more) { out.insert(out.end(), more.begin(), more.end()); };
  add(plan.blade_warnings);
  if (edges_together) add(edges_of_blade(plan));
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    add(plan.measured[k].warnings);
    suspect_readings(plan, k, out);
    add(plan.targets[k].warnings);
    if (!edges_together) add(edges_of_station(plan, k));
    too_deep_cut(plan, k, out);
    forbidden_cuts(plan, k, out);
    edges_under_coats(plan, k, out);
  }
  return out;
}

}  // namespace

std::vector<Warning> gather_warnings(const Plan& plan) { return gathered(plan, false); }

std::vector<Warning> warnings_for_people(const Plan& plan) { return told_once(gathered(plan, true)); }

}  // namespace fairblade::report
