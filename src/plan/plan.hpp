// Product of the plan room: every product of one job side by side. Verbs: make_plan, add_water, run_line, read_sections,
// asked_otherwise, is_scan, sections_at. The room only hands a job through the rooms in their order, and again where a question
// needs a second plan.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "fill/blade.hpp"
#include "fill/fill.hpp"
#include "fill/work.hpp"
#include "flow/water.hpp"
#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"
#include "target/asymmetry.hpp"
#include "target/stray_stations.hpp"
#include "target/target.hpp"
#include "target/twist.hpp"

namespace fairblade::plan {

/// The reading that governs a least-fill station, and the litres to add had it not been read.
struct GoverningReading {
  std::size_t station = 0;
  double litres_without = 0;
};

/// How far an edge that is cut too deep would have to be built out, at every station alike, to be so nowhere: tried on the whole
/// blade, as the option would have it, for what serves a station alone may not where the span is faired. mm; nothing where no
/// edge is cut too deep, and where no such length was found.
struct BuiltOut {
  std::optional<double> leading, trailing;
};

/// One entry per station in each list, in the order of job.stations.
struct Plan {
  job::Job job;  ///< its defaults and, after add_water, those of the water page
  std::vector<section::MeasuredSection> measured;
  std::vector<form::FittedForm> fitted;
  std::vector<target::TargetSection> targets;
  std::vector<fill::StationChange> changes;
  fill::Volumes volumes;
  fill::BladeFigures before, after;
  target::BladeTwist twist;
  std::vector<target::Asymmetry> asymmetry;
  target::MakeOne make_one;
  std::vector<GoverningReading> governing;
  BuiltOut edges_uncut;
  fill::Work work;                      ///< zones, mixes, passes, batches, coats
  flow::Water water;                    ///< before and after; no stations until add_water
  std::vector<Warning> blade_warnings;  ///< of the blade as a whole: fairing, strays, twist, lean
};

/// What the readings alone give, whatever target is asked for: outline and nearest forms of every station.
struct Sections {
  std::vector<section::MeasuredSection> measured;
  std::vector<form::FittedForm> fitted;
};
Outcome<Sections> read_sections(const job::Job& job);

/// The line from sections to litres and blade figures, without twist, strays, asymmetry, water and governing readings.
Outcome<Plan> run_line(job::Job job, Sections sections);
/// The same from the readings on.
Outcome<Plan> run_line(job::Job job);

/// The blade before and after in the water takes about as long as all the rest: worked out beside it where it is asked for, but
/// for a scan, whose readings need not stand in memory meanwhile (add_water).
enum class WaterPage { left_out, worked_out };
/// From a checked job to everything that is reported and drawn, or why not.
Outcome<Plan> make_plan(job::Job job, WaterPage page = WaterPage::left_out);
/// The water of a plan that was made without, and the defaults it used. Once a plan.
void add_water(Plan& plan);

constexpr std::size_t most_by_hand = 2000;  ///< readings (rows); a blade with more was scanned
/// Has it too many readings to hold each against the others, or to ask for what nobody asked for?
bool is_scan(const job::Job& job);
/// What a plan would come to.
struct Otherwise {
  double add = 0;                           ///< litres
  double forward = 0;                       ///< mm: the most that the leading edge is built out by
  bool nose_cut = false, tail_cut = false;  ///< somewhere still deeper than it may be
};
/// If all stations' targets were asked for otherwise; nothing of a scan, where it takes too long, and where that cannot be had.
std::optional<Otherwise> asked_otherwise(const Plan& plan, const std::function<void(job::TargetRequest&)>& change);

/// A section between stations, for drawings.
struct Between {
  section::MeasuredSection measured;
  target::TargetSection target;
  fill::StationChange change;
};
/// Sections at these heights (mm down), named "at 250"; heights of stations are left out. Refused outside the stations.
Outcome<std::vector<Between>> sections_at(const Plan& plan, const std::vector<double>& heights);

}  // namespace fairblade::plan
