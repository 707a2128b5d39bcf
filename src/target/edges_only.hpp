// Product: the target of a station whose body is kept and whose edges are rebuilt. Verbs: edges_wish, plan_edges_only.
//
// Between keep_from and keep_to the target is the measured outline, so the change there is zero by definition; the
// edges start from the fair line of the body (kept_body.hpp), and Joints tells the step between the two.
// The nose stands on the centre plane, unless the readings at x = 0 (or, without them, the centre line of the fitted
// form) lie off it by more than reading error makes. The edge face at the trailing edge is centred where the body's
// own mean line runs out, the middle of its two tangents; on the centre plane when that is within the reading error.
#pragma once
#include "target/target.hpp"

namespace fairblade::target {

/// What to rebuild, every value settled, mm. x aft of the measured leading edge.
struct EdgesWish {
  double extend_leading = 0, extend_trailing = 0;
  double keep_from = 0, keep_to = 0;
  double radius = 0, edge = 0;
  bool nose = true, tail = true;  ///< rebuilt; else as measured
};

/// The station's own wish with these extensions. "form": the fitted form's own radius and edge on the measured chord;
/// per cent: of the target's chord. The nose stays for "leave", for a fixed skeg ahead, and when all of it is kept.
EdgesWish edges_wish(const job::Station& station, const section::MeasuredSection& measured, const form::FittedForm& fitted,
                     double extend_leading, double extend_trailing);
/// With the station's own fixed extensions ("up_to" is none).
EdgesWish edges_wish(const job::Station& station, const section::MeasuredSection& measured, const form::FittedForm& fitted);

/// The target with rebuilt edges; or, where no fair curve exists, what to change, to what: each remedy was run. Without
/// `with_remedies` it is refused without words.
Outcome<TargetSection> plan_edges_only(const job::Job& job, const job::Station& station, const section::MeasuredSection& measured,
                                       const form::FittedForm& fitted, const EdgesWish& wish, bool with_remedies = true);
/// The same of the station's own wish.
Outcome<TargetSection> plan_edges_only(const job::Job& job, const job::Station& station, const section::MeasuredSection& measured,
                                       const form::FittedForm& fitted);

}  // namespace fairblade::target
