#include "fill/heights.hpp"

#include <algorithm>
#include <cmath>

#include "target/loft.hpp"

namespace fairblade::fill {
namespace {

bool left_as_it_is(const job::Station& station) {
  return station.target.leading_edge == job::LeadingEdgeWork::leave;
}

}  // namespace

std::vector<Height> heights_down(const job::Job& job, const std::vector<target::TargetSection>& targets,
                                 double spacing) {
  std::vector<Height> out;
  if (targets.empty()) return out;
  const double first = targets.front().down;
  for (std::size_t k = 0; k < targets.size(); ++k) {
    out.push_back({targets[k].station, targets[k].down, k, targets[k], left_as_it_is(job.stations[k])});
    if (k + 1 == targets.size()) break;
    const double from = targets[k].down, to = targets[k + 1].down;
    const bool left = left_as_it_is(job.stations[k]) || left_as_it_is(job.stations[k + 1]);
    for (double n = std::ceil((from - first) / spacing); first + n * spacing < to - spacing / 10; ++n) {
      const double down = first + n * spacing;
      if (down <= from + spacing / 10) continue;
      const std::string name = target::name_at(down);
      if (auto target = target::target_at(job, targets, down, name)) {
        out.push_back({name, down, std::nullopt, std::move(*target), left});
      }
    }
  }
  return out;
}

}  // namespace fairblade::fill
