// Readings thinned for the eye, never for a number. Verbs: rows_shown.
#pragma once
#include <vector>

#include "fill/fill.hpp"

namespace fairblade::fill {

constexpr std::size_t most_shown = 60;  ///< rows of a face of one section: what a sheet can show

/// All rows of a face where they are no more than `most`; else the ends, the deepest to add and to take off, and some
/// evenly between. In their order.
std::vector<OffsetRow> rows_shown(const std::vector<OffsetRow>& rows, Face face, std::size_t most);

}  // namespace fairblade::fill
