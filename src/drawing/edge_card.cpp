#include "drawing/edge_card.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "base/units.hpp"
#include "drawing/flow.hpp"
#include "drawing/lettering.hpp"

namespace fairblade::drawing {
namespace {

using fill::EdgeCard;
using fill::EdgeHeight;

class Words {
 public:
  Words(const job::Job& job, const EdgeCard& card, Flow& flow) : job_(job), card_(card), flow_(flow) {}
  void build_past();
  void limits();
  void batten();
  void coats();

 private:
  std::string length(double mm) const { return length_words(mm, job_); }
  std::string where(std::size_t k) const { return where_words(card_.heights[k].name, card_.heights[k].station.has_value()); }
  const job::Job& job_;
  const EdgeCard& card_;
  Flow& flow_;
};

void Words::build_past() {
  if (card_.nothing_to_saw) {
    flow_.paragraph(
        "Nothing to build, and nothing to saw: the edge stays where it is all the way down, and is nowhere made thicker.", 3);
    return;
  }
  if (card_.nothing_to_build) {
    flow_.paragraph("Saw on the line; nothing to build: at no station does the edge come further aft or thicker than it is now.",
                    3);
    return;
  }
  if (card_.build_past <= 0) {
    flow_.paragraph("The faces meet at the edge " + where(*card_.governs) +
                        ": there is nothing to build past, and nothing to saw. Ask for a trailing_edge_thickness.",
                    3);
    return;
  }
  std::string words = "Build " + length(card_.build_past) + " past the saw line all the way down, fair the taper, then saw. ";
  if (card_.held_back) {
    words += "Usual is " + length(fill::usual_build_past) + "; less here, because " + where(*card_.governs) + " the faces meet " +
             length(*card_.heights[*card_.governs].furthest) +
             " past it, and a third of the edge's thickness should be left to hold the paste.";
  } else {
    words += "So much, that the paste's ragged end and the tape's mark come off with the saw (common practice, no source).";
  }
  flow_.paragraph(words, 3);
}

void Words::limits() {
  std::optional<std::size_t> nearest;
  std::string open;
  for (std::size_t k = 0; k < card_.heights.size(); ++k) {
    const auto& furthest = card_.heights[k].furthest;
    if (!furthest) open += (open.empty() ? "" : ", ") + where(k);
    else if (!nearest || *furthest < *card_.heights[*nearest].furthest) nearest = k;
  }
  flow_.paragraph("Taper: " + unit_words(job_) + " per 100 " + unit_words(job_) +
                  " of chord, by which each face closes at the edge. Faces meet: how far past the saw line the taper "
                  "closes, edge "
                  "thickness over the tapers of both faces; past that there is nothing to saw.");
  if (nearest && !card_.nothing_to_build) {
    flow_.paragraph("Nearest " + where(*nearest) + ": " + length(*card_.heights[*nearest].furthest) +
                    " is the furthest that overbuilding makes sense.");
  }
  if (!open.empty()) {
    flow_.paragraph("The faces run parallel or open aft " + open + ": no limit from the taper there.");
  }
}

void Words::batten() {
  if (!card_.from_stock) {
    flow_.paragraph(
        "Where the leading edge stands from the stock (ahead) is not known, so the distances run from the old leading edge, as "
        "it was measured, and by how much a straight batten misses the edge cannot be told.");
    return;
  }
  if (card_.heights.size() < 2) {
    flow_.paragraph(
        "One station only: how the edge runs down the blade is not known. Clamp the batten by your own marks above and below.");
    return;
  }
  flow_.paragraph("Batten: its taped edge, clamped " + where(0) + " and " + where(card_.heights.size() - 1) +
                  " and straight between. Misses: + it stands further out than wanted there, - further in.");
  if (!card_.furthest_out && !card_.furthest_in) {
    flow_.paragraph("The edge is straight: the batten misses it nowhere.");
  }
  if (card_.furthest_out) {
    const EdgeHeight& at = card_.heights[*card_.furthest_out];
    std::string words =
        "Furthest out " + where(*card_.furthest_out) + ": " + length(at.miss) + ", so much more to saw off there.";
    const auto too_far = [&](const EdgeHeight& h) {
      return h.furthest && h.miss > 0.05 && card_.build_past + h.miss > *h.furthest;
    };
    const auto one = std::find_if(card_.heights.begin(), card_.heights.end(), too_far);
    if (one != card_.heights.end()) {
      words += " That is past where the faces meet, first " + where_words(one->name, one->station.has_value()) +
               ": bend the batten to the edge.";
    }
    flow_.paragraph(words);
  }
  if (card_.furthest_in) {
    const EdgeHeight& at = card_.heights[*card_.furthest_in];
    std::string words = "Furthest in " + where(*card_.furthest_in) + ": " + length(-at.miss);
    words += -at.miss >= card_.build_past ? ", inside the edge itself: bend the batten to the edge, or clamp it further aft."
                                          : ", so much less to saw off there.";
    flow_.paragraph(words);
  }
}

void Words::coats() {
  if (card_.stages.size() < 2) return;
  std::string widths;
  for (const fill::Stage& stage : card_.stages) {
    widths += (widths.empty() ? "" : ", ") + std::string(fill::name_of(stage.kind));
  }
  flow_.paragraph("The coats wrap the edge face too, " + length(card_.stages.front().to_come) +
                  " in all: the filler is sawn so far ahead of the finished edge. Edge width is given for each stage (" + widths +
                  ").");
}

Grid grid_of(const job::Job& job, const EdgeCard& card) {
  Grid grid;
  const std::string from = card.from_stock ? "aft of the stock" : "aft of old nose";
  const bool coated = card.stages.size() > 1;
  const bool batten = !card.heights.empty() && card.heights.front().batten.has_value();
  grid.columns = {{"", "", 19, true}, {"", "below the top", 13.5}, {from, "saw at", 13}};
  if (coated) grid.columns.push_back({from, "finished", 15});
  if (!coated && !batten) grid.columns.back().width = 32;
  if (batten) grid.columns.push_back({from, "batten", 13});
  if (batten) grid.columns.push_back({"", "misses by", 13});
  for (const fill::Stage& stage : card.stages)
    grid.columns.push_back({"edge width", coated ? fill::name_of(stage.kind) : "", coated ? 11.5 : 19});
  for (const char* side : {"port taper", "starb. taper"}) {
    grid.columns.push_back({side, "per 100", 10.5});
    grid.columns.push_back({side, "\xc2\xb0", 8});
  }
  grid.columns.push_back({"", "faces meet", 13});
  const auto number = [&](double mm) { return number_in_unit(mm, job.units); };
  for (const EdgeHeight& h : card.heights) {
    std::vector<std::string> row{h.name, number(h.down), number(h.saw)};
    if (coated) row.push_back(number(h.finished));
    if (h.batten) row.push_back(number(*h.batten));
    if (h.batten) row.push_back(std::abs(h.miss) < 0.05 ? "-" : (h.miss > 0 ? "+" : "") + number(h.miss));
    for (const double width : h.widths) row.push_back(number(width));
    for (const double taper : h.taper) {
      row.push_back(fixed(100 * taper, 1));
      row.push_back(fixed(std::atan(taper) * 180 / std::numbers::pi, 1));
    }
    row.push_back(h.furthest ? number(*h.furthest) : "never");
    grid.rows.push_back(row);
  }
  return grid;
}

}  // namespace

std::vector<Sheet> edge_cards(const job::Job& job, const EdgeCard& card, const PaperRoom& paper) {
  Flow flow("Trailing edge, " + job.name, {"Trailing edge", job.name}, paper.table_height);
  Words words(job, card, flow);
  words.build_past();
  if (card.from_stock && card.heights.size() > 1)
    flow.picture(draw_edge_from_side(job, card, Flow::room, std::min(118.0, flow.tallest_picture())), "side-");
  if (card.shown && !card.nothing_to_saw && (card.build_past > 0 || card.nothing_to_build)) {
    if (!card.nothing_to_build) flow.picture(draw_dam(job, card, Flow::room), "dam-");
    flow.picture(draw_saw(job, card, Flow::room), "saw-");
  }
  flow.grid("Down the blade, lengths in " + unit_words(job), grid_of(job, card));
  words.limits();
  words.batten();
  words.coats();
  return flow.finish();
}

}  // namespace fairblade::drawing
