#include "target/draft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "base/numerics.hpp"
#include "base/side_by_side.hpp"
#include "target/edge_cuts.hpp"
#include "target/span_line.hpp"

namespace fairblade::target {

using form::FittedForm;
using form::Form;
using job::TargetRequest;
using section::MeasuredSection;

namespace {

Form family_of(const TargetRequest& request, const FittedForm& fitted) {
  switch (request.max_thickness_at.kind) {
    case job::MaxThicknessAt::Kind::form: return Form{fitted.form.thickness_ratio, 6, 0};
    case job::MaxThicknessAt::Kind::closest: return fitted.modified;
    case job::MaxThicknessAt::Kind::fraction: break;
  }
  return Form{fitted.form.thickness_ratio, 6, request.max_thickness_at.value};
}

bool found_by_tool(const job::Station& station) {
  return station.target.thickness.kind == job::Thickness::Kind::closest ||
         station.target.thickness.kind == job::Thickness::Kind::least_fill;
}

bool least(const job::Station& station) { return station.target.thickness.kind == job::Thickness::Kind::least_fill; }

// After another outline.
void settle_thickness(const TargetRequest& request, const MeasuredSection& measured, Draft& draft) {
  if (draft.need) {
    draft.need = needed_thickness(measured, draft.wish, request);
    draft.thickness_ratio = draft.need->no_more_filler;
  }
  if (request.thickness.kind == job::Thickness::Kind::mm) draft.thickness_ratio = request.thickness.value / draft.wish.chord;
}

double built_ahead(const MeasuredSection& measured, const Wish& wish) { return -wish.leading_edge_x - measured.skeg; }
double built_aft(const MeasuredSection& measured, const Wish& wish) { return wish.leading_edge_x + wish.chord - measured.chord; }

constexpr double same = 1e-6;  // mm

// Forward and back by so much, mm, where the tool may choose, and as far as it may be. False where that is nothing.
bool built_out_further(const TargetRequest& request, const MeasuredSection& measured, Wish& wish, double forward, double back) {
  const auto more = [](const job::Extension& extension, double now, double wanted) {
    return extension.up_to ? std::clamp(extension.mm - now, 0.0, std::max(0.0, wanted)) : 0.0;
  };
  const double ahead = more(request.extend_leading_edge, built_ahead(measured, wish), forward);
  const double aft = more(request.extend_trailing_edge, built_aft(measured, wish), back);
  if (ahead + aft < same) return false;
  wish.leading_edge_x -= ahead;
  wish.chord += ahead + aft;
  return true;
}

// What was chosen for one station alone would stand out of the edge's line: where the tool may choose, every station is built out
// as far as the one that needs most, or as it may be. True where that changed anything.
bool even_out(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts) {
  double ahead = 0, aft = 0;
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    const TargetRequest& request = job.stations[k].target;
    if (request.extend_leading_edge.up_to) ahead = std::max(ahead, built_ahead(measured[k], drafts[k].wish));
    if (request.extend_trailing_edge.up_to) aft = std::max(aft, built_aft(measured[k], drafts[k].wish));
  }
  bool changed = false;
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    const TargetRequest& request = job.stations[k].target;
    Wish& wish = drafts[k].wish;
    if (!built_out_further(request, measured[k], wish, ahead - built_ahead(measured[k], wish),
                           aft - built_aft(measured[k], wish)))
      continue;
    settle_thickness(request, measured[k], drafts[k]);
    changed = true;
  }
  return changed;
}

}  // namespace

Draft draft_of(const job::Station& station, const MeasuredSection& measured, const FittedForm& fitted) {
  const TargetRequest& request = station.target;
  Draft out;
  if (least(station)) {
    const LeastFill found = least_fill(measured, fitted, request);
    out = {found.wish, found.need.no_more_filler, found.need, {}};
    if (!found.need.possible) return out;
  } else {
    const auto fixed = [](const job::Extension& e) { return e.up_to ? 0.0 : e.mm; };
    const Form family = family_of(request, fitted);
    out.wish = wish_of(measured, family, request, fixed(request.extend_leading_edge), fixed(request.extend_trailing_edge));
    switch (request.thickness.kind) {
      case job::Thickness::Kind::ratio: out.thickness_ratio = request.thickness.value; break;
      case job::Thickness::Kind::mm: out.thickness_ratio = request.thickness.value / out.wish.chord; break;
      default: out.thickness_ratio = family.thickness_ratio;
    }
  }
  if (!chooses_extension(request)) return out;
  for (int round = 0; round < 2; ++round) {  // what one edge gains may thin a least fill, and cut the other
    const double chord = out.wish.chord;
    out.wish = with_room_at_edges(measured, request, out.wish, out.thickness_ratio);
    if (out.wish.chord == chord) break;
    settle_thickness(request, measured, out);
  }
  return out;
}

