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
/// What a job file says stands above the header, so that the table is the whole job; named by it as its readings_file, it
/// says the same once more.
std::string worksheet_csv(const worksheet::Worksheet& sheet);

}  // namespace fairblade::report
