#include "job/job.hpp"

namespace fairblade::job {

Place place_of(const Station& station, std::initializer_list<const char*> keys) {
  for (const char* key : keys) {
    const auto found = station.target.places.find(key);
    if (found != station.target.places.end()) return found->second;
  }
  return station.place;
}

}  // namespace fairblade::job
