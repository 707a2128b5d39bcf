#include "report/decisions.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "base/text.hpp"
#include "flow/meaning.hpp"
#include "report/words.hpp"
#include "target/least_fill.hpp"
#include "target/remedies.hpp"

namespace fairblade::report {
namespace {

constexpr double thin = 2, usual = 3, thick = 4;  // mm of trailing edge: 2.5 to 4 is usual; common practice, no source

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

/// "; --extend-leading-edge "up_to 4.1" makes it 0.74 L to add instead of 1.80 L": as far as no nose is cut then, if that can be.
/// The option counts at every station; where an edge is left at one of them it is refused.
std::string to_build_out(const Plan& plan) {
  constexpr double share = 0.02, more = 1.5;  // of the chord: what is looked at where no nose is cut; and from try to try
  constexpr int tries = 3;
  const auto up_to = [&](double mm) {
    return plan::asked_otherwise(plan, [&](job::TargetRequest& target) { target.extend_leading_edge = {true, mm}; });
  };
  double most = 0;
  for (std::size_t k = 0; k < plan.targets.size(); ++k) {
    const auto& cut = plan.targets[k].nose_cut;
    most = std::max(most, cut && cut->build_out ? *cut->build_out : share * plan.measured[k].chord);
  }
  std::optional<plan::Otherwise> best;
  double best_mm = 0;
  const auto look = [&](double mm) {
    const auto here = up_to(mm);
    if (!here || here->forward < 0.05) return false;
    if (!best || !here->nose_cut) {
      best = here;
      best_mm = mm;
    }
    return !here->nose_cut;
  };
  for (int k = 0; k < tries && !look(target::rounded_up(most, plan.job.units)); ++k) most *= more;
  if (!best) return {};
  const double enough = target::rounded_up(best->forward, plan.job.units);
  if (const auto then = enough < best_mm ? up_to(enough) : std::nullopt; then && then->nose_cut == best->nose_cut) {
    best = then;
    best_mm = enough;
  }
  return "; --extend-leading-edge \"up_to " + number_in_unit(best_mm, plan.job.units) + "\" makes it " + litres(best->add) +
         " to add instead of " + litres(plan.volumes.add);
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
                 text + "; the target begins at the flat, for nothing is planned ahead of it: " + remedy + to_build_out(plan)});
}

/// " For the faces to stay uncut ask for --max-removal 0: 1.20 L to add instead of 0.77 L"; nothing where the edges alone are
/// cut.
std::string to_cut_less(const Plan& plan, double max_removal, const std::string& wish) {
  if (std::all_of(plan.job.stations.begin(), plan.job.stations.end(), std::mem_fn(&job::Station::edges_only)))
    return {};  // no face is cut
  const auto otherwise = plan::asked_otherwise(plan, [&](job::TargetRequest& target) { target.max_removal = max_removal; });
  const std::string now = litres(plan.volumes.add), then = otherwise ? litres(otherwise->add) : "";
  if (then == now) return {};  // it is the edges that are cut
  const std::string option = max_removal > 0 ? number_in_unit(max_removal, plan.job.units) : "0";
  return " For " + wish + " ask for --max-removal " + option + (then.empty() ? "" : ": " + then + " to add instead of " + now);
}

/// The coats on the old surface need room as well, which no change to the finished shape shows. A limit that was asked for and is
/// less than they are thick was chosen with them in mind: no plan could keep it before them.
bool cut_before_coats(const Plan& plan, bool asked, std::vector<Warning>& out) {
  const auto& before = plan.work.before_coats;
  if (!before) return false;
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  const job::TargetRequest& request = plan.job.stations[before->station].target;
  const double limit = request.max_removal;
  const bool asked_here = asked || request.places.count("max_removal") > 0;
  // (What an edge is cut deeper than the limit is told there.)
  const double kept = std::max(limit, plan.changes[before->station].removal.depth);
  const double room = asked_here && limit < before->over_old ? kept + before->over_old : limit;
  if (!target::cuts_beyond(before->deepest, room)) return false;
  const double most = std::max(limit, before->over_old), then = last_figure_down(most - before->over_old, plan.job.units);
  const std::string less = to_cut_less(plan, then, "no more than " + length(most) + " on the faces");
  const std::string told = " counts from the finished surface";
  const std::string deep = ": before them up to " + length(before->deepest) + " comes off at station " +
                           plan.measured[before->station].station + ", " + litres(before->remove + before->beyond) + " in all";
  const std::string coats = length(before->over_old) + " a side, on the old surface too";
  if (asked_here) {
    out.push_back({"cut-before-coats", "job",
                   "max_removal (" + length(limit) + ")" + told + ", and the coats on it are " + coats + deep +
                       (less.empty() ? "" : "." + less)});
    return true;
  }
  out.push_back({"default-cut", "job",
                 "the coats are " + coats + ", and max_removal (" + length(limit) + ", a default)" + told + deep +
                     ": how thick is the skin there?" + less});
  return true;
}

void cuts(const Plan& plan, std::vector<Warning>& out) {
  const auto& defaults = plan.job.defaults;
  const bool asked =
      std::none_of(defaults.begin(), defaults.end(), [](const DefaultUsed& one) { return one.key == "target.max_removal"; });
  if (cut_before_coats(plan, asked, out) || asked) return;
  double deepest = 0;
  for (const fill::StationChange& change : plan.changes) deepest = std::max(deepest, change.removal.depth);
  constexpr double nothing = 0.05;  // mm
  if (deepest < nothing) return;
  out.push_back({"default-cut", "job",
                 "up to " + both_units(deepest, plan.job.units) +
                     " comes off, which nobody asked for (max_removal is a default): how thick is the skin there?" +
                     to_cut_less(plan, 0, "the faces to stay uncut")});
}

