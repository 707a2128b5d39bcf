// Product: litres of filler by zone: leading edge, faces, trailing edge. Verbs: zones_of, take_glass, filler_of.
// Litres, m², mm.
//
// Method: the areas to add, clipped to each zone, integrated over the span by the loft of the volumes (16 steps a bay).
// Their sum is then scaled to volumes.add, which is integrated more finely; `scaled_by` tells by how much (seen within
// 0.1 %, more where add and take-off change places in the bay). What coats take of it is what is added less what would be
// added up to the surface under them (stage_section), so that an edge built out is counted with its own thickness.
#pragma once
#include <array>
#include <vector>

#include "fill/fill.hpp"
#include "fill/surface.hpp"

namespace fairblade::fill {

struct ZoneAmount {
  Zone zone = Zone::faces;    ///< meaningless for the whole
  double net = 0;             ///< between the first and the last station; summed over the zones: volumes.add
  double beyond = 0;          ///< above the first station and below the last
  double error = 0;           ///< one standard deviation of net, from reading error
  double low = 0, high = 0;   ///< net less and plus two of those: 19 times in 20
  double filled_area = 0;     ///< m² where filler goes on
  double taken_by_coats = 0;  ///< of net and beyond, what the coats over the filler will fill: the target is the finished surface
  double taken_by_glass = 0;  ///< likewise, what a nose built up in cloth takes
  double filler = 0;          ///< net + beyond - taken_by_coats - taken_by_glass: what stays on the blade
  double sanding = 0;         ///< sanding allowance x filled area
  double loss = 0;            ///< left in pots and on tools
  double to_mix = 0;          ///< filler + sanding + loss
  double deepest = 0;         ///< mm, at the stations and between
};

struct Zones {
  job::ZoneBounds bounds;
  std::array<ZoneAmount, 3> by_zone;  ///< in the order of Zone
  ZoneAmount whole;
  double scaled_by = 1;

  const ZoneAmount& operator[](Zone zone) const { return by_zone[static_cast<std::size_t>(zone)]; }
};

/// The edges' filler for leading and trailing edge, the faces' for the faces.
const job::Filler& filler_of(const job::Job& job, Zone zone);

/// `build`: mm of coats over the filler, a side. Where they leave nothing of a station's section to shape, none are counted.
Zones zones_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes,
               const Volumes& volumes, const std::vector<Piece>& surface, double build);

/// The leading edge less so many litres of glass.
void take_glass(const job::Job& job, double litres, Zones& zones);

}  // namespace fairblade::fill
