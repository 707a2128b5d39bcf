// Product: the trailing-edge card of a blade as sheets to print, small enough to share a page. Verbs: edge_cards,
// draw_edge_from_side, draw_dam, draw_saw. mm.
#pragma once
#include <vector>

#include "drawing/paper_room.hpp"
#include "drawing/sheet.hpp"
#include "fill/trailing_edge.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

/// Where to saw, the taper, how far to build past the edge, where the batten is clamped and by how much it misses.
std::vector<Sheet> edge_cards(const job::Job& job, const fill::EdgeCard& card, const PaperRoom& paper = {});

/// Edge and batten from the side, to the scale that it says; for a card from the stock with two heights at least.
Sheet draw_edge_from_side(const job::Job& job, const fill::EdgeCard& card, double width, double highest);
/// The two set-ups at the top height, to scale: the timber as dam for the paste, and as straight edge for the saw.
Sheet draw_dam(const job::Job& job, const fill::EdgeCard& card, double width);
Sheet draw_saw(const job::Job& job, const fill::EdgeCard& card, double width);

}  // namespace fairblade::drawing
