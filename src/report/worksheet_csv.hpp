// The worksheet as an empty table for a telephone or a spreadsheet. Verbs: worksheet_csv, judge_one_table.
#pragma once
#include <optional>
#include <string>

#include "base/fault.hpp"
#include "worksheet/worksheet.hpp"

namespace fairblade::report {

/// Why there cannot be one table: stations measured in different ways, or from different places.
std::optional<Fault> judge_one_table(const worksheet::Worksheet& sheet);

/// Rows that the job reader takes unchanged: what is known is filled in, and rows without readings count as not taken. The
/// station that is measured twice stands a second time at the end, so that readings of one x are averaged and tell the
/// error. Numbers with a decimal point: a spreadsheet would take a fraction for a date.
/// `names_the_job`: with the job's name and bottom above the header; a CSV that a job file names may not have them.
std::string worksheet_csv(const worksheet::Worksheet& sheet, bool names_the_job);

}  // namespace fairblade::report
