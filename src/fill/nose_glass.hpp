// Product: the nose built up in cloth before filler. Verbs: nose_glass_of, glass_under (see coats.hpp for what it
// holds).
//
// Layers: as many as leave the wanted cover of filler at the station's deepest place of the leading edge. Strip k lies
// on k - 1 others and reaches as far round the nose as the depth there takes it and the cover: sum of the girth of the
// pieces no shallower than k layers and the cover.
#pragma once
#include "fill/coats.hpp"

namespace fairblade::fill {

NoseGlassPlan nose_glass_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                            const Zones& zones, const std::vector<Piece>& surface, double build);

/// mm of glass under a place of the leading edge that is so deep, coats taken off.
double glass_under(const NoseGlassPlan& plan, double depth);

}  // namespace fairblade::fill
