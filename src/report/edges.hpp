// Private to the report room. Product: what the owner is told of the two edges: cut too deep, or a step beside the kept body.
// Verbs: edges_of_station, edges_of_blade.
#pragma once
#include <vector>

#include "report/plan.hpp"

namespace fairblade::report {

/// Codes "nose-cut", "tail-cut" and "edge-step".
std::vector<Warning> edges_of_station(const Plan& plan, std::size_t k);
/// The same of all stations, each edge once: the worst place, and how far the ways round it go from station to station.
std::vector<Warning> edges_of_blade(const Plan& plan);

}  // namespace fairblade::report
