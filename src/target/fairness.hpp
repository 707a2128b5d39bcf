// Is a section curve one that a yard can build and a flow can follow? If not: the numbers that would make it so.
// Verbs: nose_dips, largest_fair_radius, largest_fair_edge.
#pragma once
#include <optional>

#include "base/fault.hpp"
#include "form/curve.hpp"
#include "job/job.hpp"

namespace fairblade::target {

/// Does the section grow thinner again somewhere ahead of its greatest thickness?
bool nose_dips(const form::SectionCurve& curve);
/// The largest nose radius (mm) with which the nose of this section stays convex, others unchanged.
double largest_fair_radius(const form::SectionCurve& curve, double chord);
/// The largest edge thickness (mm) with which the tail is nowhere hollow, others unchanged.
double largest_fair_edge(const form::SectionCurve& curve, double chord);

/// Refusal when the curve dips, overshoots or flares, or is thinner than its edge; warnings when it is hollow or shows a
/// shoulder. `place`s tell where r, e and t were asked. Appends to `warnings`.
std::optional<Fault> judge_curve(const job::Job& job, const job::Station& station, const form::SectionCurve& curve, double chord,
                                 std::vector<Warning>& warnings);

}  // namespace fairblade::target
