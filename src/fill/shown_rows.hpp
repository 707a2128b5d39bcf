// Readings as people are shown them: thinned for the eye, never for a number, and those told apart that no target surface
// lies under. Verbs: rows_shown, rows_laid, past_of.
#pragma once
#include <vector>

#include "fill/fill.hpp"

namespace fairblade::fill {

constexpr std::size_t most_shown = 60;  ///< rows of a face of one section: what a sheet can show

/// The rows of a face, all where they are no more than `most`; else the ends, the deepest to add and to take off, and some
/// evenly between. In their order.
std::vector<OffsetRow> rows_shown(std::vector<OffsetRow> rows, std::size_t most);

/// Where nothing was read, a height between stations: the outline as it is laid there, at the places of the published tables
/// (NACA Report 460: 0, 1.25, 2.5, 5 ... 95, 100 % of the chord).
std::vector<OffsetRow> rows_laid(const section::MeasuredSection& measured, const target::TargetSection& target, Face face);

/// Where a reading was taken on what goes with an old edge: there is no target surface to add to or to cut down to, and the
/// half-breadth of 0 that a row gives there is for sums alone.
enum class Past { none, leading_edge, trailing_edge };
Past past_of(const target::TargetSection& target, double x);

}  // namespace fairblade::fill
