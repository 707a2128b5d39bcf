// What a recheck found, for a phone's screen, for programs and for a spreadsheet. Verbs: recheck_text, recheck_json,
// still_to_do_csv, what_next.
#pragma once
#include <string>
#include <vector>

#include "recheck/recheck.hpp"
#include "report/pieces.hpp"

namespace fairblade::report {

/// At most `phone_columns` wide where names allow it; lengths in the job's unit. The verdict; what to take off, what to
/// add, each worst first, without single readings that may as well be reading error; litres by height; progress since the plan;
/// what to do next.
std::string recheck_text(const recheck::Recheck& recheck);

/// mm and litres. Keys:
///   fairblade, job, plan
///   stage          name, surface, to_come
///   tolerance
///   verdict        "nothing left", "within reading error", "go on"
///   next           what to do, sentence by sentence
///   litres         add, remove, their errors; what a perfect blade would show of each, read with this error; beyond the
///                  end stations; how
///   readings       in all, within the tolerance, and how many reading error alone would put beyond it
///   common         mean depth of all readings, and its error
///   heights        name, down, between; add and remove in litres; edges: short of the target's, or null;
///                  readings: x as read, x_from, x_plan (aft of the leading edge as first measured), side, measured,
///                  target, change (along the normal, + to add), within, alone (read it again), line
///   spots          kind, side, heights, from and to (x as read, at `worst_at`), worst, mean, standard_deviations
///   progress       file, readings, within, deepest_low, deepest_high, add, remove; the plan's own first
///   defaults, notes
Pieces recheck_json(const recheck::Recheck& recheck);

/// One row per reading beyond the tolerance, worst first, in mm.
Pieces still_to_do_csv(const recheck::Recheck& recheck);

/// What to do now, sentence by sentence.
std::vector<std::string> what_next(const recheck::Recheck& recheck);

}  // namespace fairblade::report
