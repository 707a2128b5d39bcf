// Cuts at the two edges, which the least-fill limit leaves out: how deep along the normal, and what would avoid them. mm.
// Verbs: nose_cut, tail_cut.
#pragma once
#include <optional>

#include "target/least_fill.hpp"

namespace fairblade::target {

struct EdgeCut {
  double depth = 0;  ///< mm, along the target's normal, deepest at a reading; 0: nothing comes off
  double x = 0;      ///< mm aft of the measured leading edge
  Face face = Face::port;
};

/// Readings ahead of 2 % of the chord, and aft of 92 %. Cuts no deeper than `beyond`, mm, need not be found.
EdgeCut nose_cut(const section::MeasuredSection& measured, const TargetSection& target, double beyond = 0);
EdgeCut tail_cut(const section::MeasuredSection& measured, const TargetSection& target, double beyond = 0);

/// Warnings where an edge is cut deeper than max_removal: how far forward or aft to build, how thick to leave the edge,
/// or how much to let come off, each tried at this thickness. Codes "nose-cut" and "tail-cut".
void judge_edges(const job::Job& job, const section::MeasuredSection& measured, const job::TargetRequest& request,
                 const Wish& wish, double thickness_ratio, TargetSection& target);

}  // namespace fairblade::target
