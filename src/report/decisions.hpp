// What the owner has not asked for and should decide on before work begins. Verbs: decisions, by_default_alone.
#pragma once
#include <vector>

#include "check/findings.hpp"
#include "report/plan.hpp"

namespace fairblade::report {

/// An edge made thin by default, a flat leading edge that nothing is planned for, a cut allowed by default: to be told among
/// the plan's warnings. `findings`: of its readings.
std::vector<Warning> decisions(const Plan& plan, const check::Findings& findings);

/// Is it about nothing but a default that could be another? Then the plan is what was asked for all the same.
bool by_default_alone(const Warning& warning);

}  // namespace fairblade::report
