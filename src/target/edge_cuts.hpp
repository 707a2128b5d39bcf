// Cuts at the two edges, which the least-fill limit leaves out: how deep along the normal, and what would avoid them. mm.
// Verbs: judge_edges, judge_rebuilt_edges, with_room_at_edges.
#pragma once
#include "target/least_fill.hpp"

namespace fairblade::target {

/// The wish with its edges built out as far as they have to be for neither to be cut deeper than max_removal, where the request
/// leaves that open ("up_to") and has the room; else as it is. `thickness_ratio`: what the wish is planned at.
Wish with_room_at_edges(const section::MeasuredSection& measured, const job::TargetRequest& request, Wish wish,
                        double thickness_ratio);

/// Is an edge of this target cut deeper than max_removal, by as much as there is to decide about? A nose that stays is not.
bool nose_cut_too_deep(const section::MeasuredSection& measured, const job::TargetRequest& request, const TargetSection& target);
bool tail_cut_too_deep(const section::MeasuredSection& measured, const job::TargetRequest& request, const TargetSection& target);

/// The target's nose_cut and tail_cut, where an edge is cut deeper than max_removal; what would avoid it, if that is asked, is
/// tried as it would be planned: a thickness in mm over the new chord, a least fill as much thicker or thinner as its need then
/// is.
void judge_edges(const job::Job& job, const section::MeasuredSection& measured, const job::TargetRequest& request,
                 const Wish& wish, double thickness_ratio, EdgesAsked asked, TargetSection& target);

/// The same of an edges-only target as it stands, over all that is rebuilt.
void judge_rebuilt_edges(const job::Job& job, const job::Station& station, const section::MeasuredSection& measured,
                         const form::FittedForm& fitted, EdgesAsked asked, TargetSection& target);

}  // namespace fairblade::target
