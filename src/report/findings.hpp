// What the check found, for a phone's screen and for programs. Verbs: findings_text, findings_json,
// findings_sentences, slip_lines, likely_slip_lines, slips_text.
#pragma once
#include <string>
#include <vector>

#include "check/findings.hpp"

namespace fairblade::report {

/// Worst first, three short lines each: where, what, what to do. At most `phone_columns` wide where names allow it.
std::string findings_text(const job::Job& job, const check::Findings& findings);
/// The same as JSON; mm.
std::string findings_json(const job::Job& job, const check::Findings& findings);

/// The same for the report: a sentence or two each, worst first, one's own error last. None where nothing was judged.
std::vector<std::string> findings_sentences(const job::Job& job, const check::Findings& findings);

/// What is almost certainly wrong in the readings, a line each: at most `most_slips`, then how many more there are.
std::vector<std::string> slip_lines(const job::Job& job, const check::Findings& findings);
/// What is likely wrong in them, as many.
std::vector<std::string> likely_slip_lines(const job::Job& job, const check::Findings& findings);
/// Both for the screen, under headings that say what to do about it; empty where there are none.
std::string slips_text(const job::Job& job, const check::Findings& findings);
constexpr std::size_t most_slips = 3;

constexpr std::size_t phone_columns = 60;

}  // namespace fairblade::report
