// A job for a judge of its readings. Verbs: read_job_as_written.
#pragma once
#include <string>

#include "job/job.hpp"

namespace fairblade::job {

/// As read_job, but what only the readings themselves can explain stays as it was written: x outside the chord, sizes
/// out of all proportion, a station read at one place. The target is not held against the chords. Not for planning.
Outcome<Job> read_job_as_written(const std::string& path);

}  // namespace fairblade::job
