#include "target/slice.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/numerics.hpp"
#include "section/outline.hpp"

namespace fairblade::target {

namespace {

// One end of a piece: what of the target's breadth lies outside the measured one, as linear as the outlines are.
struct Breadths {
  double target_port, target_starboard, measured_port, measured_starboard;
};

double overlap(const Breadths& b) {
  return std::max(0.0, std::min(b.target_port, b.measured_port) - std::max(-b.target_starboard, -b.measured_starboard));
}

Breadths between(const Breadths& a, const Breadths& b, double w) {
  const auto mix = [w](double p, double q) { return p + (q - p) * w; };
  return {mix(a.target_port, b.target_port), mix(a.target_starboard, b.target_starboard), mix(a.measured_port, b.measured_port),
          mix(a.measured_starboard, b.measured_starboard)};
}

// The linear functions whose signs settle which edges bound the overlap.
std::array<double, 6> gaps_of(const Breadths& s) {
  return {s.target_port - s.measured_port,      s.target_starboard - s.measured_starboard,
          s.target_port + s.measured_starboard, s.measured_port + s.target_starboard,
          s.target_port + s.target_starboard,   s.measured_port + s.measured_starboard};
}

// Integral of the overlap over one piece of length 1: exact, by cutting where the linear functions cross.
double overlap_integral(const Breadths& a, const Breadths& b) {
  const auto at_a = gaps_of(a), at_b = gaps_of(b);
  std::array<double, 8> cuts;
  cuts.fill(1);
  cuts.front() = 0;
  std::size_t crossings = 0;
  for (std::size_t k = 0; k < at_a.size(); ++k) {
    if ((at_a[k] > 0) != (at_b[k] > 0)) cuts[++crossings] = at_a[k] / (at_a[k] - at_b[k]);
  }
  if (crossings == 0) return (overlap(a) + overlap(b)) / 2;
  std::sort(cuts.begin(), cuts.end());
  double sum = 0;
  for (std::size_t k = 1; k <= crossings + 1; ++k) {
    sum += (cuts[k] - cuts[k - 1]) * (overlap(between(a, b, cuts[k - 1])) + overlap(between(a, b, cuts[k]))) / 2;
  }
  return sum;
}

double breadth_integral(const Outline& o) {
  double sum = 0;
  for (std::size_t k = 1; k < o.x.size(); ++k) {
    sum += (o.x[k] - o.x[k - 1]) * (o.port[k] + o.starboard[k] + o.port[k - 1] + o.starboard[k - 1]) / 2;
  }
  return sum;
}

}  // namespace

Sampled sampled(const section::MeasuredSection& measured, std::size_t count) {
  Sampled out{section::sample_places(measured, count), {}, {}, count};
  out.port.reserve(out.x.size());
  out.starboard.reserve(out.x.size());
  auto port = measured.port.along(), starboard = measured.starboard.along();
  for (const double x : out.x) {
    out.port.push_back(port.at(x));
    out.starboard.push_back(starboard.at(x));
  }
  return out;
}

Pair common_outlines(const section::MeasuredSection& measured, const Sampled& own, const TargetSection& target) {
  const double close = 1e-7;
  const double front = target.leading_edge_x, back = target.trailing_edge_x();
  Pair out;
  for (Outline* one : {&out.measured, &out.target}) {
    for (auto* list : {&one->x, &one->port, &one->starboard}) list->reserve(own.x.size() + own.count + 1);
  }
  double last = -std::numeric_limits<double>::infinity();
  const auto add = [&](double x, double port, double starboard) {
    last = x;
    if (x >= -close && x <= measured.chord + close) {
      const double crossed = std::min(0.0, port + starboard) / 2;  // between readings of a ragged thin edge
      out.measured.x.push_back(std::clamp(x, 0.0, measured.chord));
      out.measured.port.push_back(port - crossed);
      out.measured.starboard.push_back(starboard - crossed);
    }
    if (x >= front - close && x <= back + close) {
      const double held = std::clamp(x, front, back);
      out.target.x.push_back(held);
      out.target.port.push_back(target.half_breadth(Face::port, held));
      out.target.starboard.push_back(target.port_shape || target.starboard_shape ? target.half_breadth(Face::starboard, held)
                                                                                 : out.target.port.back());
    }
  };
  // Both lists rise: of places that fall together the first stands, the blade's before the target's.
  std::size_t k = 0;
  const auto own_until = [&](double x) {
    for (; k < own.x.size() && own.x[k] <= x; ++k) {
      if (own.x[k] - last > close) add(own.x[k], own.port[k], own.starboard[k]);
    }
  };
  auto measured_port = measured.port.along(), measured_starboard = measured.starboard.along();
  for (const double f : chord_fractions(own.count)) {
    const double x = front + f * target.chord;
    own_until(x);
    if (x - last > close) add(x, measured_port.at(x), measured_starboard.at(x));
  }
  own_until(std::numeric_limits<double>::infinity());
  return out;
}

Pair common_outlines(const section::MeasuredSection& measured, const TargetSection& target, std::size_t count) {
  return common_outlines(measured, sampled(measured, count), target);
}

Areas areas_between(const Pair& pair) {
  const Outline& t = pair.target;
  const Outline& m = pair.measured;
  // Both lists hold the same places where they overlap.
  const double close = 1e-6;
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < t.x.size() && j < m.x.size() && std::abs(t.x[i] - m.x[j]) > close) t.x[i] < m.x[j] ? ++i : ++j;
  double common = 0;
  while (i + 1 < t.x.size() && j + 1 < m.x.size()) {
    const Breadths a{t.port[i], t.starboard[i], m.port[j], m.starboard[j]};
    ++i;
    ++j;
    const Breadths b{t.port[i], t.starboard[i], m.port[j], m.starboard[j]};
    common += (t.x[i] - t.x[i - 1]) * overlap_integral(a, b);
  }
  return {std::max(0.0, breadth_integral(t) - common), std::max(0.0, breadth_integral(m) - common)};
}

}  // namespace fairblade::target
