// A job taken from readings to work, for the tests of the fill room.
#pragma once
#include "fill/work.hpp"
#include "line.hpp"

namespace planned {

using namespace fairblade;

/// Readings, targets, changes and litres.
struct Change : line::Line {
  std::vector<fill::StationChange> changes;
  fill::Volumes volumes;
};
/// The same, and the work it makes.
struct Plan : Change {
  fill::Work work;
};

inline Change change(job::Job job) {
  Change out{line::to_targets(std::move(job)), {}, {}};
  for (std::size_t k = 0; k < out.measured.size(); ++k) out.changes.push_back(fill::compare(out.measured[k], out.targets[k]));
  out.volumes = fill::sum_volumes(out.job, out.measured, out.targets, out.changes);
  return out;
}

inline Plan plan(job::Job job) {
  Plan out{change(std::move(job)), {}};
  out.work = fill::plan_work(out.job, out.measured, out.targets, out.changes, out.volumes);
  return out;
}

/// Exact 4-digit stations evenly down the span, chord running straight, all to be brought to another thickness.
inline job::Job tapered(int stations, double span, double chord_top, double chord_bottom, double from, double to) {
  std::vector<job::Station> list;
  for (int i = 0; i < stations; ++i) {
    const double w = double(i) / (stations - 1);
    list.push_back(blade::exact(std::string(1, char('A' + i)), span * w, chord_top + (chord_bottom - chord_top) * w, from));
    list.back().target.thickness = {job::Thickness::Kind::ratio, to};
  }
  return blade::job_of(list);
}

}  // namespace planned
