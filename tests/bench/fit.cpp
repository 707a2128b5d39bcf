// Outline, fit and least fill. The fit beside Levenberg and Marquardt's rule with numerical derivatives (Eigen's, and
// Ceres where it is installed) on the same readings, the same distance square to the curve and the same loss.
#include <Eigen/Dense>
#include <limits>
#include <random>
#include <unsupported/Eigen/NonLinearOptimization>
#include <unsupported/Eigen/NumericalDiff>

#include "base/plain_form.hpp"
#include "bench/bench.hpp"
#include "blade.hpp"
#include "form/curve.hpp"
#include "form/normal_distance.hpp"
#include "form/robust.hpp"
#include "section/outline.hpp"
#include "target/least_fill.hpp"
#ifdef FAIRBLADE_BENCH_CERES
#include <ceres/ceres.h>
#endif

namespace bench {
namespace {

using namespace fairblade;
using form::Sample;

constexpr double reading_error = 0.5;  // mm

std::vector<Sample> samples_of(const section::MeasuredSection& measured) {
  std::vector<Sample> out;
  for (const auto& point : measured.points) {
    const double sign = section::sign_of(point.face);
    out.push_back({point.x / measured.chord, sign * point.half_breadth / measured.chord, sign});
  }
  return out;
}

struct Plain {
  double at(double u) const { return plain_form(u); }
  double slope(double u) const { return plain_form_slope_u(u); }
  double second(double u) const { return plain_form_second_u(u); }
};

struct Modified {
  form::SectionCurve curve;
  double at(double u) const { return curve.at_u(u); }
  double slope(double u) const { return curve.slope_u(u); }
  double second(double u) const {
    const double low = std::max(0.0, u - 1e-4), high = std::min(1.0, u + 1e-4);
    return (curve.slope_u(high) - curve.slope_u(low)) / (high - low);
  }
};

/// The roots of the losses, so that their squares' sum is the loss: least absolute misses, or Tukey's at `scale`.
struct Misses {
  using Scalar = double;
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };
  using InputType = Eigen::VectorXd;
  using ValueType = Eigen::VectorXd;
  using JacobianType = Eigen::MatrixXd;

  const std::vector<Sample>& samples;
  int parameters;
  double scale;  // 0: least absolute misses

