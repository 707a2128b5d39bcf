// Product: the section at each stage of the work: the target less the coats still to come. Verbs: stages_of,
// on_pages, template_kinds, faults_of, stage_section, warnings_of, rib_of. mm.
//
// The target is the finished surface, so at an earlier stage the blade stands inside it, along the normal, by the build
// of what is still to come (a buffer with mitred joins, base/geometry). Coats wrap the edge face: it retracts by as
// much, its corners stay square, and its width becomes e - 2d/cos(beta) + 2d tan(beta). A leading edge that is left as it is has
// no room made for coats: there every stage is the target itself.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "fill/loft.hpp"
#include "job/job.hpp"
#include "target/target.hpp"

namespace fairblade::fill {

enum class StageKind { bare, glassed, final };

struct Stage {
  StageKind kind = StageKind::final;
  double to_come = 0;   ///< mm a side, of coats over the filler that are not on yet
  std::string surface;  ///< what the template lies against: "filled, before glass", "painted"; empty without coats
};
/// "bare", "glassed", "final": as in file names.
const char* name_of(StageKind kind);

/// In the order of the work: bare where there are coats over the filler, glassed where paint follows glass, final.
std::vector<Stage> stages_of(const job::Job& job);

/// Does a template of that kind go onto pages? As "pages_of" says; else those of the first stage, at which the filler is
/// shaped, and nothing that stands off it.
bool on_pages(const job::Job& job, StageKind kind, bool stands_off);
/// The kinds of templates that have pages, or those that have files alone: "glassed", "clearance"; as in the job file.
std::vector<std::string> template_kinds(const job::Job& job, bool with_pages);
/// Pages asked for of a stage that this job's coats do not have.
std::vector<Fault> faults_of(const job::Job& job);

struct StageSection {
  Stage stage;
  double stand_off = 0;                            ///< mm outside that surface: 0, or the gap of a clearance template
  double leading_edge_x = 0, trailing_edge_x = 0;  ///< mm, in the measured frame
  double edge_width = 0;                           ///< mm, of the square edge
  /// From the leading edge to the trailing edge; x in the measured frame, y the half-breadth, positive outwards on
  /// either face. Within 0.005 mm of the curve.
  Polyline port, starboard;

  const Polyline& line(target::Face face) const { return face == target::Face::port ? port : starboard; }
};

/// The target moved along its normals by stand_off - to_come. Nothing where it closes up: coats thicker than the blade.
std::optional<StageSection> stage_section(const target::TargetSection& target, const Stage& stage, double stand_off = 0);

/// The stages, besides the last, at which a station has no such section: it gets no template of them, and cannot be read again
/// then.
std::vector<Warning> warnings_of(const job::Job& job, const std::vector<target::TargetSection>& targets);

/// It as a rib of the loft, at fractions of its own chord.
Rib rib_of(const StageSection& section, double down, const std::vector<double>& fractions);

}  // namespace fairblade::fill
