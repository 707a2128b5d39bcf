// The five numbers that matter of a plan, for the end of the screen's account and the head of the report. Verbs:
// five_numbers, five_lines.
#pragma once
#include <array>
#include <string>

#include "report/plan.hpp"

namespace fairblade::report {

struct Number {
  std::string what, value, note;  ///< plain text; the note may be empty
};

/// Litres to mix; deepest to add; deepest to take off; nearest form and target; balance, or where that is not known the
/// trailing edge.
std::array<Number, 5> five_numbers(const Plan& plan);
/// A heading and a line each.
std::string five_lines(const Plan& plan);

}  // namespace fairblade::report
