#include "form/fit_modified.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

#include "form/curve.hpp"
#include "form/polynomials.hpp"
#include "form/robust.hpp"

namespace fairblade::form {
namespace {

using Vector5 = Eigen::Matrix<double, 5, 1>;
using Matrix5 = Eigen::Matrix<double, 5, 5>;

// Parameters: thickness, shift, skew, index, place.
struct UnitCurve {
  UnitCurve(double index, double place) : m(place) {
    const SectionCurve curve(Form{1.0, index, place});
    nose = curve.nose();
    tail = curve.tail();
  }
  double m;
  Nose nose;
  Tail tail;
  double at(double u) const { return u * u < m ? form::at(nose, u) : form::at(tail, u); }
  double slope(double u) const { return u * u < m ? form::slope(nose, u) : form::slope(tail, u); }
  double second(double u) const { return u * u < m ? form::second(nose, u) : form::second(tail, u); }
};

/// By how much the curve grows for each unit between two of its neighbours. Where m itself moves, curve, slope and curvature
/// agree on both sides of it, so that the stretch between the two m needs no piece of its own.
UnitCurve growth(const UnitCurve& from, const UnitCurve& to, double apart) {
  UnitCurve out = from;
  out.m = (from.m + to.m) / 2;
  for (std::size_t k = 0; k < out.nose.size(); ++k) out.nose[k] = (to.nose[k] - from.nose[k]) / apart;
  for (std::size_t k = 0; k < out.tail.size(); ++k) out.tail[k] = (to.tail[k] - from.tail[k]) / apart;
  return out;
}

Vector5 held(Vector5 p) {
  p[0] = std::clamp(p[0], 1e-3, 1.0);
  p[3] = std::clamp(p[3], 1.0, 9.0);
  p[4] = std::clamp(p[4], 0.2, 0.6);
  return p;
}

using Distances = std::vector<Distance>;

void find_distances(const std::vector<Sample>& samples, const Vector5& p, Distances& all) {
  find_distances(samples, UnitCurve(p[3], p[4]), p[0], CentreLine{p[1], p[2]}, all);
}

double loss(const Distances& all, double scale) {
  double sum = 0;
  for (const Distance& d : all) sum += tukey_loss(d.value, scale);
  return sum;
}

double scale_of(const Distances& all, double floor) {
  std::vector<double> sizes;
  sizes.reserve(all.size());
  for (const Distance& d : all) sizes.push_back(d.value);
  return robust_scale(sizes, floor);
}

struct System {
  Matrix5 normal = Matrix5::Zero(), newton = Matrix5::Zero();  // lower halves: by the weights, by the slope of weight times miss
  Vector5 right = Vector5::Zero();
};

// By the weights; near the bottom Newton's own step, where there is one.
Vector5 step_of(const System& system, double damping, bool near) {
  const auto solver = [&](Matrix5 matrix) {
    for (int i = 0; i < 5; ++i) matrix(i, i) += damping * system.normal(i, i) + 1e-14;
    return Eigen::LDLT<Matrix5>(matrix);
  };
  if (near) {
    const auto newton = solver(system.newton);
    if (newton.isPositive()) return newton.solve(system.right);
  }
  return solver(system.normal).solve(system.right);
}

UnitCurve by_index_at(const Vector5& p) {
  const double di = 1e-4;
  return growth({p[3] - di, p[4]}, {p[3] + di, p[4]}, 2 * di);
}

System linearised(const std::vector<Sample>& samples, const Distances& all, const Vector5& p, double scale, bool centred) {
  const UnitCurve curve(p[3], p[4]);
  const double dm = 1e-5;
  const UnitCurve by_index = by_index_at(p);
  const UnitCurve by_place = growth({p[3], p[4] - dm}, {p[3], p[4] + dm}, 2 * dm);
  System out;
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const Distance& d = all[k];
    const double side = centred ? 0 : samples[k].sign * d.cosine;
    Vector5 row;
    row << d.cosine * curve.at(d.u), side, side * (d.u * d.u - 0.5), d.cosine * p[0] * by_index.at(d.u),
        d.cosine * p[0] * by_place.at(d.u);
    const double w = tukey_weight(d.value, scale), slope = tukey_slope(d.value, scale);
    for (int i = 0; i < 5; ++i) {  // the lower halves
      for (int j = 0; j <= i; ++j) {
        out.normal(i, j) += w * row[i] * row[j];
        out.newton(i, j) += slope * row[i] * row[j];
      }
    }
    out.right += w * d.value * row;
  }
  return out;
}

// The same within the bounds: a parameter that its step would take out of them stays, and the others go as far without it.
Vector5 step_within(System system, double damping, bool near, const Vector5& p) {
  Vector5 move = step_of(system, damping, near);
  const auto leaves = [&](int i) {
    Vector5 there = p;
    there[i] += move[i];
    return move[i] != 0 && held(there)[i] == p[i];
  };
  for (int bound = 0; bound < 3; ++bound) {  // there are three parameters with bounds
    bool any = false;
    for (int i = 0; i < 5; ++i) {
      if (!leaves(i)) continue;
      for (Matrix5* matrix : {&system.normal, &system.newton}) {
        matrix->row(i).setZero();
        matrix->col(i).setZero();
        (*matrix)(i, i) = 1;
      }
      system.right[i] = 0;
      any = true;
    }
    if (!any) break;
    move = step_of(system, damping, near);
  }
  return move;
}

// Where it came to rest, with the distances there.
struct Rest {
  Vector5 p;
  Distances distances;
  double loss = std::numeric_limits<double>::infinity();
};

// Levenberg-Marquardt with the bounds held by clamping; the scale stays what it was given. `here`: the distances at p.
Rest descend(const std::vector<Sample>& samples, Vector5 p, Distances here, double scale, bool centred) {
  double damping = 1e-3;
  Distances there;
  double now = loss(here, scale);
  bool near = false;
  for (int k = 0; k < 40 && damping < 1e8; ++k) {
    const System system = linearised(samples, here, p, scale, centred);
    const Vector5 move = step_within(system, damping, near, p);
    const double gain = move.dot(system.right) / (2 * scale * scale);  // as the step foresees it, in the loss
    if (gain < 1e-8) break;                                            // a ten-thousandth of a standard deviation
    near = gain < 0.1;
    const Vector5 next = held(p + move);
    double then = std::numeric_limits<double>::infinity();
    if (next.allFinite()) {
      there = here;  // where to begin
      find_distances(samples, next, there);
      then = loss(there, scale);
    }
    if (then < now) {
      const bool settled = now - then < 1e-12 * (1 + now);
      p = next;
      now = then;
      std::swap(here, there);
      damping = std::max(damping / 10, 1e-12);
      if (settled) break;
    } else {
      damping *= 10;
    }
  }
  return {p, std::move(here), now};
}

/// From where another scale came to rest, with that of the distances there.
Rest settled(const std::vector<Sample>& samples, Rest from, double floor, bool centred) {
  const double scale = scale_of(from.distances, floor);
  return descend(samples, from.p, std::move(from.distances), scale, centred);
}

/// How much all readings together tell of the index: the weighted sum of squares of what a unit of it would move them.
double told_of_index(const Rest& rest, double scale) {
  const Vector5& p = rest.p;
  const UnitCurve by_index = by_index_at(p);
  double sum = 0;
  for (const Distance& d : rest.distances) {
    const double moved = d.cosine * p[0] * by_index.at(d.u);
    sum += tukey_weight(d.value, scale) * moved * moved;
  }
  return sum;
}

}  // namespace

