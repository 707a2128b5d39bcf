// A blade that was read well, for faults to be planted in.
#pragma once
#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "blade.hpp"

namespace good_blade {

using namespace fairblade;

/// Five stations as a yard would read them, 0.5 mm of error; the tail of each leans a little, so that sides differ.
inline job::Job good(unsigned seed) {
  std::mt19937 random(seed);
  std::vector<job::Station> stations;
  const double chords[] = {420, 391, 362, 334, 305};
  for (int k = 0; k < 5; ++k) {
    const blade::Shape port = [](double x) { return blade::naca(0.125, x) + 0.006 * x * (1 - x) * 4; };
    const blade::Shape starboard = [](double x) { return blade::naca(0.125, x) - 0.002 * x * (1 - x) * 4; };
    auto station = blade::station(std::string(1, static_cast<char>('A' + k)), 240.0 * k, chords[k], port, starboard);
    if (k == 2) {
      std::normal_distribution<double> noise(0, 0.5);
      for (auto& r : station.readings) r.caliper = std::round(10 * (*r.port + *r.starboard + noise(random))) / 10;
    }
    blade::add_noise(station, 0.5, random);
    for (auto& r : station.readings) {  // written to a tenth of a millimetre
      r.x = std::round(r.x);
      r.port = std::round(10 * *r.port) / 10;
      r.starboard = std::round(10 * *r.starboard) / 10;
      r.line += 20 * k;
    }
    station.place.line = 20 * k;
    stations.push_back(std::move(station));
  }
  return blade::job_of(std::move(stations));
}

}  // namespace good_blade
