// What the report room reads: a plan; and what the owner should decide on, gathered from every room. Verbs:
// gather_warnings, warnings_for_people.
#pragma once
#include <vector>

#include "plan/plan.hpp"

namespace fairblade::report {

using plan::Plan;

/// Every warning of the plan: the job's, the blade's, then station by station the readings', the fit's, the target's and
/// the cuts'.
std::vector<Warning> gather_warnings(const Plan& plan);
/// What is said of several stations in the same words, once, for people: "stations A, B and C".
std::vector<Warning> told_once(const std::vector<Warning>& warnings);
/// All of them so, and what an edge has at several stations once for the edge.
std::vector<Warning> warnings_for_people(const Plan& plan);

}  // namespace fairblade::report
