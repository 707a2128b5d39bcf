#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "base/plain_form.hpp"
#include "form/curve.hpp"
#include "form/fit_modified.hpp"
#include "form/form.hpp"
#include "form/normal_distance.hpp"
#include "form/robust.hpp"

namespace fairblade::form {
namespace {

using section::Face;
using section::MeasuredSection;

struct PlainCurve {
  double at(double u) const { return plain_form(u); }
  double slope(double u) const { return plain_form_slope_u(u); }
  double second(double u) const { return plain_form_second_u(u); }
};

std::vector<Sample> samples_of(const MeasuredSection& measured) {
  const bool one = measured.thickness_only || measured.one_side_only;  // the second side is a copy
  const double whole = measured.chord + measured.skeg;
  std::vector<Sample> out;
  out.reserve(measured.points.size());
  for (const auto& point : measured.points) {
    if (one && point.face == Face::starboard) continue;
    const double sign = section::sign_of(point.face);
    out.push_back({(point.x + measured.skeg) / whole, sign * point.half_breadth / whole, sign});
  }
  return out;
}

struct PlainFit {
  double thickness = 0, error = -1, scale = 0;
  CentreLine centre;
  std::vector<Distance> distances;  // of the samples, at these parameters
};

void find_distances(const std::vector<Sample>& samples, PlainFit& fit) {
  find_distances(samples, PlainCurve{}, fit.thickness, fit.centre, fit.distances);
}

/// What is weighed: a miss, and how it falls with (t, shift, skew).
struct Row {
  Eigen::Vector3d gradient;
  double miss = 0;
};
Row row_of(const Sample& sample, const Distance& d, bool centred) {
  const double side = centred ? 0 : sample.sign * d.cosine;
  return {{d.cosine * plain_form(d.u), side, side * (d.u * d.u - 0.5)}, d.value};
}

/// How misses are weighed. By Tukey's loss at a scale:
struct Tukey {
  double scale;
  double loss(double r) const { return tukey_loss(r, scale); }
  double weight(double r) const { return tukey_weight(r, scale); }
  double slope(double r) const { return tukey_slope(r, scale); }
};
/// By their size, those that are small against `reach` alike.
struct Absolute {
  double reach;
  double loss(double r) const { return std::abs(r); }
  double weight(double r) const { return 1 / std::max(std::abs(r), 0.3 * reach); }
  double slope(double r) const { return weight(r); }
};

/// Calls use(Row) for each. A place read on both faces is two rows, one for each face, or sum and difference of both over √2,
/// which stray as much: whichever has the smaller loss. A slip is on one face. A nose worn flat or an edge squared is out of
/// the form on both alike: the sum tells that, and the difference still tells the centre line. (Weighed face by face one face's
/// tail was kept and the other's set aside, and the fit leant over.)
template <class How, class Use>
void each_row(const std::vector<Sample>& samples, const PlainFit& fit, bool centred, const How& how, const Use& use) {
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const Row one = row_of(samples[k], fit.distances[k], centred);
    const bool both = k + 1 < samples.size() && samples[k].x == samples[k + 1].x && samples[k].sign != samples[k + 1].sign;
    if (!both) {
      use(one);
      continue;
    }
    ++k;
    const Row other = row_of(samples[k], fit.distances[k], centred);
    const double half = 1 / std::numbers::sqrt2, sum = half * (one.miss + other.miss),
                 difference = half * (one.miss - other.miss);
    if (how.loss(sum) + how.loss(difference) < how.loss(one.miss) + how.loss(other.miss)) {
      use({half * (one.gradient + other.gradient), sum});
      use({half * (one.gradient - other.gradient), difference});
    } else {
      use(one);
      use(other);
    }
  }
}

double scale_of(const PlainFit& fit, double floor) {
  std::vector<double> sizes;
  sizes.reserve(fit.distances.size());
  for (const Distance& d : fit.distances) sizes.push_back(d.value);
  return robust_scale(sizes, floor);
}

// One step on (t, shift, skew) from the distances; returns the greatest change, or nothing where there is no such step.
// Finds the new distances. Newton's: by the slope of weight times miss; else by the weights alone.
template <class How>
std::optional<double> step(const std::vector<Sample>& samples, PlainFit& fit, bool centred, const How& how, bool newton) {
  Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
  Eigen::Vector3d right = Eigen::Vector3d::Zero();
  each_row(samples, fit, centred, how, [&](const Row& row) {
    normal += (newton ? how.slope(row.miss) : how.weight(row.miss)) * row.gradient * row.gradient.transpose();
    right += how.weight(row.miss) * row.miss * row.gradient;
  });
  if (centred) normal.bottomRightCorner<2, 2>() = Eigen::Matrix2d::Identity();
  const Eigen::LDLT<Eigen::Matrix3d> solver(normal);
  const Eigen::Vector3d move = solver.solve(right);
  if (solver.info() != Eigen::Success || !solver.isPositive() || !move.allFinite()) return std::nullopt;
  fit.thickness += move[0];
  fit.centre.shift += move[1];
  fit.centre.skew += move[2];
  find_distances(samples, fit);
  return move.cwiseAbs().maxCoeff();
}

// Sandwich: A⁻¹ B A⁻¹ with A from psi', B from psi² / (1 - h), h the leverage (small samples).
double standard_error(const std::vector<Sample>& samples, const PlainFit& fit, bool centred) {
  Eigen::Matrix3d bread = Eigen::Matrix3d::Zero();
  Eigen::Matrix3d filling = Eigen::Matrix3d::Zero();
  const Tukey how{fit.scale};
  each_row(samples, fit, centred, how,
           [&](const Row& row) { bread += how.slope(row.miss) * row.gradient * row.gradient.transpose(); });
  if (centred) bread.bottomRightCorner<2, 2>() = Eigen::Matrix2d::Identity();
  const Eigen::LDLT<Eigen::Matrix3d> solver(bread);
  if (solver.info() != Eigen::Success || !solver.isPositive()) return -1;
  each_row(samples, fit, centred, how, [&](const Row& row) {
    const double weight = how.weight(row.miss), psi = weight * row.miss;
    const double leverage = std::min(0.9, std::max(0.0, weight * row.gradient.dot(solver.solve(row.gradient))));
    filling += psi * psi / (1 - leverage) * row.gradient * row.gradient.transpose();
  });
  const Eigen::Vector3d first = solver.solve(Eigen::Vector3d::UnitX());
  const double variance = first.dot(filling * first);
  return variance >= 0 ? std::sqrt(variance) : -1;
}

double first_thickness(const std::vector<Sample>& samples) {
  std::vector<double> ratios;
  for (const Sample& p : samples) {
    if (p.x > 0.02 && p.x < 0.95) ratios.push_back(p.sign * p.y / plain_form(std::sqrt(p.x)));
  }
  if (ratios.empty()) {
    for (const Sample& p : samples) {
      if (p.x > 0) ratios.push_back(p.sign * p.y / plain_form(std::sqrt(p.x)));
    }
  }
  return ratios.empty() ? 0.12 : std::max(0.005, median(std::move(ratios)));
}

/// Three times over, as the scale settles: steps by Tukey's weights, and Newton's own once they are close.
void settle(const std::vector<Sample>& samples, PlainFit& fit, bool centred, double floor) {
  constexpr double settled = 1e-12, roughly = 1e-8;  // the latter while the scale itself is not settled
  for (int round = 0; round < 3; ++round) {
    fit.scale = scale_of(fit, floor);
    const Tukey how{fit.scale};
    double last = std::numeric_limits<double>::infinity();
    bool close = false;  // then a few of Newton's steps do where the weights alone would take twenty
    for (int k = 0; k < 40; ++k) {
      auto moved = close ? step(samples, fit, centred, how, true) : std::nullopt;
      const bool newton = moved.has_value();
      if (!moved) moved = step(samples, fit, centred, how, false);
      if (!moved) break;
      const double left = newton ? *moved * *moved / last : *moved;  // Newton's next step, if it shrinks as this one did
      if (left < (round < 2 ? roughly : settled)) break;
      close = *moved < 1e-3 && *moved < last;
      last = *moved;
    }
  }
}

// The MAD of some thirty readings is itself uncertain by a sixth: below most of the owner's own reading error it is
// not believed, which also serves exact data, whose MAD is 0. `reading_error` in chords.
PlainFit fit_plain(const std::vector<Sample>& samples, bool centred, double reading_error) {
  const double floor = std::max(1e-10, 0.8 * reading_error);
  PlainFit fit;
  fit.thickness = first_thickness(samples);
  // Least absolute misses first (weights 1/|r|), so that one slip cannot choose the start; some of the samples tell it.
  const std::vector<Sample> some = spread(samples);
  find_distances(some, fit);
  for (int k = 0; k < 20; ++k) {
    if (step(some, fit, centred, Absolute{scale_of(fit, floor)}, false).value_or(0) < 1e-7) break;
  }
  if (some.size() < samples.size()) {
    settle(some, fit, centred, floor);
    fit.distances.clear();
    find_distances(samples, fit);
  }
  settle(samples, fit, centred, floor);
  return fit;
}

bool enough_for_error(const MeasuredSection& measured) {
  std::size_t port = 0;
  std::size_t starboard = 0;
  for (const auto& point : measured.points) ++(point.face == Face::port ? port : starboard);
  return port >= 4 && starboard >= 4;
}

/// The readings of one section against the form that was fitted to them, mm.
class Misses {
 public:
  Misses(const MeasuredSection& measured, const PlainFit& fit, const Form& form)
      : measured_(measured), chord_(measured.chord + measured.skeg), centre_(fit.centre), curve_(form) {
    for (const auto& point : measured.points) {
      residuals_.push_back({stands_out(point.face, point.x, point.half_breadth), point.x, point.face, point.line});
    }
  }
  const Residual& operator[](std::size_t k) const { return residuals_[k]; }

