// A plan put together by hand: two stations, every number chosen, none worked out by the rooms under test.
#pragma once
#include "report/plan.hpp"

namespace hand_made {

using namespace fairblade;

inline job::Station station(const std::string& name, double down) {
  job::Station out;
  out.name = name;
  out.down = down;
  out.chord = 400;
  return out;
}

inline section::MeasuredSection measured(const std::string& name, double down) {
  section::MeasuredSection out;
  out.station = name;
  out.down = down;
  out.chord = 400;
  out.figures = {13000, 48, 0.3, 6.3, 0.7, 2, 0.25};
  out.points = {{0, 0, 0, section::Face::port}, {10.5, 12.3456, 0, section::Face::starboard}};
  return out;
}

inline form::FittedForm fitted() {
  form::FittedForm out;
  out.form = {0.1234, 6, 0};
  out.thickness_ratio_error = 0.0006;
  out.rms = 0.5;
  out.typical = 0.3;
  out.worst = {-1.25, 100, section::Face::starboard, 0};
  out.modified = {0.12, 4.1, 0.47};
  out.modified_rms = 0.45;
  return out;
}

/// A 0012 on a chord of 410, its leading edge built 10 mm forward.
inline target::TargetSection target(const std::string& name, double down) {
  target::TargetSection out;
  out.station = name;
  out.down = down;
  out.leading_edge_x = -10;
  out.chord = 410;
  out.curve = form::SectionCurve(form::Form{0.12, 6, 0});
  out.thickness_ratio = 0.12;
  return out;
}

inline fill::StationChange change(const std::string& name) {
  fill::StationChange out;
  out.station = name;
  out.add_area = 250;
  out.remove_area = 125;
  out.add = {2.54, 101.6, section::Face::port};
  out.removal = {0.75, 25.4, section::Face::starboard};
  out.targets = {0.5, 12};  // at the points of measured()
  return out;
}

inline report::Plan plan() {
  report::Plan out;
  out.job.name = "Reed warbler";
  out.job.bottom = 900;
  out.job.defaults = {{"target.thickness", "closest"}, {"print.paper", "both"}};
  for (const auto& [name, down] : {std::pair<std::string, double>{"A", 0}, {"B", 800}}) {
    out.job.stations.push_back(station(name, down));
    out.measured.push_back(measured(name, down));
    out.fitted.push_back(fitted());
    out.targets.push_back(target(name, down));
    out.changes.push_back(change(name));
    out.asymmetry.emplace_back();
  }
  out.volumes.add = 1.234;
  out.volumes.remove = 0.5;
  out.volumes.add_error = 0.06;
  out.volumes.may_be_reading_error = 0.1;
  out.volumes.has_below = true;
  out.volumes.below_add = 0.25;
  return out;
}

}  // namespace hand_made
