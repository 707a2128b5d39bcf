// A job taken from readings to work, for the tests of the fill room.
#pragma once
#include "blade.hpp"
#include "fill/work.hpp"

namespace planned {

using namespace fairblade;

struct Plan {
  job::Job job;
  std::vector<section::MeasuredSection> measured;
  std::vector<target::TargetSection> targets;
  std::vector<fill::StationChange> changes;
  fill::Volumes volumes;
  fill::Work work;
};

inline Plan plan(job::Job job) {
  Plan out{std::move(job), {}, {}, {}, {}, {}};
  std::vector<form::FittedForm> fitted;
  for (std::size_t k = 0; k < out.job.stations.size(); ++k) {
    out.measured.push_back(blade::measured(out.job, k));
    fitted.push_back(form::fit_form(out.measured.back(), out.job.reading_error));
  }
  auto targets = target::plan_targets(out.job, out.measured, fitted);
  if (!targets) throw std::runtime_error(one_line(targets.faults().front()));
  out.targets = *targets;
  for (std::size_t k = 0; k < out.measured.size(); ++k)
    out.changes.push_back(fill::compare(out.measured[k], out.targets[k]));
  out.volumes = fill::sum_volumes(out.job, out.measured, out.targets, out.changes);
  out.work = fill::plan_work(out.job, out.measured, out.targets, out.changes, out.volumes);
  return out;
}

/// Exact 4-digit stations evenly down the span, chord running straight, all to be brought to another thickness.
inline job::Job tapered(int stations, double span, double chord_top, double chord_bottom, double from, double to) {
  std::vector<job::Station> list;
  for (int i = 0; i < stations; ++i) {
    const double w = double(i) / (stations - 1);
    list.push_back(
        blade::exact(std::string(1, char('A' + i)), span * w, chord_top + (chord_bottom - chord_top) * w, from));
    list.back().target.thickness = {job::Thickness::Kind::ratio, to};
  }
  return blade::job_of(list);
}

}  // namespace planned