  /// What a neighbour shares is the blade: a slip is of one reading. So is what an edge has on both faces alike, worn flat or
  /// squared.
  bool is_blade(std::size_t k, double slack) const {
    const Residual& here = residuals_[k];
    const Face other = here.face == Face::port ? Face::starboard : Face::port;
    const bool copied = measured_.thickness_only || measured_.one_side_only;  // alike whatever was read
    const double breadth = measured_.side(here.face).at(here.x), across = measured_.side(other).at(here.x);
    const double opposite = stands_out(other, here.x, across);
    // (Of a lopsided blade one face's edge is out further than the other's.)
    const bool alike = !copied && (std::abs(here.residual - opposite) < slack || opposite / here.residual > 0.5);
    const bool nose = measured_.skeg == 0 && here.x <= 0, edge = nose || here.x >= measured_.chord;
    const double share = alike ? 1.0 / 3 : copied && edge ? 1.0 / 5 : 1.0 / 2;  // an edge worn flat stands out most at its end
    const bool as_broad = !copied && across > breadth / 2;  // at an edge, where a lopsided blade's centre line is to one side
    constexpr std::size_t behind = 1, before = static_cast<std::size_t>(-1);
    return (edge && (alike || as_broad)) || shared_by_next(k, before, share) || shared_by_next(k, behind, share);
  }

