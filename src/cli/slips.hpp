// Private to the cli room. Product: what the check room says of the readings, joined with a plan and with its refusal.
// Verbs: found_in, slips_told.
#pragma once
#include <vector>

#include "base/fault.hpp"
#include "check/findings.hpp"
#include "job/job.hpp"

namespace fairblade::cli {

/// What a mate would say of the readings. Scans have too many to be held against each other one by one.
check::Findings found_in(const job::Job& job);

/// The faults that a plan of this job was refused with; where one hangs on a reading that is almost certainly or likely a
/// slip of the pen, the slip stands in its place and nothing else is advised: cutting to suit it would spoil the blade.
std::vector<Fault> slips_told(const job::Job& job, const check::Findings& findings, std::vector<Fault> refusals);

}  // namespace fairblade::cli