  int inputs() const { return parameters; }
  int values() const { return static_cast<int>(samples.size()); }
  template <class Curve>
  void all(const Curve& curve, const Eigen::VectorXd& p, Eigen::VectorXd& out) const {
    for (std::size_t k = 0; k < samples.size(); ++k) {
      const double r = form::normal_distance(samples[k], curve, p[0], {p[1], p[2]}).value;
      const double loss = scale > 0 ? form::tukey_loss(r, scale) : std::abs(r);
      out[static_cast<Eigen::Index>(k)] = std::copysign(std::sqrt(loss), r);
    }
  }
  int operator()(const Eigen::VectorXd& p, Eigen::VectorXd& out) const {
    if (parameters == 3) {
      all(Plain{}, p, out);
    } else {
      const double index = std::clamp(p[3], 1.0, 9.0), place = std::clamp(p[4], 0.2, 0.6);
      all(Modified{form::SectionCurve(form::Form{1.0, index, place})}, p, out);
    }
    return 0;
  }
};

double scale_of(const std::vector<Sample>& samples, const Eigen::VectorXd& p, double floor) {
  std::vector<double> misses;
  for (const Sample& s : samples) misses.push_back(form::normal_distance(s, Plain{}, p[0], {p[1], p[2]}).value);
  return form::robust_scale(misses, floor);
}

double descend(const Misses& misses, Eigen::VectorXd& p) {
  Eigen::NumericalDiff<Misses, Eigen::Central> differences(misses);
  Eigen::LevenbergMarquardt<Eigen::NumericalDiff<Misses, Eigen::Central>> rule(differences);
  rule.minimize(p);
  return rule.fnorm;
}

/// What fit_form does: the plain form, its scale settled in three rounds after a start by least absolute misses; then the
/// modified family from four places, and once more from the best.
Eigen::VectorXd eigen_fit(const std::vector<Sample>& samples, double chord) {
  const double floor = reading_error / chord;
  Eigen::VectorXd plain(3);
  plain << 0.12, 0, 0;
  descend({samples, 3, 0}, plain);
  for (int round = 0; round < 3; ++round) descend({samples, 3, scale_of(samples, plain, 0.8 * floor)}, plain);
  const double scale = scale_of(samples, plain, floor);
  Eigen::VectorXd best(5);
  double least = std::numeric_limits<double>::infinity();
  for (const double place : {0.25, 0.35, 0.45, 0.55}) {
    Eigen::VectorXd p(5);
    p << plain, 6, place;
    const double here = descend({samples, 5, scale}, p);
    if (here < least) least = here, best = p;
  }
  descend({samples, 5, scale}, best);
  return plain;
}

#ifdef FAIRBLADE_BENCH_CERES
struct OneMiss {
  Sample sample;
  bool operator()(const double* p, double* out) const {
    *out = form::normal_distance(sample, Plain{}, p[0], {p[1], p[2]}).value;
    return true;
  }
};

/// The plain form alone.
double ceres_fit(const std::vector<Sample>& samples, double chord) {
  double p[3] = {0.12, 0, 0};
  const auto solve = [&](ceres::LossFunction* (*loss)(double), double scale) {
    ceres::Problem problem;
    for (const Sample& s : samples) {
      problem.AddResidualBlock(new ceres::NumericDiffCostFunction<OneMiss, ceres::CENTRAL, 1, 3>(new OneMiss{s}), loss(scale), p);
    }
    ceres::Solver::Options options;
    options.linear_solver_type = ceres::DENSE_QR;
    options.logging_type = ceres::SILENT;
    options.function_tolerance = 1e-14;
    ceres::Solver::Summary summary;
    ceres::Solve(options, &problem, &summary);
  };
  solve([](double s) -> ceres::LossFunction* { return new ceres::SoftLOneLoss(s); }, 0.3 * reading_error / chord);
  for (int round = 0; round < 3; ++round) {
    Eigen::VectorXd now(3);
    now << p[0], p[1], p[2];
    solve([](double s) -> ceres::LossFunction* { return new ceres::TukeyLoss(form::tukey_reach * s); },
          scale_of(samples, now, 0.8 * reading_error / chord));
  }
  return p[0];
}
#endif

section::MeasuredSection noisy() {
  auto station = blade::exact("A", 0, 420, 0.12);
  std::mt19937 random(7);
  blade::add_noise(station, reading_error, random);
  return blade::measured(blade::job_of({station}));
}

std::string apart(double a, double b) {
  char text[80];
  std::snprintf(text, sizeof text, "thickness ratios %.1e apart", std::abs(a - b));
  return text;
}

}  // namespace

std::vector<Kernel> fit_kernels() {
  const auto measured = noisy();
  const auto samples = samples_of(measured);
  const auto fitted = form::fit_form(measured, reading_error);
  std::vector<Kernel> out;
  out.push_back({"outline",
                 "400 places of a measured outline",
                 [=] { return section::outline(measured, section::sample_places(measured)).back().x(); },
                 "",
                 {},
                 {},
                 ""});
  out.push_back({"fit",
                 "plain and modified form to 28 readings",
                 [=] { return form::fit_form(measured, reading_error).form.thickness_ratio; },
                 "Eigen's LM, numerical",
                 [=] { return eigen_fit(samples, 420)[0]; },
                 {1.0 / 3, {}},
                 apart(fitted.form.thickness_ratio, eigen_fit(samples, 420)[0])});
#ifdef FAIRBLADE_BENCH_CERES
  out.push_back({"fit-plain",
                 "as fit; the reference fits the plain form alone",
                 [=] { return form::fit_form(measured, reading_error).form.thickness_ratio; },
                 "Ceres, numerical, plain form only",
                 [=] { return ceres_fit(samples, 420); },
                 {},
                 apart(fitted.form.thickness_ratio, ceres_fit(samples, 420))});
#endif
  out.push_back({"least-fill",
                 "the thinnest form that no reading stands out of",
                 [=] {
                   const job::TargetRequest request;
                   const auto wish = target::wish_of(measured, fitted.form, request, 0, 0);
                   return target::needed_thickness(measured, wish, request).thickness_ratio;
                 },
                 "",
                 {},
                 {},
                 ""});
  return out;
}

}  // namespace bench