ModifiedFit fit_modified(const std::vector<Sample>& samples, double thickness, const CentreLine& centre, bool centred,
                         double reading_error) {
  Vector5 first;
  first << thickness, centre.shift, centre.skew, 6, 0.3;
  const double floor = std::max(reading_error, 1e-9);
  // Which valley to go down is told by some of the samples, spread over the chord; where its bottom lies, by all.
  const std::vector<Sample> some = spread(samples);
  Rest best;
  find_distances(some, first, best.distances);
  const double scale = scale_of(best.distances, floor);
  for (const double place : {0.25, 0.35, 0.45, 0.55}) {
    Vector5 start;
    start << thickness, centre.shift, centre.skew, 6, place;
    Distances from;
    find_distances(some, start, from);
    Rest end = descend(some, start, std::move(from), scale, centred);
    if (end.loss < best.loss) best = std::move(end);
  }
  if (!std::isfinite(best.loss)) best.p = first;
  if (some.size() < samples.size()) {
    best = settled(some, std::move(best), floor, centred);
    best.distances.clear();
    find_distances(samples, best.p, best.distances);
  }
  best = settled(samples, std::move(best), floor, centred);
  // Behind a skeg no reading may tell of the nose: its index is then that of the plain forms.
  constexpr double whole_range = 8;
  const double told = std::sqrt(told_of_index(best, scale));
  if (told * whole_range < 1e-3 * scale) best.p[3] = 6;
  double square = 0;
  for (const Distance& d : best.distances) square += d.value * d.value;
  return {Form{best.p[0], best.p[3], best.p[4]}, std::sqrt(square / static_cast<double>(samples.size()))};
}

}  // namespace fairblade::form
