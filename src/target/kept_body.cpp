#include "target/kept_body.hpp"

#include <math.h>  // Boost 1.74 calls ::isnan without it

#include <Eigen/Dense>
#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <utility>

#include "form/curve.hpp"

namespace fairblade::target {
namespace {

using section::Face;

constexpr double least_noise = 1e-6;  // mm: exact data is followed to this

const form::SectionCurve& unit_form() {
  static const form::SectionCurve curve{form::Form{1.0, 6, 0}};
  return curve;
}

double root_mean_square(const Eigen::VectorXd& v) { return std::sqrt(v.squaredNorm() / static_cast<double>(v.size())); }

// The largest penalty, by halving its logarithm, whose solution still misses the data by no more than `noise`.
template <class Misses>
double largest_penalty(double low, double high, double noise, const Misses& misses) {
  double fair = std::log(low), unfair = std::log(high);
  for (int k = 0; k < 45; ++k) {
    const double middle = (fair + unfair) / 2;
    (misses(std::exp(middle)) <= noise ? fair : unfair) = middle;
  }
  return std::exp(fair);
}

double cube(double d) { return d * d * d; }

using Reading = std::pair<double, double>;  // x, half-breadth

// A scan's thousands become the means of neighbours, eighty to a face: the spline through n places takes n³ steps, and a
// yard reads fourteen.
std::vector<Reading> means_of(const std::vector<Reading>& all) {
  constexpr std::size_t most = 80;
  if (all.size() <= most) return all;
  std::vector<Reading> out(most);
  for (std::size_t bin = 0; bin < most; ++bin) {
    const std::size_t first = bin * all.size() / most, next = (bin + 1) * all.size() / most;
    for (std::size_t k = first; k < next; ++k) {
      out[bin].first += all[k].first / static_cast<double>(next - first);
      out[bin].second += all[k].second / static_cast<double>(next - first);
    }
  }
  return out;
}

}  // namespace

KeptBody::KeptBody(const section::MeasuredSection& measured, const form::FittedForm& fitted, double reading_error, double from,
                   double to)
    : chord_(measured.chord + measured.skeg),
      skeg_(measured.skeg),
      from_(from),
      to_(to),
      middle_((from + to) / 2),
      half_(std::max((to - from) / 2, 1e-3)),
      thickness_(fitted.form.thickness_ratio),
      shift_(fitted.centre_shift),
      lean_(std::tan(fitted.skew_degrees * std::numbers::pi / 180)) {
  gather(measured, fitted, Face::port);
  gather(measured, fitted, Face::starboard);
  noise_ = std::max(least_noise, std::min(reading_error, own_noise()));
  for (Residual& face : faces_) smooth(face);
}

double KeptBody::fitted_at(Face face, double x) const {
  const double centre = shift_ + lean_ * (x + skeg_ - chord_ / 2);
  return chord_ * thickness_ * unit_form().at(place(x)) + section::sign_of(face) * centre;
}

std::array<double, 3> KeptBody::basis(double x) const {
  return {1.0, (x - middle_) / half_, 2 * unit_form().at(place(x))};  // each about 1 mm per mm
}

void KeptBody::gather(const section::MeasuredSection& measured, const form::FittedForm& fitted, Face face) {
  const double near = 0.01 * chord_;
  std::vector<double> suspects;
  for (const form::Residual& one : fitted.suspects) {
    if (one.face == face) suspects.push_back(one.x);
  }
  std::sort(suspects.begin(), suspects.end());
  const auto suspect = [&](double x) { return std::binary_search(suspects.begin(), suspects.end(), x); };
  std::vector<Reading> inside;
  std::optional<Reading> before, after;  // the next ones outside; nose and edge themselves say nothing about the body
  bool at_from = false, at_to = false;   // an end that lies on a reading
  for (const auto& point : measured.points) {
    if (point.face != face || suspect(point.x)) continue;
    const Reading reading{point.x, point.half_breadth};
    if (point.x < from_ - near / 5) {
      if (place(point.x) > 0.02) before = reading;
    } else if (point.x > to_ + near / 5) {
      if (!after && place(point.x) < 0.98) after = reading;
    } else {
      inside.push_back(reading);
      at_from = at_from || point.x <= from_ + near;
      at_to = at_to || point.x >= to_ - near;
    }
  }
  inside = means_of(inside);
  if (before && !at_from) inside.insert(inside.begin(), *before);
  if (after && !at_to) inside.push_back(*after);
  Residual& out = faces_[face == Face::port ? 0 : 1];
  for (const auto& [x, y] : inside) {
    out.x.push_back(x);
    out.y.push_back(y - fitted_at(face, x));
  }
}

double KeptBody::own_noise() const {
  double square = 0;
  int count = 0;
  for (const Residual& face : faces_) {
    for (std::size_t k = 0; k + 3 < face.x.size(); ++k) {
      Eigen::Matrix<double, 4, 3> shapes;
      Eigen::Vector4d values;
      for (std::size_t i = 0; i < 4; ++i) {
        const auto row = basis(face.x[k + i]);
        const auto at = static_cast<Eigen::Index>(i);
        for (std::size_t j = 0; j < 3; ++j) shapes(at, static_cast<Eigen::Index>(j)) = row[j];
        values[at] = face.y[k + i];
      }
      const Eigen::HouseholderQR<Eigen::Matrix<double, 4, 3>> factors(shapes);
      const Eigen::Vector4d contrast = factors.householderQ() * Eigen::Vector4d::UnitW();
      square += std::pow(contrast.dot(values), 2);
      ++count;
    }
  }
  if (count == 0) return std::numeric_limits<double>::infinity();  // too few to tell
  // So few contrasts are often small by chance: believed is what they exceed nine times in ten.
  const double low = boost::math::quantile(boost::math::chi_squared(count), 0.1);
  return std::sqrt(square / low);
}

void KeptBody::smooth(Residual& face) const {
  if (face.x.empty()) return;
  const Eigen::Map<const Eigen::VectorXd> y(face.y.data(), static_cast<Eigen::Index>(face.y.size()));
  if (root_mean_square(y) <= noise_) return;
  if (!smooth_by_drift(face) && face.x.size() > 3) smooth_by_spline(face);
}

// True when shift, lean and form alone come within the noise.
bool KeptBody::smooth_by_drift(Residual& face) const {
  const auto n = static_cast<Eigen::Index>(face.x.size());
  Eigen::MatrixX3d h(n, 3);
  for (Eigen::Index k = 0; k < n; ++k) {
    const auto row = basis(face.x[static_cast<std::size_t>(k)]);
    h.row(k) << row[0], row[1], row[2];
  }
  const Eigen::Map<const Eigen::VectorXd> y(face.y.data(), n);
  const Eigen::Matrix3d normal = h.transpose() * h;
  const Eigen::Vector3d right = h.transpose() * y;
  const auto solved = [&](double penalty) {
    return Eigen::Vector3d(Eigen::LDLT<Eigen::Matrix3d>(normal + penalty * Eigen::Matrix3d::Identity()).solve(right));
  };
  const auto misses = [&](double penalty) { return root_mean_square(y - h * solved(penalty)); };
  const double low = 1e-12 * normal.trace();
  const bool enough = misses(low) <= noise_;
  // Data without noise of its own is followed all the way, not only to within `least_noise`.
  const bool shrink = enough && noise_ > least_noise;
  const Eigen::Vector3d drift = solved(shrink ? largest_penalty(low, 1e6 * normal.trace(), noise_, misses) : low);
  face.drift = {drift[0], drift[1], drift[2]};
  return enough;
}

// Cubic smoothing spline as radial functions |d|³, its null space (shift, lean) and the form unpenalised:
// [K + penalty I, H; H' 0] [bend; drift] = [y; 0], which leaves penalty · bend unmet.
void KeptBody::smooth_by_spline(Residual& face) const {
  const auto n = static_cast<Eigen::Index>(face.x.size());
  Eigen::MatrixXd system = Eigen::MatrixXd::Zero(n + 3, n + 3);
  Eigen::VectorXd right = Eigen::VectorXd::Zero(n + 3);
  for (Eigen::Index k = 0; k < n; ++k) {
    const double x = face.x[static_cast<std::size_t>(k)];
    const auto row = basis(x);
    for (Eigen::Index j = 0; j < n; ++j) system(k, j) = cube(std::abs(x - face.x[static_cast<std::size_t>(j)]) / half_);
    for (Eigen::Index j = 0; j < 3; ++j) system(k, n + j) = system(n + j, k) = row[static_cast<std::size_t>(j)];
    right[k] = face.y[static_cast<std::size_t>(k)];
  }
  const auto solved = [&](double penalty) {
    Eigen::MatrixXd now = system;
    now.topLeftCorner(n, n).diagonal().array() += penalty;
    return Eigen::VectorXd(now.partialPivLu().solve(right));
  };
  const auto misses = [&](double penalty) { return penalty * root_mean_square(solved(penalty).head(n)); };
  const Eigen::VectorXd found = solved(largest_penalty(1e-9, 1e4, noise_, misses));
  if (!found.allFinite()) return;
  face.bend.assign(found.data(), found.data() + n);
  for (std::size_t j = 0; j < 3; ++j) face.drift[j] = found[n + static_cast<Eigen::Index>(j)];
}

BodyPoint KeptBody::at(Face face, double x) const {
  const Residual& left = of(face);
  const double share = thickness_ + 2 * left.drift[2] / chord_;
  const double sign = section::sign_of(face);
  BodyPoint out;
  out.half_breadth = chord_ * share * unit_form().at(place(x)) + sign * (shift_ + lean_ * (x + skeg_ - chord_ / 2)) +
                     left.drift[0] + left.drift[1] * (x - middle_) / half_;
  out.slope = share * unit_form().slope(place(x)) + sign * lean_ + left.drift[1] / half_;
  out.second = share * unit_form().second(place(x)) / chord_;
  for (std::size_t k = 0; k < left.bend.size(); ++k) {
    const double d = (x - left.x[k]) / half_;
    out.half_breadth += left.bend[k] * cube(std::abs(d));
    out.slope += left.bend[k] * 3 * d * std::abs(d) / half_;
    out.second += left.bend[k] * 6 * std::abs(d) / (half_ * half_);
  }
  out.second = std::min(out.second, 0.0);
  return out;
}

}  // namespace fairblade::target
