// Product: the target's surface as many small pieces, each with how deep the filler stands there, and in which zone.
// Verbs: surface_of, zone_at.
#pragma once
#include <optional>
#include <vector>

#include "fill/slices.hpp"

namespace fairblade::fill {

using section::Face;

enum class Zone { leading_edge, faces, trailing_edge };
constexpr const char* name_of(Zone zone) {
  return zone == Zone::leading_edge ? "leading edge" : zone == Zone::faces ? "faces" : "trailing edge";
}

/// x in the measured frame, mm; `chord` the measured one. Extensions belong to the zone they extend.
Zone zone_at(double x, double chord, const job::ZoneBounds& bounds);

struct Piece {
  double down = 0, x = 0;  ///< mm, of its middle
  Face face = Face::port;
  Zone zone = Zone::faces;
  double depth = 0;     ///< mm along the normal from target to measured surface; 0 where nothing is added
  double coats = 1;     ///< share of the coats that room is made for: none on a leading edge that stays as it is
  double area = 0;      ///< mm² (girth times span weight)
  double girth = 0;     ///< mm, around the section
  bool beyond = false;  ///< above the first station or below the last
  std::optional<std::size_t> station;
};

/// 120 pieces a side and slice, 4 steps a bay: the depths' areas and volumes are good to about 1 %, for sharing out
/// what is known exactly from elsewhere.
std::vector<Piece> surface_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                              const std::vector<target::TargetSection>& targets);

}  // namespace fairblade::fill
