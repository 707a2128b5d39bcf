// Choices side by side, for the screen and for programs. Verbs: choices_text, choices_json.
#pragma once
#include <string>
#include <vector>

#include "plan/choices.hpp"

namespace fairblade::report {

/// A table, one row per choice, then a sentence each and how to ask for it. mm, with the job's unit beside it.
std::string choices_text(const job::Job& job, const std::vector<plan::Choice>& choices);
/// The same as JSON: mm, mm², litres; a refused choice has "refused" and no figures.
std::string choices_json(const job::Job& job, const std::vector<plan::Choice>& choices);

}  // namespace fairblade::report
