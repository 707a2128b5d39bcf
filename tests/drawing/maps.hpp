// Blades of one and of many stations to map.
#pragma once
#include "drawing/cases.hpp"
#include "fill/change_map.hpp"

namespace maps {

using namespace fairblade;

struct Blade {
  std::string name;
  job::Job job;
  std::vector<section::MeasuredSection> measured;
  std::vector<target::TargetSection> targets;
  std::vector<fill::StationChange> changes;
  fill::ChangeMap map() const { return fill::change_map(job, measured, targets, changes); }
};

/// Stations evenly down the span; `at` changes the wish of each, w from 0 at the top to 1.
inline Blade make(
    const std::string& name, int stations, double top, double span, const cases::Wish& wish,
    const std::function<void(cases::Wish&, double w)>& at = [](cases::Wish&, double) {}) {
  Blade out;
  out.name = name;
  for (int k = 0; k < stations; ++k) {
    const double w = stations > 1 ? double(k) / (stations - 1) : 0;
    cases::Wish own = wish;
    own.down = top + w * span;
    if (stations > 1)
      own.station =
          wish.station.size() > 1 ? wish.station : std::string(1, char('A' + k % 26)) + (k < 26 ? "" : std::to_string(k));
    at(own, w);
    cases::Case one = cases::make(name, own);
    if (k == 0) out.job = one.job;
    else out.job.stations.push_back(one.job.stations[0]);
    out.measured.push_back(one.measured);
    out.targets.push_back(one.target);
    out.changes.push_back(one.change);
  }
  return out;
}

inline std::vector<Blade> all() {
  std::vector<Blade> out;
  for (const cases::Case& c : cases::all()) out.push_back({c.name, c.job, {c.measured}, {c.target}, {c.change}});
  cases::Wish usual;
  usual.lopsided = 2, usual.noise = 0.5;
  const auto taper = [](cases::Wish& own, double w) { own.chord *= 1 - 0.3 * w, *own.ahead -= 40 * w; };
  out.push_back(make("five", 5, 0, 960, usual, taper));
  out.push_back(make("twelve", 12, 0, 1100, usual, taper));
  out.push_back(make("twelve-crowded", 12, 0, 110, usual, taper));
  out.push_back(make("sixty", 60, 0, 1800, usual, taper));
  out.push_back(make("carried-on", 3, 120, 600, usual, taper));
  out.back().job.bottom = 900;
  cases::Wish small = usual;
  small.chord = 90, small.ahead = 20, small.edge = 2, small.lopsided = 0.4, small.noise = 0.1;
  out.push_back(make("small", 3, 0, 150, small));
  out.push_back(make("small-and-deep", 6, 0, 2000, small));
  cases::Wish wide = usual;
  wide.chord = 1200, wide.ahead = 200, wide.edge = 8;
  out.push_back(make("wide", 4, 0, 1500, wide, taper));
  out.push_back(make("wide-and-low", 3, 0, 200, wide));
  cases::Wish same;
  same.edge.reset();
  same.measured_ratio = same.target_ratio;
  out.push_back(make("nothing-to-do", 3, 0, 700, same));
  cases::Wish thick = usual;
  thick.measured_ratio = 0.03, thick.target_ratio = 0.22;
  out.push_back(make("forty-to-add", 4, 0, 900, thick, taper));
  std::swap(thick.measured_ratio, thick.target_ratio);
  out.push_back(make("forty-to-take-off", 4, 0, 900, thick, taper));
  cases::Wish built = usual;
  built.extend_forward = 25, built.extend_aft = 12, built.radius = 8;
  out.push_back(make("built-out", 4, 0, 900, built, taper));
  built.extend_forward = -15, built.extend_aft = -20, built.radius.reset();
  out.push_back(make("cut-back", 4, 0, 900, built, taper));
  cases::Wish inches = usual;
  inches.units = LengthUnit::inch, inches.ahead = -260;
  out.push_back(make("inches-stock-far-ahead", 4, 0, 900, inches));
  cases::Wish unknown = usual;
  unknown.ahead.reset();
  out.push_back(make("no-stock-given", 4, 0, 900, unknown));
  cases::Wish named = usual;
  named.job_name = named.station = cases::long_name();
  out.push_back(make("all-long-names", 5, 0, 900, named));
  out.push_back(make("raked", 4, 0, 900, usual, [](cases::Wish& own, double w) { *own.ahead -= 500 * w; }));
  return out;
}

}  // namespace maps
