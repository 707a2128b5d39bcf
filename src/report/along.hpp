// What is said of the blade as a whole: area and balance, what governs a least fill, what fairing moved, twist, and
// whether the two sides are one. Verbs: of_the_target, of_the_blade, along_the_blade.
#pragma once
#include <string>
#include <vector>

#include "report/plan.hpp"

namespace fairblade::report {

/// Plain sentences, none of them a warning; mm with the job's own unit beside it. Of the target: area and balance, what
/// governs, what fairing moved, screeds. Of the blade as it is: twist, and the two sides against each other.
std::vector<std::string> of_the_target(const Plan& plan);
std::vector<std::string> of_the_blade(const Plan& plan);
/// Both.
std::vector<std::string> along_the_blade(const Plan& plan);

}  // namespace fairblade::report
