#include "form/fit_modified.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

#include "form/curve.hpp"
#include "form/robust.hpp"

namespace fairblade::form {
namespace {

using Vector5 = Eigen::Matrix<double, 5, 1>;
using Matrix5 = Eigen::Matrix<double, 5, 5>;

// Parameters: thickness, shift, skew, index, place.
struct UnitCurve {
  explicit UnitCurve(double index, double place) : curve(Form{1.0, index, place}) {}
  SectionCurve curve;
  double at(double u) const { return curve.at_u(u); }
  double slope(double u) const { return curve.slope_u(u); }
  double second(double u) const {
    const double h = 1e-4;
    const double low = std::max(0.0, u - h);
    const double high = std::min(1.0, u + h);
    return (curve.slope_u(high) - curve.slope_u(low)) / (high - low);
  }
};

Vector5 held(Vector5 p) {
  p[0] = std::clamp(p[0], 1e-3, 1.0);
  p[3] = std::clamp(p[3], 1.0, 9.0);
  p[4] = std::clamp(p[4], 0.2, 0.6);
  return p;
}

std::vector<double> residuals(const std::vector<Sample>& samples, const Vector5& p) {
  const UnitCurve curve(p[3], p[4]);
  const CentreLine centre{p[1], p[2]};
  std::vector<double> out;
  out.reserve(samples.size());
  for (const Sample& s : samples) out.push_back(normal_distance(s, curve, p[0], centre).value);
  return out;
}

double loss(const std::vector<double>& r, double scale) {
  double sum = 0;
  for (const double v : r) sum += tukey_loss(v, scale);
  return sum;
}

struct System {
  Matrix5 normal = Matrix5::Zero();
  Vector5 right = Vector5::Zero();
};

System linearised(const std::vector<Sample>& samples, const Vector5& p, double scale, bool centred) {
  const UnitCurve curve(p[3], p[4]);
  const double di = 1e-4, dm = 1e-5;
  const UnitCurve index_up(p[3] + di, p[4]), index_down(p[3] - di, p[4]);
  const UnitCurve place_up(p[3], p[4] + dm), place_down(p[3], p[4] - dm);
  const CentreLine centre{p[1], p[2]};
  System out;
  for (const Sample& s : samples) {
    const Distance d = normal_distance(s, curve, p[0], centre);
    const double side = centred ? 0 : s.sign * d.cosine;
    Vector5 row;
    row << d.cosine * curve.at(d.u), side, side * (d.u * d.u - 0.5),
        d.cosine * p[0] * (index_up.at(d.u) - index_down.at(d.u)) / (2 * di),
        d.cosine * p[0] * (place_up.at(d.u) - place_down.at(d.u)) / (2 * dm);
    const double w = tukey_weight(d.value, scale);
    out.normal += w * row * row.transpose();
    out.right += w * d.value * row;
  }
  return out;
}

// Levenberg-Marquardt with the bounds held by clamping; the scale stays what it was given.
Vector5 descend(const std::vector<Sample>& samples, Vector5 p, double scale, bool centred) {
  double damping = 1e-3;
  double now = loss(residuals(samples, p), scale);
  for (int k = 0; k < 40 && damping < 1e8; ++k) {
    System system = linearised(samples, p, scale, centred);
    for (int i = 0; i < 5; ++i) system.normal(i, i) += damping * system.normal(i, i) + 1e-14;
    const Vector5 next = held(p + system.normal.ldlt().solve(system.right));
    const double then = next.allFinite() ? loss(residuals(samples, next), scale) : std::numeric_limits<double>::infinity();
    if (then < now) {
      const bool settled = now - then < 1e-12 * (1 + now);
      p = next;
      now = then;
      damping = std::max(damping / 10, 1e-12);
      if (settled) break;
    } else {
      damping *= 10;
    }
  }
  return p;
}

}  // namespace

ModifiedFit fit_modified(const std::vector<Sample>& samples, double thickness, const CentreLine& centre, bool centred,
                         double reading_error) {
  Vector5 best;
  best << thickness, centre.shift, centre.skew, 6, 0.3;
  const double floor = std::max(reading_error, 1e-9);
  double best_loss = std::numeric_limits<double>::infinity();
  double scale = std::max(robust_scale(residuals(samples, best), floor), floor);
  for (const double place : {0.25, 0.35, 0.45, 0.55}) {
    Vector5 start;
    start << thickness, centre.shift, centre.skew, 6, place;
    const Vector5 end = descend(samples, start, scale, centred);
    const double here = loss(residuals(samples, end), scale);
    if (here < best_loss) {
      best_loss = here;
      best = end;
    }
  }
  scale = robust_scale(residuals(samples, best), floor);
  best = descend(samples, best, scale, centred);
  double square = 0;
  for (const double r : residuals(samples, best)) square += r * r;
  return {Form{best[0], best[3], best[4]}, std::sqrt(square / static_cast<double>(samples.size()))};
}

}  // namespace fairblade::form
