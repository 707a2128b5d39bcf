#include "form/curve.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <limits>

#include "base/numerics.hpp"
#include "base/plain_form.hpp"
#include "form/polynomials.hpp"

namespace fairblade::form {
namespace {

// d1 for t = 0.20: the quartic through the five published values (0.200, 0.234, 0.315, 0.465, 0.700 at m = 0.2..0.6).
double tail_slope(double m) { return 31.0 / 200 + m * (151.0 / 300 + m * (-109.0 / 40 + m * (43.0 / 6 - 5 * m / 2))); }

// The published index: a0 = 0.296904 I/6 up to 8; I = 9 has three times the radius of 6, so a0 = 0.2969 sqrt(3).
double nose_gain(double index) {
  const double a0_at_8 = 0.296904 * 8 / 6;
  if (index <= 8) return 0.296904 * index / 6;
  return a0_at_8 + (index - 8) * (0.2969 * std::sqrt(3.0) - a0_at_8);
}

}  // namespace

double plain_max_thickness_at() {
  static const double at = [] {
    std::uintmax_t steps = 100;
    const auto ends = boost::math::tools::toms748_solve([](double s) { return plain_form_slope_u(s); }, 0.5, 0.6,
                                                        boost::math::tools::eps_tolerance<double>(52), steps);
    const double s = (ends.first + ends.second) / 2;
    return s * s;
  }();
  return at;
}

SectionCurve::SectionCurve(const Form& form, std::optional<double> radius, std::optional<double> edge) : form_(form) {
  const double t = form.thickness_ratio;
  if (form.plain()) {
    m_ = plain_max_thickness_at();
    for (std::size_t k = 0; k < 5; ++k) base_nose_[k] = t * plain_form_coefficients[k];
  } else {
    const double m = m_ = form.max_thickness_at;
    const double scale = t / 0.20;
    const double d1 = tail_slope(m);
    const double d2 = (0.294 - 2 * (1 - m) * d1) / ((1 - m) * (1 - m));
    const double d3 = (-0.196 + (1 - m) * d1) / ((1 - m) * (1 - m) * (1 - m));
    tail_ = {scale * 0.002, scale * d1, scale * d2, scale * d3};
    // y(m) = 0.1, y'(m) = 0, and the tail's curvature at m.
    const double a0 = nose_gain(form.leading_edge_index);
    const double y2 = 2 * d2 + 6 * d3 * (1 - m);
    const double root = std::sqrt(m);
    const double p = 0.1 - a0 * root;           // a1 m + a2 m² + a3 m³
    const double q = -a0 / (2 * root);          // a1 + 2 a2 m + 3 a3 m²
    const double r = y2 + a0 / (4 * m * root);  // 2 a2 + 6 a3 m
    const double a3 = (p / m - q + r * m / 2) / (m * m);
    const double a2 = (r - 6 * a3 * m) / 2;
    const double a1 = q - 2 * a2 * m - 3 * a3 * m * m;
    base_nose_ = {scale * a0, scale * a1, scale * a2, scale * a3, 0};
  }
  // g: sqrt(x) and the cubic that brings value, slope and curvature to zero at m.
  const double root = std::sqrt(m_);
  g_ = {-1.875 / root, 1.25 / (root * m_), -0.375 / (root * m_ * m_)};
  if (radius) nose_gain_ = std::sqrt(2 * *radius) - base_nose_[0];
  if (edge) {
    const double own = form.plain() ? t * plain_form(1) : tail_[0];
    tail_gain_ = *edge / 2 - own;
  }
  nose_ = base_nose_;
  nose_[0] += nose_gain_;
  for (std::size_t k = 0; k < 3; ++k) nose_[k + 1] += nose_gain_ * g_[k];
}

double SectionCurve::at_u(double u) const {
  const double x = u * u;
  if (x < m_) return form::at(nose_, u);
  const double h = (x - m_) / (1 - m_);
  const double tail = tail_gain_ * h * h * h;
  if (form_.plain()) return form_.thickness_ratio * plain_form(u) + tail;
  return form::at(tail_, u) + tail;
}

double SectionCurve::at(double x) const { return at_u(std::sqrt(std::clamp(x, 0.0, 1.0))); }

double SectionCurve::slope_u(double u) const {
  const double x = u * u;
  if (x < m_) return form::slope(nose_, u);
  const double h = (x - m_) / (1 - m_);
  const double tail = 2 * u * tail_gain_ * 3 * h * h / (1 - m_);
  if (form_.plain()) return form_.thickness_ratio * plain_form_slope_u(u) + tail;
  return form::slope(tail_, u) + tail;
}

double SectionCurve::second_u(double u) const {
  const double x = u * u;
  if (x < m_) return form::second(nose_, u);
  const double h = (x - m_) / (1 - m_), end = tail_gain_ * 3 * h / (1 - m_);  // (h³)'' = 6 h h'² + 3 h² h'', h' = 2u/(1 - m)
  const double tail = end * (2 * h + 8 * x / (1 - m_));
  if (form_.plain()) return form::second(base_nose_, u) + tail;
  return form::second(tail_, u) + tail;
}

double SectionCurve::slope(double x) const {
  if (x <= 0) return std::numeric_limits<double>::infinity();
  const double u = std::sqrt(std::min(x, 1.0));
  return slope_u(u) / (2 * u);
}

double SectionCurve::second(double x) const {
  x = std::clamp(x, 1e-12, 1.0);
  const double s = std::sqrt(x);
  const auto of_nose = [&](const std::array<double, 5>& a) {
    return -a[0] / (4 * x * s) + 2 * a[2] + x * (6 * a[3] + x * 12 * a[4]);
  };
  if (x < m_) return of_nose(nose_);
  const double tail = tail_gain_ * 6 * (x - m_) / ((1 - m_) * (1 - m_) * (1 - m_));
  if (form_.plain()) return of_nose(base_nose_) + tail;
  return 2 * tail_[2] + 6 * tail_[3] * (1 - x) + tail;
}

double SectionCurve::radius() const { return nose_[0] * nose_[0] / 2; }
double SectionCurve::edge() const { return 2 * at_u(1); }

bool SectionCurve::nose_convex() const {
  // y'' x sqrt(x) 4 = -a0 + 8 a2 s³ + 24 a3 s⁵ + 48 a4 s⁷, which must not be positive for 0 < s < sqrt(m).
  const auto& a = nose_;
  const double end = std::sqrt(m_);
  const auto bend = [&](double s) {
    const double x = s * s;
    return -a[0] + s * x * (8 * a[2] + x * (24 * a[3] + x * 48 * a[4]));
  };
  const double slack = 1e-12 * std::abs(a[0]);
  if (bend(0) > slack || bend(end) > slack) return false;
  for (const double s : polynomial_roots({24 * a[2], 0, 120 * a[3], 0, 336 * a[4]}, 0, end)) {
    if (bend(s) > slack) return false;
  }
  return true;
}

bool SectionCurve::tail_convex() const {
  // y'' aft of m is monotone or has at most one turn: the plain form's -a0/4 x^-1.5 + ... ; sampled finely and at ends.
  constexpr int steps = 400;
  const double slack = 1e-9 * std::max(form_.thickness_ratio, 1e-6);
  for (int k = 0; k <= steps; ++k) {
    const double x = m_ + (1 - m_) * k / steps;
    if (second(x) > slack) return false;
  }
  return true;
}

bool SectionCurve::nose_overshoots() const {
  const double top = at(m_);
  constexpr int steps = 400;
  for (int k = 1; k < steps; ++k) {
    const double s = std::sqrt(m_) * k / steps;
    if (at_u(s) > top * (1 + 1e-9)) return true;
  }
  return false;
}

bool SectionCurve::tail_flares() const {
  constexpr int steps = 400;
  for (int k = 1; k <= steps; ++k) {
    if (slope(m_ + (1 - m_) * k / steps) > 1e-9) return true;
  }
  return false;
}

bool SectionCurve::nose_shoulders() const {
  const auto curvature = [&](double s) {
    const double x = s * s;
    const double slope_here = slope(x);
    return std::abs(second(x)) / std::pow(1 + slope_here * slope_here, 1.5);
  };
  constexpr int steps = 400;
  double least = std::numeric_limits<double>::infinity();
  for (int k = 1; k <= steps; ++k) {
    const double now = curvature(std::sqrt(m_) * k / steps);
    if (now > 1.5 * least) return true;
    least = std::min(least, now);
  }
  return false;
}

}  // namespace fairblade::form