namespace {

SpanQuantity quantity(const std::vector<MeasuredSection>& measured) {
  SpanQuantity out;
  for (const auto& one : measured) {
    out.down.push_back(one.down);
    out.weight.push_back(one.interpolated ? 0.0 : 1.0);
  }
  return out;
}

double greatest_pull(const SpanLine& line) {
  double out = 0;
  for (const double pull : line.pull) out = std::max(out, std::abs(pull));
  return out;
}

/// Leading and trailing edge as distances ahead and aft of the stock, and the lines nearest to them. Nothing where a station's
/// stock is not known, or a skeg stands ahead.
struct EdgeLines {
  SpanLine fore, aft;
  double worst() const { return std::max(greatest_pull(fore), greatest_pull(aft)); }
};
std::optional<EdgeLines> edge_lines(const job::Job& job, const std::vector<MeasuredSection>& measured,
                                    const std::vector<Draft>& drafts) {
  SpanQuantity leading = quantity(measured);
  SpanQuantity trailing = quantity(measured);
  for (std::size_t k = 0; k < measured.size(); ++k) {
    if (!measured[k].ahead || measured[k].skeg > 0) return std::nullopt;
    const Wish& wish = drafts[k].wish;
    leading.value.push_back(*measured[k].ahead - wish.leading_edge_x);
    trailing.value.push_back(wish.leading_edge_x + wish.chord - *measured[k].ahead);
  }
  return EdgeLines{fair_along(leading, job.target.spanwise), fair_along(trailing, job.target.spanwise)};
}

// Do the extensions that were chosen differ by more than the outline is faired by?
bool chosen_apart(const job::Job& job, const std::vector<MeasuredSection>& measured, const std::vector<Draft>& drafts) {
  const auto apart = [&](const job::Extension TargetRequest::*extension, const auto& built) {
    double least = std::numeric_limits<double>::infinity(), most = 0;
    for (std::size_t k = 0; k < drafts.size(); ++k) {
      if (!(job.stations[k].target.*extension).up_to) continue;
      least = std::min(least, built(measured[k], drafts[k].wish));
      most = std::max(most, built(measured[k], drafts[k].wish));
    }
    return most - least > outline_reach * job.reading_error;
  };
  return apart(&TargetRequest::extend_leading_edge, built_ahead) || apart(&TargetRequest::extend_trailing_edge, built_aft);
}

void fair_outline(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts,
                  std::vector<Warning>& warnings) {
  auto lines = edge_lines(job, measured, drafts);
  const bool uneven = lines ? lines->worst() > outline_reach * job.reading_error : chosen_apart(job, measured, drafts);
  const bool evened = uneven && even_out(job, measured, drafts);
  if (evened) lines = edge_lines(job, measured, drafts);
  if (!lines) return;
  const auto& [fore, aft] = *lines;
  if (lines->worst() > outline_reach * job.reading_error) {
    warnings.push_back({"outline-kept", "job",
                        std::string("the edges in side view are no ") +
                            (job.target.spanwise == job::Spanwise::straight ? "straight lines" : "even curves") +
                            ": they would move by up to " + both_units(lines->worst(), job.units) +
                            ", so they are kept as measured" + (evened ? ", built out alike" : "")});
    return;
  }
  for (std::size_t k = 0; k < measured.size(); ++k) {
    // A move within one reading's error is not worth a line on the template that the blade does not meet.
    const auto worth_it = [&](double pull) { return std::abs(pull) > job.reading_error ? pull : 0.0; };
    Draft& draft = drafts[k];
    const bool stays = job.stations[k].target.leading_edge == job::LeadingEdgeWork::leave;
    draft.pull.leading_edge = stays ? 0 : worth_it(fore.pull[k]);
    draft.pull.trailing_edge = worth_it(aft.pull[k]);
    draft.wish.leading_edge_x -= draft.pull.leading_edge;
    draft.wish.chord += draft.pull.leading_edge + draft.pull.trailing_edge;
  }
}

// One family for the whole blade where the tool found it: the middle one, for index and place.
void fair_family(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts) {
  std::vector<double> index;
  std::vector<double> place;
  const auto closest = [&](std::size_t k) {
    return job.stations[k].target.max_thickness_at.kind == job::MaxThicknessAt::Kind::closest;
  };
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    if (!closest(k) || measured[k].interpolated) continue;
    index.push_back(drafts[k].wish.family.leading_edge_index);
    place.push_back(drafts[k].wish.family.max_thickness_at);
  }
  if (index.empty()) return;
  const double middle_index = median(index);
  const double middle_place = median(place);
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    if (!closest(k)) continue;
    drafts[k].wish.family.leading_edge_index = middle_index;
    drafts[k].wish.family.max_thickness_at = middle_place;
  }
}

