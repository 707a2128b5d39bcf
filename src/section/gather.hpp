// From lines of the measuring sheet to surface points: calipers halved, repeats averaged, a missing side mirrored. Verbs: gather,
// where.
#pragma once
#include "section/section.hpp"

namespace fairblade::section {

struct Gathered {
  std::vector<SurfacePoint> port, starboard;  ///< sorted by x, distinct x
  bool thickness_only = false, one_side_only = false;
  std::vector<Warning> warnings;
};

/// "station A", as warnings have it.
inline std::string where(const job::Station& station) { return "station " + station.name; }

Outcome<Gathered> gather(const job::Job& job, const job::Station& station);

}  // namespace fairblade::section
