#include "target/face_shapes.hpp"

#include <algorithm>
#include <cmath>

#include "job/build.hpp"
#include "target/least_fill.hpp"
#include "target/remedies.hpp"

namespace fairblade::target {

using section::MeasuredSection;

namespace {

// 6w⁵ - 15w⁴ + 10w³: 0 to 1 with slope and curvature 0 at both ends; greatest curvature 5.77.
double ramp(double w) {
  w = std::clamp(w, 0.0, 1.0);
  return w * w * w * (10 + w * (-15 + 6 * w));
}
double ramp_slope(double w) {
  if (w <= 0 || w >= 1) return 0;
  return 30 * w * w * (1 - w) * (1 - w);
}

struct Plateau {
  ProudPatch patch;
  double rise_from = 0, fall_to = 0;  // mm
  double at(double x) const {
    if (x < patch.from) return patch.height * ramp((x - rise_from) / (patch.from - rise_from));
    if (x > patch.to) return patch.height * ramp((fall_to - x) / (fall_to - patch.to));
    return patch.height;
  }
  double slope(double x) const {
    if (x < patch.from) return patch.height * ramp_slope((x - rise_from) / (patch.from - rise_from)) / (patch.from - rise_from);
    if (x > patch.to) return -patch.height * ramp_slope((fall_to - x) / (fall_to - patch.to)) / (fall_to - patch.to);
    return 0;
  }
};

// The target as it was, shapes of its own with it, plus plateaus; a copy of it is kept.
class BentFace : public FaceShape {
 public:
  BentFace(TargetSection base, Face face, std::vector<Plateau> plateaus)
      : base_(std::move(base)), face_(face), plateaus_(std::move(plateaus)) {}
  double at(double x) const override {
    double y = base_.half_breadth(face_, x);
    double raised = 0;  // neighbouring plateaus overlap: the higher stands
    for (const Plateau& p : plateaus_) raised = std::max(raised, p.at(x));
    return y + raised;
  }
  double slope(double x) const override {
    double raised = 0;
    double slope = 0;
    for (const Plateau& p : plateaus_) {
      if (p.at(x) <= raised) continue;
      raised = p.at(x);
      slope = p.slope(x);
    }
    return base_.slope(face_, x) + slope;
  }

 private:
  TargetSection base_;
  Face face_;
  std::vector<Plateau> plateaus_;
};

// Measured up to `from`, target from `to` on, the ramp between.
class BlendedFace : public FaceShape {
 public:
  BlendedFace(section::Side side, TargetSection base, Face face, double from, double to)
      : side_(std::move(side)), base_(std::move(base)), face_(face), from_(from), to_(to) {}
  double at(double x) const override {
    const double w = ramp((x - from_) / (to_ - from_));
    if (w >= 1) return base_.half_breadth(face_, x);
    const double own = side_.at(x);
    return w <= 0 ? own : own + w * (base_.half_breadth(face_, x) - own);
  }
  double slope(double x) const override {
    const double w = ramp((x - from_) / (to_ - from_));
    if (w <= 0) return side_.slope(x);
    if (w >= 1) return base_.slope(face_, x);
    const double gap = base_.half_breadth(face_, x) - side_.at(x);
    return side_.slope(x) * (1 - w) + base_.slope(face_, x) * w + gap * ramp_slope((x - from_) / (to_ - from_)) / (to_ - from_);
  }

