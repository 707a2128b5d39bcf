// The thinnest target that the owner's cutting limit allows, which is the one with the least filler. Verbs: curve_of,
// target_of, buildable, needed_thickness, cut_limit, least_fill, added_area.
//
// The limit binds at the readings between 2 % and 92 % of the measured chord, by half-breadth; nose and trailing edge
// are judged apart (edge_cuts.hpp). Every ordinate of the target is linear in its thickness ratio, so the least thickness
// is the greatest of one quotient per reading, and exact.
#pragma once
#include <optional>
#include <vector>

#include "target/target.hpp"

namespace fairblade::target {

constexpr double cut_from = 0.02, cut_to = 0.92;    ///< chord fractions where the limit binds
constexpr double thinnest = 0.02, thickest = 0.30;  ///< thickness ratios that are looked at

/// The shape asked for but its thickness: family, outline, nose and edge.
struct Wish {
  form::Form family;                     ///< thickness_ratio unused
  double leading_edge_x = 0, chord = 0;  ///< mm, of the whole section (skeg and rudder), in the measured frame
  double skeg = 0;                       ///< mm of it that is skeg
  job::LeadingEdgeRadius radius;
  job::TrailingEdgeThickness edge;
};

/// The section curve of a wish at a thickness ratio.
form::SectionCurve curve_of(const Wish& wish, double thickness_ratio);

/// The target of a wish at a thickness ratio: outline and curve alone, no figures.
TargetSection target_of(const Wish& wish, double thickness_ratio);

/// Is the curve one that judge_curve lets pass?
bool buildable(const form::SectionCurve& curve);

struct Need {
  double thickness_ratio = 0;            ///< least that keeps the limit at every reading, and is buildable
  std::optional<std::size_t> governing;  ///< index into MeasuredSection::points; none: fairness or `thinnest` governs
  double without_governing = 0;          ///< the ratio if that place had not been read
  bool possible = false;                 ///< thickness_ratio <= thickest
  /// The greatest ratio that takes no more filler than that one: a blade that is nowhere low is not cut down for nothing.
  double no_more_filler = 0;
};

Need needed_thickness(const section::MeasuredSection& measured, const Wish& wish, const job::TargetRequest& request);
/// Its thickness_ratio alone, which is sooner known.
double least_thickness(const section::MeasuredSection& measured, const Wish& wish, const job::TargetRequest& request);

/// The deepest cut allowed at x (mm aft of the leading edge) of this station: max_removal, or 0 inside a no-cut patch.
double cut_limit(const job::TargetRequest& request, double down, double x);

/// Is a cut beyond the limit by as much as there is to decide about? The limit is kept at the readings; between them a fiftieth
/// of it, or what is printed as nothing, says no more than how the outline was drawn there.
bool cuts_beyond(double depth, double limit);

/// Extensions and family within what the request leaves open, with the least area to add at the thickness needed.
struct LeastFill {
  Wish wish;
  Need need;
  double add_area = 0;  ///< mm²
};
LeastFill least_fill(const section::MeasuredSection& measured, const form::FittedForm& fitted, const job::TargetRequest& request);

/// Wish with the extensions given, mm.
Wish wish_of(const section::MeasuredSection& measured, const form::Form& family, const job::TargetRequest& request,
             double extend_leading, double extend_trailing);

/// Area to add under that wish at that thickness, mm².
double added_area(const section::MeasuredSection& measured, const Wish& wish, double thickness_ratio);

/// What would make a plan possible where none keeps the limit: each alone, each tried. Words with numbers, in the job's
/// unit: "allow 3.4 mm off", "extend the trailing edge by 31 mm", ... Empty when nothing within reason would.
std::vector<std::string> ways_out(const job::Job& job, const section::MeasuredSection& measured, const Wish& wish,
                                  const job::TargetRequest& request);

}  // namespace fairblade::target
