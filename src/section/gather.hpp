// From lines of the measuring sheet to surface points: calipers halved, repeats averaged, a missing side mirrored. Verbs: gather.
#pragma once
#include "section/section.hpp"

namespace fairblade::section {

struct Gathered {
  std::vector<SurfacePoint> port, starboard;  ///< sorted by x, distinct x
  bool thickness_only = false, one_side_only = false;
  std::vector<Warning> warnings;
};

Outcome<Gathered> gather(const job::Job& job, const job::Station& station);

}  // namespace fairblade::section
