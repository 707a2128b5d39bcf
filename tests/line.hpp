// A job taken from readings to targets, as the program does, for the tests of every room from target on.
#pragma once
#include <stdexcept>

#include "blade.hpp"
#include "form/form.hpp"
#include "target/target.hpp"

namespace line {

struct Line {
  fairblade::job::Job job;
  std::vector<fairblade::section::MeasuredSection> measured;
  std::vector<fairblade::form::FittedForm> fitted;
  std::vector<fairblade::target::TargetSection> targets;
};

/// Throws the first refusal.
inline Line to_targets(fairblade::job::Job job) {
  Line out{std::move(job), {}, {}, {}};
  for (std::size_t k = 0; k < out.job.stations.size(); ++k) {
    out.measured.push_back(blade::measured(out.job, k));
    out.fitted.push_back(fairblade::form::fit_form(out.measured.back(), out.job.reading_error));
  }
  std::vector<fairblade::Warning> unheard;
  auto targets = fairblade::target::plan_targets(out.job, out.measured, out.fitted, unheard);
  if (!targets) throw std::runtime_error(fairblade::one_line(targets.faults().front()));
  out.targets = *targets;
  return out;
}

}  // namespace line
