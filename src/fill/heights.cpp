#include "fill/heights.hpp"

#include <algorithm>
#include <cmath>

#include "target/loft.hpp"

namespace fairblade::fill {

Height height_of(const job::Job& job, const std::vector<target::TargetSection>& targets, const target::TargetSection& target) {
  Height out{target.station, target.down, std::nullopt, target, false};
  for (std::size_t k = 0; k < targets.size(); ++k) {
    if (targets[k].down == target.down) out.station = k;
    // The stations next above and next below, or the one that stands here.
    const bool above = targets[k].down <= target.down && (k + 1 == targets.size() || targets[k + 1].down > target.down);
    const bool below = targets[k].down >= target.down && (k == 0 || targets[k - 1].down < target.down);
    if ((above || below) && job.stations[k].target.leading_edge == job::LeadingEdgeWork::leave) out.edge_left = true;
  }
  return out;
}

std::vector<Height> heights_down(const job::Job& job, const std::vector<target::TargetSection>& targets, double spacing) {
  std::vector<Height> out;
  if (targets.empty()) return out;
  const double first = targets.front().down;
  for (std::size_t k = 0; k < targets.size(); ++k) {
    out.push_back(height_of(job, targets, targets[k]));
    if (k + 1 == targets.size()) break;
    const double from = targets[k].down, to = targets[k + 1].down;
    for (double n = std::ceil((from - first) / spacing); first + n * spacing < to - spacing / 10; ++n) {
      const double down = first + n * spacing;
      if (down <= from + spacing / 10) continue;
      const auto target = target::target_at(job, targets, down, target::name_at(down, job.units));
      if (target) out.push_back(height_of(job, targets, *target));
    }
  }
  return out;
}

}  // namespace fairblade::fill
