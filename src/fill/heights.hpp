// Product: the heights at which the edges are gauged, with the target at each. Verbs: heights_down, height_of. mm.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "job/job.hpp"
#include "target/target.hpp"

namespace fairblade::fill {

struct Height {
  std::string name;  ///< the station's, or "at 250"
  double down = 0;
  std::optional<std::size_t> station;
  target::TargetSection target;
  bool edge_left = false;  ///< the leading edge stays as it is, here or at a neighbouring station
};

/// One section as a height: a target of the list, or lofted between two of them.
Height height_of(const job::Job& job, const std::vector<target::TargetSection>& targets, const target::TargetSection& target);

/// Every station, and between them every `spacing` mm from the first one down; no height nearer to a station than a
/// tenth of the spacing. `targets` are those of job.stations.
std::vector<Height> heights_down(const job::Job& job, const std::vector<target::TargetSection>& targets, double spacing);

}  // namespace fairblade::fill
