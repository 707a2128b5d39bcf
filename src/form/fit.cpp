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
double scale_of(const PlainFit& fit, double floor) {
  std::vector<double> sizes;
  sizes.reserve(fit.distances.size());
  for (const Distance& d : fit.distances) sizes.push_back(d.value);
  return robust_scale(sizes, floor);
}

// One step on (t, shift, skew) from the distances; returns the greatest change, or nothing where there is no such step.
// Finds the new distances. `weight` of a miss pulls; `bend`, weight or slope of weight times miss, holds against it.
template <class Weight, class Bend>
std::optional<double> step(const std::vector<Sample>& samples, PlainFit& fit, bool centred, const Weight& weight,
                           const Bend& bend) {
  Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
  Eigen::Vector3d right = Eigen::Vector3d::Zero();
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const Distance& d = fit.distances[k];
    const double side = centred ? 0 : samples[k].sign * d.cosine;
    const Eigen::Vector3d row(d.cosine * plain_form(d.u), side, side * (d.u * d.u - 0.5));
    normal += bend(d.value) * row * row.transpose();
    right += weight(d.value) * d.value * row;
  }
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
  std::vector<Eigen::Vector3d> rows;
  rows.reserve(samples.size());
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const Distance& d = fit.distances[k];
    const double side = centred ? 0 : samples[k].sign * d.cosine;
    rows.emplace_back(d.cosine * plain_form(d.u), side, side * (d.u * d.u - 0.5));
    bread += tukey_slope(d.value, fit.scale) * rows.back() * rows.back().transpose();
  }
  if (centred) bread.bottomRightCorner<2, 2>() = Eigen::Matrix2d::Identity();
  const Eigen::LDLT<Eigen::Matrix3d> solver(bread);
  if (solver.info() != Eigen::Success || !solver.isPositive()) return -1;
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const double r = fit.distances[k].value;
    const double psi = tukey_weight(r, fit.scale) * r;
    const double leverage = std::min(0.9, std::max(0.0, tukey_weight(r, fit.scale) * rows[k].dot(solver.solve(rows[k]))));
    filling += psi * psi / (1 - leverage) * rows[k] * rows[k].transpose();
  }
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
    const auto weight = [&](double r) { return tukey_weight(r, fit.scale); };
    const auto slope = [&](double r) { return tukey_slope(r, fit.scale); };
    double last = std::numeric_limits<double>::infinity();
    bool close = false;  // then a few of Newton's steps do where the weights alone would take twenty
    for (int k = 0; k < 40; ++k) {
      auto moved = close ? step(samples, fit, centred, weight, slope) : std::nullopt;
      const bool newton = moved.has_value();
      if (!moved) moved = step(samples, fit, centred, weight, weight);
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
    const double reach = scale_of(fit, floor);
    const auto weight = [&](double r) { return 1 / std::max(std::abs(r), 0.3 * reach); };
    if (step(some, fit, centred, weight, weight).value_or(0) < 1e-7) break;
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

void judge_readings(const MeasuredSection& measured, const PlainFit& fit, double reading_error, FittedForm& out) {
  const double c = measured.chord + measured.skeg;
  const SectionCurve curve{out.form};
  const double scale = fit.scale * c;
  const double normal_limit = std::max(tukey_reach * scale, 4 * reading_error);
  const double half_limit = std::max(6 * scale, 6 * reading_error);
  std::size_t sample = 0;
  for (const auto& point : measured.points) {
    const double sign = section::sign_of(point.face);
    const double fraction = (point.x + measured.skeg) / c;
    const double along = sign * fit.centre.at(fraction) * c;
    const Residual here{point.half_breadth - c * curve.at(fraction) - along, point.x, point.face, point.line};
    if ((measured.thickness_only || measured.one_side_only) && point.face == Face::starboard) continue;
    const double square_to_it = fit.distances[sample++].value * c, normal = std::abs(square_to_it);
    if (normal > std::abs(out.worst.residual)) out.worst = {square_to_it, point.x, point.face, point.line};
    // A leading edge worn flat reads alike on both sides: that is the blade, not a slip of one reading.
    const Face other = point.face == Face::port ? Face::starboard : Face::port;
    const bool worn = measured.skeg == 0 && point.x < 0.01 * c &&
                      std::abs(measured.side(other).at(point.x) - point.half_breadth) < 3 * reading_error;
    if (normal > normal_limit || (std::abs(here.residual) > half_limit && !worn)) out.suspects.push_back(here);
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
