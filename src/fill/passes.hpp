// Product: how the filler goes on: passes within the layer limit, where each goes, and a bonded core where it is deep.
// Verbs: passes_of. mm, litres, m².
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "fill/nose_glass.hpp"

namespace fairblade::fill {

/// Past this depth wood or foam is bonded in (common practice).
constexpr double core_from = 15;  ///< mm
constexpr double core_cover = 3;  ///< mm of filler left over the core, to shape; common practice, no source

struct PassStation {
  std::string station;
  double down = 0;
  double depth = 0;  ///< mm to put on at the zone's deepest place here: less coats and nose glass, sanding allowance added
  int passes = 0;
};

/// Pass 1 goes into the deepest places only, the last one over everything that is filled.
struct Pass {
  int number = 0;
  double depth = 0;      ///< mm, at most
  double left_over = 0;  ///< mm still to come where this pass has been: it stops so far below the sanded-over surface
  double litres = 0;     ///< to mix, sanding allowance and loss included
  std::vector<std::string> stations;
};

/// A board of one thickness bonded in wherever it fits under `cover`.
struct Core {
  double thickness = 0, cover = core_cover;
  double area = 0;          ///< m²
  double filler_saved = 0;  ///< litres, on the blade
  double deepest_left = 0;  ///< mm to put on after it
  int passes_after = 0;
};

struct ZonePasses {
  Zone zone = Zone::faces;
  double layer_limit = 0;
  double deepest = 0;       ///< mm to put on, as PassStation::depth, at the stations and between
  double deepest_down = 0;  ///< where
  std::vector<Pass> passes;
  std::vector<PassStation> stations;
  std::optional<Core> core;  ///< an offer; the passes are without it
};

std::array<ZonePasses, 3> passes_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                    const std::vector<StationChange>& changes, const Zones& zones,
                                    const std::vector<Piece>& surface, const Coats& coats);

}  // namespace fairblade::fill
