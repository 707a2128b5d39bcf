// Private to the drawing room. The three pictures of the water sheet, each in a box of its own.
// Verbs: draw_pressures, draw_lever, draw_tone.
#pragma once
#include "drawing/sheet.hpp"
#include "flow/water.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

/// How much is written about a graph: all of it, what a telephone's width takes, or the least.
enum class Written { all, some, least };
/// Pressures of one station before and after, at the page's helm, to the side that works harder; suction upwards.
void draw_pressures(Sheet& sheet, const Box& room, const flow::StationWater& station, double helm, Written written);
/// The greater suction of the two sides at so much helm, the greater of before and after; to choose stations by.
double hardest(const flow::StationWater& station, double helm);

/// The mean chord before and after about the stock: centre of pressure, lever, balance.
void draw_lever(Sheet& sheet, const Box& room, const job::Job& job, const flow::Water& water);
/// Frequency against speed before and after, all stations' bands together.
void draw_tone(Sheet& sheet, const Box& room, const job::Job& job, const flow::Water& water);

}  // namespace fairblade::drawing