 private:
  section::Side side_;
  TargetSection base_;
  Face face_;
  double from_, to_;
};

void set_shape(TargetSection& target, Face face, std::shared_ptr<const FaceShape> shape) {
  (face == Face::port ? target.port_shape : target.starboard_shape) = std::move(shape);
}

// Where a leading edge that stays as it is runs into the target; 0 where none stays.
double left_to(const MeasuredSection& measured, const job::TargetRequest& request) {
  if (request.leading_edge != job::LeadingEdgeWork::leave) return 0;
  return request.keep_from.in_mm ? request.keep_from.value : request.keep_from.value * measured.chord;
}

// Is the face hollow (second difference positive) between these places?
bool hollow(const TargetSection& target, Face face, double from, double to) {
  constexpr int steps = 200;
  const double h = (to - from) / steps;
  for (int k = 1; k < steps; ++k) {
    const double x = from + k * h;
    const double bend = target.half_breadth(face, x - h) - 2 * target.half_breadth(face, x) + target.half_breadth(face, x + h);
    if (bend > 1e-7 * target.chord) return true;
  }
  return false;
}

}  // namespace

std::vector<ProudPatch> proud_patches(const MeasuredSection& measured, const TargetSection& target, Face face,
                                      const job::TargetRequest& request, double coats) {
  std::vector<ProudPatch> out;
  for (const job::NoCut& patch : request.no_cut) {
    if (!patch.at(measured.down)) continue;
    ProudPatch proud{std::max({left_to(measured, request), cut_from * measured.chord, patch.x_from}),
                     std::min(measured.chord, patch.x_to)};
    if (proud.to <= proud.from) continue;
    constexpr int steps = 200;
    for (int k = 0; k <= steps; ++k) {
      const double x = proud.from + (proud.to - proud.from) * k / steps;
      const double wanted = target.half_breadth(face, x);
      double stands = measured.side(face).at(x);
      if (x <= cut_to * measured.chord) stands += coats * std::hypot(1, target.slope(face, x));
      proud.height = std::max(proud.height, stands - wanted);
      if (wanted > 0 && x <= cut_to * measured.chord) proud.share = std::max(proud.share, stands / wanted);
    }
    if (proud.height > 1e-6) out.push_back(proud);
  }
  return out;
}

void bend_round_patches(const job::Job& job, const MeasuredSection& measured, const job::TargetRequest& request,
                        TargetSection& target) {
  constexpr double told = 0.05;  // mm
  const TargetSection base = target;
  const double coats = job::coats_over(job).over_old;
  for (const Face face : {Face::port, Face::starboard}) {
    std::vector<Plateau> plateaus;
    for (const ProudPatch& proud : proud_patches(measured, base, face, request, coats)) {
      // The longest ramps that the chord has room for; a patch at an edge goes over it.
      const double left = left_to(measured, request);
      const double room_ahead = left > 0 ? proud.from - left / 2 : proud.from - base.leading_edge_x;
      const double room_aft = base.trailing_edge_x() - proud.to;
      Plateau plateau{proud, proud.from - std::max(room_ahead * 0.95, 1e-6), proud.to + std::max(room_aft, 1e-6)};
      plateaus.push_back(plateau);
      if (proud.height < told) continue;
      target.warnings.push_back({"bent-round-patch", "station " + measured.station,
                                 std::string(section::name_of(face)) + ": the blade" + (coats > 0 ? " under its coats" : "") +
                                     " stands up to " + in_unit(proud.height, job.units) + " proud in the no-cut patch from x " +
                                     in_unit(proud.from, job.units) + " to " + in_unit(proud.to, job.units) +
                                     "; the target is built out round it, from x " + in_unit(plateau.rise_from, job.units) +
                                     " to " + in_unit(plateau.fall_to, job.units)});
    }
    if (plateaus.empty()) continue;
    set_shape(target, face, std::make_shared<BentFace>(base, face, plateaus));
    for (const Plateau& plateau : plateaus) {
      const double from = std::max(plateau.rise_from, base.leading_edge_x + 0.02 * base.chord);
      if (plateau.patch.height < told) continue;
      if (!hollow(target, face, from, plateau.fall_to) || hollow(base, face, from, plateau.fall_to)) continue;
      target.warnings.push_back(
          {"patch-not-fair", "station " + measured.station,
           std::string(section::name_of(face)) + ": no fair curve goes round the no-cut patch at x " +
               in_unit(plateau.patch.from, job.units) + " within this chord: it will show as a slight hump " +
               in_unit(plateau.patch.height, job.units) + " high; a section " +
               in_unit(rounded_up(plateau.patch.share * base.thickness_ratio * base.whole_chord(), job.units), job.units) +
               " thick would cover it, or let " + in_unit(plateau.patch.height, job.units) + " come off there"});
    }
  }
}

double share_of_target(const MeasuredSection& measured, const job::TargetRequest& request, double x) {
  return share_of_target(left_to(measured, request), x);
}
double share_of_target(double left_to, double x) { return left_to > 0 ? ramp(2 * x / left_to - 1) : 1; }

void blend_leading_edge(const MeasuredSection& measured, const job::TargetRequest& request, TargetSection& target) {
  const double to = left_to(measured, request);
  if (!(to > 0)) return;
  const TargetSection base = target;
  for (const Face face : {Face::port, Face::starboard}) {
    set_shape(target, face, std::make_shared<BlendedFace>(measured.side(face), base, face, to / 2, to));
  }
  target.left_to = to;
}

void leave_leading_edge(const job::Job& job, const MeasuredSection& measured, const job::TargetRequest& request,
                        TargetSection& target) {
  blend_leading_edge(measured, request, target);
  const double to = target.left_to;
  if (!(to > 0)) return;
  target.warnings.push_back({"leading-edge-left", "station " + measured.station,
                             "the leading edge stays as it is up to x " + in_unit(to / 2, job.units) +
                                 " and runs into the target by x " + in_unit(to, job.units)});
}

}  // namespace fairblade::target