 private:
  /// Does the next reading of the same face stand out the same way, by more than that share? Before the first index none is left.
  bool shared_by_next(std::size_t k, std::size_t step, double share) const {
    for (std::size_t i = k + step; i < residuals_.size(); i += step) {
      if (residuals_[i].face == residuals_[k].face) return residuals_[i].residual / residuals_[k].residual > share;
    }
    return false;
  }
  double stands_out(Face face, double x, double half_breadth) const {
    const double fraction = (x + measured_.skeg) / chord_;
    return half_breadth - chord_ * curve_.at(fraction) - section::sign_of(face) * centre_.at(fraction) * chord_;
  }

  const MeasuredSection& measured_;
  double chord_;
  CentreLine centre_;
  SectionCurve curve_;
  std::vector<Residual> residuals_;  // of measured.points
};

void judge_readings(const MeasuredSection& measured, const PlainFit& fit, double reading_error, FittedForm& out) {
  const double c = measured.chord + measured.skeg;
  const double scale = fit.scale * c;
  const double normal_limit = std::max(tukey_reach * scale, 4 * reading_error);
  const double half_limit = std::max(6 * scale, 6 * reading_error);
  const Misses misses(measured, fit, out.form);
  std::size_t sample = 0;
  for (std::size_t k = 0; k < measured.points.size(); ++k) {
    const Residual& here = misses[k];
    if ((measured.thickness_only || measured.one_side_only) && here.face == Face::starboard) continue;
    const double square_to_it = fit.distances[sample++].value * c, normal = std::abs(square_to_it);
    if (normal > std::abs(out.worst.residual)) out.worst = {square_to_it, here.x, here.face, here.line};
    const bool far = normal > normal_limit || std::abs(here.residual) > half_limit;
    if (far && !misses.is_blade(k, 4 * reading_error)) out.suspects.push_back(here);
  }
  // Many strays are not slips but another shape.
  if (out.suspects.size() * 6 > measured.points.size()) out.suspects.clear();
  std::stable_sort(out.suspects.begin(), out.suspects.end(),
                   [](const Residual& a, const Residual& b) { return std::abs(a.residual) > std::abs(b.residual); });
}

}  // namespace

FittedForm fit_form(const MeasuredSection& measured, double reading_error) {
  const std::vector<Sample> samples = samples_of(measured);
  const bool centred = measured.thickness_only || measured.one_side_only;
  const double c = measured.chord + measured.skeg;
  const PlainFit fit = fit_plain(samples, centred, (measured.thickness_only ? 0.5 : 1.0) * reading_error / c);
  FittedForm out;
  out.form.thickness_ratio = std::max(1e-3, fit.thickness);
  if (enough_for_error(measured)) out.thickness_ratio_error = standard_error(samples, fit, centred);
  else out.thickness_ratio_error = -1;
  double square = 0;
  std::vector<double> sizes;
  for (const Distance& d : fit.distances) {
    square += d.value * d.value;
    sizes.push_back(std::abs(d.value) * c);
  }
  out.rms = c * std::sqrt(square / static_cast<double>(samples.size()));
  out.typical = median(std::move(sizes));
  out.centre_shift = fit.centre.shift * c;
  out.skew_degrees = std::atan(fit.centre.skew) * 180 / std::numbers::pi;
  judge_readings(measured, fit, reading_error, out);
  const ModifiedFit modified = fit_modified(samples, out.form.thickness_ratio, fit.centre, centred, reading_error / c);
  out.modified = modified.form;
  out.modified_rms = modified.rms * c;
  return out;
}

}  // namespace fairblade::form
