#include "fill/trailing_edge.hpp"

#include <algorithm>
#include <cmath>

#include "fill/coats.hpp"
#include "fill/fill.hpp"

namespace fairblade::fill {
namespace {

using target::Face;

constexpr double closest_heights = 50;  // mm, on a card to read
constexpr double nothing = 0.05;        // mm

/// The edge face before coats of that build; each face narrows it on its own.
double width_before(double edge, double build, const std::array<double, 2>& taper) {
  const double port = narrowed_edge(edge, build, std::atan(taper[0]));
  const double starboard = narrowed_edge(edge, build, std::atan(taper[1]));
  return std::max(0.0, (port + starboard) / 2);
}

EdgeHeight edge_at(const Height& height, const std::vector<Stage>& stages, bool from_stock) {
  const target::TargetSection& target = height.target;
  EdgeHeight out;
  out.name = height.name;
  out.down = height.down;
  out.station = height.station;
  out.finished = from_stock ? target.chord - *target.ahead : target.trailing_edge_x();
  out.saw = out.finished - stages.front().to_come;
  out.taper = {-target.slope(Face::port, target.trailing_edge_x()), -target.slope(Face::starboard, target.trailing_edge_x())};
  for (const Stage& stage : stages) {
    out.widths.push_back(width_before(target.trailing_edge_thickness, stage.to_come, out.taper));
  }
  const double closing = out.taper[0] + out.taper[1];
  if (closing > 1e-6) out.furthest = out.widths.front() / closing;
  return out;
}

/// The target's edge lies within the old one at every station: aft of it there is nothing, and paste has nothing to do there.
bool within_the_old(const std::vector<target::TargetSection>& targets, const std::vector<section::MeasuredSection>& measured) {
  if (measured.empty() || measured.size() != targets.size()) return false;
  for (std::size_t k = 0; k < targets.size(); ++k) {
    if (targets[k].trailing_edge_x() > measured[k].chord + nothing) return false;
    if (targets[k].trailing_edge_thickness > measured[k].figures.trailing_edge_thickness + nothing) return false;
  }
  return true;
}

/// The target ends where the blade does, and no coats are to wrap its edge.
bool where_it_was(const std::vector<target::TargetSection>& targets, const std::vector<section::MeasuredSection>& measured,
                  const std::vector<Stage>& stages) {
  if (stages.front().to_come > nothing) return false;
  for (std::size_t k = 0; k < targets.size(); ++k) {
    if (targets[k].trailing_edge_x() < measured[k].chord - nothing) return false;
  }
  return true;
}

void choose_build_past(EdgeCard& card) {
  if (card.nothing_to_build) return;
  card.build_past = usual_build_past;
  for (std::size_t k = 0; k < card.heights.size(); ++k) {
    const auto& furthest = card.heights[k].furthest;
    if (!furthest || *furthest * most_build_past >= card.build_past) continue;
    card.build_past = *furthest * most_build_past;
    card.governs = k;
  }
  card.held_back = card.governs.has_value();
  // To the half millimetre that a rule shows, but not to nothing.
  if (card.held_back && card.build_past >= 0.5) card.build_past = std::floor(card.build_past * 2 + 1e-9) / 2;
}

/// A straight edge from the top height to the bottom one.
void lay_batten(EdgeCard& card) {
  if (!card.from_stock || card.heights.size() < 2) return;
  const EdgeHeight &top = card.heights.front(), &bottom = card.heights.back();
  for (std::size_t k = 0; k < card.heights.size(); ++k) {
    EdgeHeight& here = card.heights[k];
    const double w = (here.down - top.down) / (bottom.down - top.down);
    const double line = top.saw + w * (bottom.saw - top.saw);
    here.batten = line + card.build_past;
    here.miss = line - here.saw;
    if (here.miss > nothing && (!card.furthest_out || here.miss > card.heights[*card.furthest_out].miss)) {
      card.furthest_out = k;
    }
    if (here.miss < -nothing && (!card.furthest_in || here.miss < card.heights[*card.furthest_in].miss)) {
      card.furthest_in = k;
    }
  }
}

}  // namespace

EdgeCard edge_card_of(const job::Job& job, const std::vector<target::TargetSection>& targets, double spacing,
                      const std::vector<section::MeasuredSection>& measured) {
  EdgeCard out;
  out.nothing_to_build = within_the_old(targets, measured);
  out.stages = stages_of(job);
  out.nothing_to_saw = out.nothing_to_build && where_it_was(targets, measured, out.stages);
  const auto heights = heights_down(job, targets, std::max(spacing, closest_heights));
  out.from_stock = std::all_of(heights.begin(), heights.end(), [](const Height& h) { return h.target.ahead.has_value(); });
  for (const Height& height : heights) out.heights.push_back(edge_at(height, out.stages, out.from_stock));
  choose_build_past(out);
  lay_batten(out);
  if (!heights.empty()) out.shown = stage_section(heights.front().target, out.stages.front());
  return out;
}

double litres_sawn_off(const EdgeCard& card) {
  const auto area = [&](const EdgeHeight& one) {
    return card.build_past * std::max(0.0, one.widths.front() - (one.taper[0] + one.taper[1]) * card.build_past / 2);
  };
  double mm3 = 0;
  for (std::size_t k = 1; k < card.heights.size(); ++k) {
    const EdgeHeight &a = card.heights[k - 1], &b = card.heights[k];
    mm3 += (area(a) + area(b)) / 2 * (b.down - a.down);
  }
  return mm3 / mm3_per_litre;
}

}  // namespace fairblade::fill
