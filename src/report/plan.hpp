// The whole line's products side by side, one entry per station in each list, for those who report on them.
// Verbs: gather_warnings.
#pragma once
#include <vector>

#include "fill/fill.hpp"
#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::report {

struct Plan {
  job::Job job;
  std::vector<section::MeasuredSection> measured;
  std::vector<form::FittedForm> fitted;
  std::vector<target::TargetSection> targets;
  std::vector<fill::StationChange> changes;
  fill::Volumes volumes;
};

/// Every warning of the plan: the job's, then station by station the readings', the fit's, the target's and the cuts'.
std::vector<Warning> gather_warnings(const Plan& plan);

}  // namespace fairblade::report
