// Private to the drawing room. What a change map says of itself: its key and its notes. Verbs: map_key, map_notes.
#pragma once
#include <array>
#include <string>
#include <vector>

#include "drawing/depth_scale.hpp"
#include "drawing/highs_and_lows.hpp"
#include "fill/change_map.hpp"
#include "job/job.hpp"

namespace fairblade::drawing {

constexpr double map_margin = 3;  ///< mm

/// Samples with their words, from `top` down; returns where they end.
double map_key(Sheet& sheet, const fill::ChangeMap& map, const std::array<DepthScale, 2>& scales, LengthUnit unit,
               bool stock_shown, double top);
std::vector<std::string> map_notes(const job::Job& job, const fill::ChangeMap& map, bool stock_shown, bool strip,
                                   const MapWords& words);

}  // namespace fairblade::drawing
