#include "check/fair_line.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "base/plain_form.hpp"

namespace fairblade::check {

const char* name_of(Kind kind) { return kind == Kind::port ? "port" : kind == Kind::starboard ? "starboard" : "caliper"; }

std::vector<Seen> seen_at(const job::Station& station) {
  std::vector<Seen> out;
  for (std::size_t row = 0; row < station.readings.size(); ++row) {
    const job::Reading& reading = station.readings[row];
    if (reading.port) out.push_back({Kind::port, reading.x, *reading.port, reading.line, row});
    if (reading.starboard) out.push_back({Kind::starboard, reading.x, *reading.starboard, reading.line, row});
    if (reading.caliper) out.push_back({Kind::caliper, reading.x, *reading.caliper, reading.line, row});
  }
  return out;
}

namespace {

// Standard deviations before anything was read: thickness ratio; centre line's shift in chords and slope; half-breadth at
// the very leading edge, in chords.
constexpr double any_thickness = 1, any_shift = 0.1, any_skew = 0.1, any_edge = 0.05;
constexpr double edge_share = 0.004;  // of the chord: nearer to the leading edge than this is the edge itself

}  // namespace

Spot spot_of(const Seen& seen, const Frame& frame) {
  const double whole = frame.chord + frame.skeg;
  const double share = std::clamp((seen.x + frame.skeg) / whole, 0.0, 1.0);
  Spot out{};
  out.half = seen.kind == Kind::caliper ? 2 : 1;
  out.centre = seen.kind == Kind::caliper ? 0 : seen.kind == Kind::port ? 1 : -1;
  out.angle = std::acos(1 - 2 * share);
  out.form = plain_form(std::sqrt(share));
  out.along = share - 0.5;
  out.edge = frame.skeg == 0 && share < edge_share;
  return out;
}

double nearness(const Spot& a, const Spot& b, double reach) {
  const double apart = (a.angle - b.angle) / reach;
  return std::exp(-0.5 * apart * apart);
}

double halves_together(const Spot& a, const Spot& b, double near, const Smoothness& smooth) {
  double out = any_thickness * any_thickness * a.form * b.form + smooth.shape * smooth.shape * near;
  if (a.edge && b.edge) out += any_edge * any_edge;
  return out;
}

double centres_together(const Spot& a, const Spot& b, double near, const Smoothness& smooth) {
  return any_shift * any_shift + any_skew * any_skew * a.along * b.along + smooth.camber * smooth.camber * near;
}

double together(const Spot& a, const Spot& b, double near, const Smoothness& smooth) {
  return a.half * b.half * halves_together(a, b, near, smooth) + a.centre * b.centre * centres_together(a, b, near, smooth);
}

namespace {

// Covariance of what is read at two spots, mm².
double read_together(const Spot& a, const Spot& b, double whole, const Smoothness& smooth) {
  return whole * whole * together(a, b, nearness(a, b, smooth.reach), smooth);
}

Eigen::MatrixXd covariance(const std::vector<Spot>& spots, const Frame& frame, const Smoothness& smooth) {
  const auto n = static_cast<Eigen::Index>(spots.size());
  Eigen::MatrixXd out(n, n);
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j <= i; ++j) {
      out(i, j) = out(j, i) =
          read_together(spots[static_cast<std::size_t>(i)], spots[static_cast<std::size_t>(j)], frame.chord + frame.skeg, smooth);
    }
    out(i, i) += frame.sigma * frame.sigma;
  }
  return out;
}

std::vector<Spot> spots_of(const std::vector<Seen>& seen, const Frame& frame) {
  std::vector<Spot> out;
  out.reserve(seen.size());
  for (const Seen& one : seen) out.push_back(spot_of(one, frame));
  return out;
}

}  // namespace

Eigen::VectorXd values_of(const std::vector<Seen>& seen) {
  Eigen::VectorXd out(static_cast<Eigen::Index>(seen.size()));
  for (std::size_t k = 0; k < seen.size(); ++k) out[static_cast<Eigen::Index>(k)] = seen[k].value;
  return out;
}

std::vector<Expected> expected_at(const std::vector<Seen>& asked, const std::vector<Seen>& seen, const Frame& frame,
                                  const Smoothness& smooth) {
  if (asked.empty() || seen.empty()) return {};
  const auto spots = spots_of(seen, frame);
  const Eigen::LLT<Eigen::MatrixXd> solver(covariance(spots, frame, smooth));
  if (solver.info() != Eigen::Success) return {};
  const Eigen::VectorXd pull = solver.solve(values_of(seen));
  std::vector<Expected> out;
  for (const Seen& one : asked) {
    const Spot spot = spot_of(one, frame);
    Eigen::VectorXd link(static_cast<Eigen::Index>(spots.size()));
    for (std::size_t k = 0; k < spots.size(); ++k) {
      link[static_cast<Eigen::Index>(k)] = read_together(spot, spots[k], frame.chord + frame.skeg, smooth);
    }
    const double own = read_together(spot, spot, frame.chord + frame.skeg, smooth) + frame.sigma * frame.sigma;
    out.push_back({link.dot(pull), std::sqrt(std::max(own - link.dot(solver.solve(link)), frame.sigma * frame.sigma))});
  }
  return out;
}

const std::vector<Smoothness>& smoothnesses() {
  static const std::vector<Smoothness> all = [] {
    std::vector<Smoothness> out;
    for (const double shape : {0.0005, 0.003, 0.01, 0.05}) {
      for (const double camber : {0.0005, 0.003, 0.01}) {
        for (const double reach : {0.8, 0.4}) out.push_back({shape, camber, reach});
      }
    }
    return out;
  }();
  return all;
}

}  // namespace fairblade::check
