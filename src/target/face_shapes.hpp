// Faces that are a form nearly everywhere: bent round a patch that must not be cut, or blended into a hinge edge that
// stays as it is. Verbs: proud_patches, bend_round_patches, share_of_target, blend_leading_edge, leave_leading_edge.
#pragma once
#include <memory>

#include "target/target.hpp"

namespace fairblade::target {

/// Where one face may not be cut: from..to, mm aft of the measured leading edge, and how far the blade, under the coats that
/// go over it, stands proud of the target there.
struct ProudPatch {
  double from = 0, to = 0, height = 0;
  double share = 1;  ///< of the target's ordinates: as many times as thick it would cover the patch
};

/// The proud patches of a face at this station under a target, mm; heights of 0 left out. `coats`: mm a side over the old
/// surface; not counted aft of cut_to, where room for them is made by building the edge out. Nothing is counted ahead of
/// cut_from, where a round nose can only be built out to cover a blunt one, nor where a leading edge is left as it is.
std::vector<ProudPatch> proud_patches(const section::MeasuredSection& measured, const TargetSection& target, Face face,
                                      const job::TargetRequest& request, double coats);

/// Raises both faces of the target over their no-cut patches by plateaus with ramps of continuous curvature, as long as
/// the chord allows (a quintic ramp of length L and height h bends by 5.77 h/L²). Says so in the target's warnings, where it is
/// 0.05 mm or more, and says where the bend is hollow all the same.
void bend_round_patches(const job::Job& job, const section::MeasuredSection& measured, const job::TargetRequest& request,
                        TargetSection& target);

/// How far the blade at x, mm aft of the measured leading edge, becomes the target: 0 where its leading edge is left as it is, 1
/// where it is not, between them as it blends.
double share_of_target(const section::MeasuredSection& measured, const job::TargetRequest& request, double x);
/// The same by TargetSection::left_to.
double share_of_target(double left_to, double x);

/// Leaves the measured leading edge as it is over the first half of the way to keep_from and blends from there into the
/// target with continuous curvature; does nothing where the request leaves none.
void blend_leading_edge(const section::MeasuredSection& measured, const job::TargetRequest& request, TargetSection& target);
/// The same, and says so in the target's warnings.
void leave_leading_edge(const job::Job& job, const section::MeasuredSection& measured, const job::TargetRequest& request,
                        TargetSection& target);

}  // namespace fairblade::target
