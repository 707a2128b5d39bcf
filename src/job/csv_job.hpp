// Private to the job room. Product: a CSV that is a job alone, as the tree that a job file would have given.
// Verbs: tree_of_csv.
#pragma once
#include "job/csv_readings.hpp"
#include "job/tree.hpp"

namespace fairblade::job {

/// The keys above the header row and the stations' own columns; the readings stay in `content`.
Node tree_of_csv(const CsvContent& content, Faults& faults);

}  // namespace fairblade::job
