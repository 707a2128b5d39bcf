// Cuts at the two edges, which the least-fill limit leaves out: how deep along the normal, and what would avoid them. mm.
// Verbs: judge_edges.
#pragma once
#include "target/least_fill.hpp"

namespace fairblade::target {

/// Warnings where an edge is cut deeper than max_removal: how far forward or aft to build, how thick to leave the edge,
/// or how much to let come off, each tried at this thickness. Codes "nose-cut" and "tail-cut".
void judge_edges(const job::Job& job, const section::MeasuredSection& measured, const job::TargetRequest& request,
                 const Wish& wish, double thickness_ratio, TargetSection& target);

}  // namespace fairblade::target