// Thickness for outline and family as they now are: the least, and what was asked in mm.
void renew_thickness(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts) {
  side_by_side(drafts.size(), [&](std::size_t k) {
    const TargetRequest& asked = job.stations[k].target;
    if (least(job.stations[k])) {
      drafts[k].need = needed_thickness(measured[k], drafts[k].wish, asked);
      drafts[k].thickness_ratio = drafts[k].need->no_more_filler;
    } else if (asked.thickness.kind == job::Thickness::Kind::mm) {
      drafts[k].thickness_ratio = asked.thickness.value / drafts[k].wish.chord;
    }
  });
}

void fair_thickness(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts) {
  if (!std::all_of(job.stations.begin(), job.stations.end(), found_by_tool)) return;
  SpanQuantity ratio = quantity(measured);
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    const Draft& draft = drafts[k];
    ratio.value.push_back(draft.thickness_ratio);
    const bool bound = draft.need && !measured[k].interpolated;
    ratio.bound.push_back(bound ? draft.need->thickness_ratio : -std::numeric_limits<double>::infinity());
  }
  const SpanLine line = fair_along(ratio, job.target.spanwise);
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    drafts[k].thickness_ratio = line.faired[k];
    drafts[k].pull.thickness = line.pull[k] * drafts[k].wish.chord;
  }
}

// The line may have drawn an edge in or a section thinner, and so cut an edge deeper again: what may be built out is, at all
// stations alike.
void make_room_again(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts) {
  const auto open = [](const job::Station& one) { return chooses_extension(one.target); };
  if (std::none_of(job.stations.begin(), job.stations.end(), open)) return;
  constexpr int rounds = 3;
  for (int round = 0; round < rounds; ++round) {
    std::vector<double> fore(drafts.size(), 0), aft(drafts.size(), 0);
    side_by_side(drafts.size(), [&](std::size_t k) {
      const Wish& now = drafts[k].wish;
      const Wish then = with_room_at_edges(measured[k], job.stations[k].target, now, drafts[k].thickness_ratio);
      fore[k] = now.leading_edge_x - then.leading_edge_x;
      aft[k] = then.chord - now.chord - fore[k];
    });
    const double forward = *std::max_element(fore.begin(), fore.end()), back = *std::max_element(aft.begin(), aft.end());
    if (forward + back < same) return;
    for (std::size_t k = 0; k < drafts.size(); ++k)
      built_out_further(job.stations[k].target, measured[k], drafts[k].wish, forward, back);
    renew_thickness(job, measured, drafts);
    fair_thickness(job, measured, drafts);
  }
}

}  // namespace

void fair_drafts(const job::Job& job, const std::vector<MeasuredSection>& measured, std::vector<Draft>& drafts,
                 std::vector<Warning>& warnings) {
  if (!fairs_the_span(job)) return;
  fair_outline(job, measured, drafts, warnings);
  fair_family(job, measured, drafts);
  renew_thickness(job, measured, drafts);
  fair_thickness(job, measured, drafts);
  make_room_again(job, measured, drafts);
}

}  // namespace fairblade::target
