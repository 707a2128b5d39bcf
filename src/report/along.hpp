// What is said of the blade as a whole: area and balance, what governs a least fill, what fairing moved, twist, and
// whether the two sides are one. Verbs: along_the_blade.
#pragma once
#include <string>
#include <vector>

#include "report/plan.hpp"

namespace fairblade::report {

/// Plain sentences, none of them a warning; mm with the job's own unit beside it.
std::vector<std::string> along_the_blade(const Plan& plan);

}  // namespace fairblade::report