/// A blade that gets far thicker or thinner than it is, which no limit speaks of.
void another_thickness(const Plan& plan, std::vector<Warning>& out) {
  constexpr double thicker = 1.25, thinner = 0.9, told = 2;  // told: mm
  std::vector<std::size_t> more, less;
  const auto now = [&](std::size_t k) { return plan.measured[k].figures.max_thickness; };
  const auto then = [&](std::size_t k) { return target::greatest_thickness(plan.targets[k]); };
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    if (plan.measured[k].interpolated || std::abs(then(k) - now(k)) < told) continue;
    if (then(k) > thicker * now(k)) more.push_back(k);
    if (then(k) < thinner * now(k)) less.push_back(k);
  }
  const auto change = [&](const std::vector<std::size_t>& which) {
    const auto by_share = [&](std::size_t a, std::size_t b) { return then(a) / now(a) < then(b) / now(b); };
    const auto [least, most] = std::minmax_element(which.begin(), which.end(), by_share);
    const std::size_t k = then(*most) > now(*most) ? *most : *least;
    return both_units(now(k), plan.job.units) + " thick at station " + plan.measured[k].station + " becomes " +
           both_units(then(k), plan.job.units);
  };
  if (!more.empty()) {
    out.push_back({"thicker", of_stations(plan, more),
                   "what is " + change(more) +
                       ": does it still pass its case, its cheeks or gudgeons, the skeg? If not, ask for a thickness that does "
                       "(--thickness), or for edges-only; `choices` lists what each asks for"});
  }
  if (!less.empty()) {
    const bool found = std::any_of(less.begin(), less.end(), [&](std::size_t k) {
      return plan.job.stations[k].target.thickness.kind == job::Thickness::Kind::least_fill;
    });
    out.push_back(
        {"thinner", of_stations(plan, less),
         "what is " + change(less) +
             (plan.measured.size() > 1 ? ", " + litres(plan.volumes.remove) + " off against " + litres(plan.volumes.add) + " on"
                                       : "") +
             ": what stands under the skin there, and is it strong enough then? To keep more of the blade ask for " +
             (found ? "less to come off (--max-removal) or for --thickness closest" : "more thickness (--thickness)")});
  }
}

void overbalanced(const Plan& plan, std::vector<Warning>& out) {
  constexpr double told = 0.5;  // per cent of the area
  const auto &before = plan.before.balance_percent, &after = plan.after.balance_percent;
  if (!before || !after || *after <= flow::twitchy_balance || *after - *before < told) return;
  out.push_back({"balance", "job",
                 "the area ahead of the stock goes from " + fixed(*before, 1) + " to " + fixed(*after, 1) +
                     " %, and above some 20 % helms turn twitchy and may take charge (common practice): build out less ahead, "
                     "or ask a designer"});
}

/// A fixed skeg stands where the new nose would, and how wide the gap to it is was not measured.
void towards_skeg(const Plan& plan, std::vector<Warning>& out) {
  constexpr double told = 0.05;  // mm
  double forward = told;
  std::vector<std::size_t> stations;
  for (std::size_t k = 0; k < plan.targets.size(); ++k) {
    const target::TargetSection& one = plan.targets[k];
    if (!(one.skeg > 0) || -one.leading_edge_x < told) continue;
    forward = std::max(forward, -one.leading_edge_x);
    stations.push_back(k);
  }
  if (stations.empty()) return;
  out.push_back({"towards-skeg", of_stations(plan, stations),
                 "behind a fixed skeg the leading edge is built " + both_units(forward, plan.job.units) +
                     " forward, into the gap: measure that gap all the way down, swung from lock to lock. After paint 5 to 10 mm "
                     "are to be left of it (common practice); where they are not, build nothing out ahead"});
}

/// No room is made for coats over an edge that is to stay as it is; over a body whose shape is kept it is, and costs the old
/// surface.
void left_under_coats(const Plan& plan, std::vector<Warning>& out) {
  const auto& before = plan.work.before_coats;
  if (!before || !before->tell_over_old()) return;
  std::vector<std::size_t> left, kept;
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    if (plan.targets[k].left_to > 0) left.push_back(k);
    if (plan.job.stations[k].edges_only()) kept.push_back(k);
  }
  const std::string build = both_units(before->over_old, plan.job.units);
  if (!left.empty()) {
    out.push_back({"left-under-coats", of_stations(plan, left),
                   "the leading edge is left as it is, and no room is made there for " + build +
                       " of coats: let them run out where it begins, or see that it may stand " + build +
                       " further out and forward, as it does when it is coated like the rest"});
  }
  if (kept.empty()) return;
  out.push_back({"kept-under-coats", of_stations(plan, kept),
                 "the body keeps its shape, and room for " + build +
                     " of coats a side is made by taking as much off it: " + litres(before->remove + before->beyond) +
                     " in all, as the templates marked \"bare\" have it. To leave it uncut, plan without \"coats\" and ask for a "
                     "trailing edge " +
                     both_units(2 * before->over_old, plan.job.units) + " thinner: coated, the blade stands " + build +
                     " further out all over"});
}

}  // namespace

std::vector<Warning> decisions(const Plan& plan, const check::Findings& findings) {
  std::vector<Warning> out;
  flat_noses(plan, findings, out);
  thin_edge(plan, out);
  cuts(plan, out);
  another_thickness(plan, out);
  overbalanced(plan, out);
  towards_skeg(plan, out);
  left_under_coats(plan, out);
  return out;
}

bool by_default_alone(const Warning& warning) { return warning.code == "thin-edge" || warning.code == "default-cut"; }

}  // namespace fairblade::report
