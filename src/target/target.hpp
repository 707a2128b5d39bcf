// Product of the target room: what each section should become. Verbs: plan_targets, plan_target, TargetsAgain,
// stations_stand_alone, greatest_thickness, fill_in_figures.
#pragma once
#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "form/curve.hpp"
#include "form/form.hpp"
#include "section/section.hpp"

namespace fairblade::target {

using section::Face;

/// One face of a target that is not the published form alone: rebuilt edges on a kept body, a face bent round a patch,
/// or a section between two stations. x in the measured frame, between the target's edges.
class FaceShape {
 public:
  FaceShape() = default;
  FaceShape(const FaceShape&) = delete;
  FaceShape& operator=(const FaceShape&) = delete;
  virtual ~FaceShape() = default;
  virtual double at(double x) const = 0;     ///< half-breadth, mm
  virtual double slope(double x) const = 0;  ///< dy/dx
};

/// The reading that keeps a least-fill target from being thinner.
struct Governing {
  Face face = Face::port;
  double x = 0;  ///< mm aft of the measured leading edge
  int line = 0;
  double thickness_ratio_without = 0;  ///< the target's, had that place not been read
};

/// Where a rebuilt edge leaves the kept body, one face: the body's fair line there, mm, and what the outline misses it by.
struct Joint {
  double x = 0;  ///< mm aft of the measured leading edge
  double half_breadth = 0, slope = 0;
  double second = 0;  ///< d²y/dx², 1/mm
  double step = 0;    ///< mm, rebuilt - kept: positive where the rebuilt edge stands proud
};
/// Port, then starboard; an edge that was not rebuilt has none.
struct Joints {
  std::optional<std::array<Joint, 2>> nose, tail;
};

/// An edge that is cut deeper than max_removal: where, and what would avoid it, each tried as it would be planned. mm; rounded up
/// to what is printed, so that it may be typed in again; nothing where no such length does.
struct EdgeCut {
  double depth = 0;  ///< along the target's normal
  double x = 0;      ///< aft of the measured leading edge
  Face face = Face::port;
  std::optional<double> build_out;  ///< forward at the nose, aft at the tail
  std::optional<double> thickness;  ///< of the trailing edge
  std::optional<double> radius;     ///< of the leading edge
  std::optional<double> allow;      ///< another max_removal
};

/// By how much fairing along the span moved a station, mm: greatest thickness, leading edge (forward positive), trailing
/// edge (aft positive).
struct Pull {
  double thickness = 0, leading_edge = 0, trailing_edge = 0;
};

/// The target of one station. x in the measured section's frame: mm aft of the *measured* leading edge, so that a
/// leading edge built forward stands at negative x.
struct TargetSection {
  std::string station;
  double down = 0;
  std::optional<double> ahead;  ///< mm the target's leading edge stands ahead of the stock
  double leading_edge_x = 0;    ///< mm; minus the extension
  double chord = 0;             ///< mm
  double skeg = 0;              ///< mm of the curve that lies ahead, in the fixed skeg; it is not planned
  double left_to = 0;           ///< x, mm, by which a leading edge that stays as it is has run into the target; 0 where none does
  form::SectionCurve
      curve;  ///< unit chord of skeg and rudder together, the same on both sides; the shapes below win where they are set
  std::shared_ptr<const FaceShape> port_shape, starboard_shape;
  double leading_edge_radius = 0, trailing_edge_thickness = 0;  ///< mm; radius 0 behind a skeg
  double max_thickness_at = 0;                                  ///< chord fraction
  double thickness_ratio = 0;                                   ///< of skeg and rudder together
  std::optional<Joints> joints;                                 ///< edges-only only
  std::optional<EdgeCut> nose_cut, tail_cut;                    ///< where an edge is cut too deep
  std::optional<Governing> governing;                           ///< least-fill only
  Pull pull;
  double area = 0, girth = 0;  ///< mm², mm (both faces and the edge face)
  std::vector<Warning> warnings;

  const FaceShape* shape(Face face) const { return (face == Face::port ? port_shape : starboard_shape).get(); }
  double whole_chord() const { return chord + skeg; }
  double trailing_edge_x() const { return leading_edge_x + chord; }
  double half_breadth(Face face, double x) const;  ///< mm; 0 outside the target's chord
  double slope(Face face, double x) const;         ///< dy/dx
  /// Corners of the target's outline, mm, from the leading edge along port to the edge and back along starboard;
  /// within 0.005 mm of the curve.
  std::vector<Point> outline() const;
};

/// Of what is planned, mm: behind a skeg the rudder's own.
double greatest_thickness(const TargetSection& target);
/// Figures read off the curve: nose, edge, place and ratio of greatest thickness, area, girth.
void fill_in_figures(TargetSection& target);

/// The targets of all stations, or why there are none. What concerns the whole blade is appended to `warnings`.
Outcome<std::vector<TargetSection>> plan_targets(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                                 const std::vector<form::FittedForm>& fitted, std::vector<Warning>& warnings);
/// How much is asked of their edges: nothing; whether and how deep they are cut; and the ways round, which take longer than all
/// else.
enum class EdgesAsked { nothing, cuts, ways_round };
/// The same, of which nothing is told.
Outcome<std::vector<TargetSection>> plan_targets(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                                 const std::vector<form::FittedForm>& fitted,
                                                 EdgesAsked edges = EdgesAsked::nothing);

/// The targets of one blade asked for again and again, each time with another reading of one station. Nothing is told of them:
/// no warnings, no faults.
class TargetsAgain {
 public:
  /// All must outlive this.
  TargetsAgain(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<form::FittedForm>& fitted);
  /// As plan_targets has them where `measured` and `fitted` have since been changed at station k alone, without the warnings of
  /// edges cut; nothing where it would refuse.
  std::optional<std::vector<TargetSection>> with(std::size_t k) const;

 private:
  const job::Job& job_;
  const std::vector<section::MeasuredSection>& measured_;
  const std::vector<form::FittedForm>& fitted_;
  std::shared_ptr<const std::vector<struct Draft>> drafts_;  // each station by itself
};

/// Does each station's target follow from its own readings, whatever the others are? Then plan_target gives it.
bool stations_stand_alone(const job::Job& job);
Outcome<TargetSection> plan_target(const job::Job& job, const job::Station& station, const section::MeasuredSection& measured,
                                   const form::FittedForm& fitted);

}  // namespace fairblade::target
