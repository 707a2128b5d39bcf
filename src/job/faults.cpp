#include "job/faults.hpp"

#include <algorithm>

namespace fairblade::job {

void Faults::add(Place place, std::string what, std::string remedy) {
  if (!full()) list_.push_back({std::move(place), std::move(what), std::move(remedy)});
}

std::vector<Fault> Faults::in_order() const {
  std::vector<std::string> files;
  const auto rank = [&](const Fault& fault) { return std::find(files.begin(), files.end(), fault.place.file) - files.begin(); };
  for (const Fault& fault : list_) {
    if (rank(fault) == static_cast<std::ptrdiff_t>(files.size())) files.push_back(fault.place.file);
  }
  std::vector<Fault> out = list_;
  std::stable_sort(out.begin(), out.end(), [&](const Fault& a, const Fault& b) {
    const auto ra = rank(a), rb = rank(b);
    return ra != rb ? ra < rb : a.place.line < b.place.line;
  });
  return out;
}

}  // namespace fairblade::job
