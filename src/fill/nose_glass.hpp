// Product: the nose built up in cloth before filler. Verbs: nose_glass_of (see coats.hpp for what it holds).
//
// Layers: as many as leave the wanted cover of filler. A strip is bent round the nose, so it reaches aft only as far as
// the depth takes it, and those under it, all the way from the leading edge: behind a shallower place there are no more
// layers than there. The width of strip k is the girth of what carries k layers; strips under 10 mm are left to filler.
#pragma once
#include "fill/coats.hpp"

namespace fairblade::fill {

NoseGlassPlan nose_glass_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured, const Zones& zones,
                            const std::vector<Piece>& surface, double build);

}  // namespace fairblade::fill
