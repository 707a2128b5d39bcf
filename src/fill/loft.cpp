#include "fill/loft.hpp"

#include <algorithm>
#include <cmath>

namespace fairblade::fill {

using section::Face;
using section::MeasuredSection;
using target::TargetSection;

Rib rib_of(const MeasuredSection& measured, const std::vector<double>& fractions) {
  Rib out{measured.down, measured.chord, 0, {}, {}, 0};
  auto port = measured.port.along(), starboard = measured.starboard.along();
  for (const double f : fractions) {
    out.port.push_back(port.at_u(std::sqrt(f)) / measured.chord);
    out.starboard.push_back(starboard.at_u(std::sqrt(f)) / measured.chord);
  }
  return out;
}

Rib rib_of(const TargetSection& target, const std::vector<double>& fractions) {
  Rib out{target.down, target.chord, target.leading_edge_x, {}, {}, target.left_to};
  for (const double f : fractions) {
    const double x = f >= 1 ? target.trailing_edge_x() : target.leading_edge_x + f * target.chord;
    out.port.push_back(target.half_breadth(Face::port, x) / target.chord);
    out.starboard.push_back(target.half_breadth(Face::starboard, x) / target.chord);
  }
  return out;
}

Rib between(const Rib& a, const Rib& b, double w) {
  const auto mix = [w](double p, double q) { return p + (q - p) * w; };
  Rib out{mix(a.down, b.down),      std::max(1e-6, mix(a.chord, b.chord)), mix(a.leading_edge_x, b.leading_edge_x), {}, {},
          mix(a.left_to, b.left_to)};
  out.port.resize(a.port.size());
  out.starboard.resize(a.port.size());
  for (std::size_t k = 0; k < a.port.size(); ++k) {
    out.port[k] = mix(a.port[k], b.port[k]);
    out.starboard[k] = mix(a.starboard[k], b.starboard[k]);
  }
  return out;
}

Rib between(const Rib& outer_a, const Rib& outer_b, const Rib& a, const Rib& b, double w) {
  const Rib outer = between(outer_a, outer_b, w);
  Rib out = between(a, b, w);
  const auto set = [&](std::vector<double> Rib::*face) {
    for (std::size_t k = 0; k < (out.*face).size(); ++k) {
      const double at_a = (outer_a.*face)[k] * outer_a.chord - (a.*face)[k] * a.chord;  // mm within
      const double at_b = (outer_b.*face)[k] * outer_b.chord - (b.*face)[k] * b.chord;
      (out.*face)[k] = ((outer.*face)[k] * outer.chord - (at_a + (at_b - at_a) * w)) / out.chord;
    }
  };
  set(&Rib::port);
  set(&Rib::starboard);
  return out;
}

namespace {

Outline plain_outline(const Rib& rib, const std::vector<double>& fractions) {
  Outline out;
  out.x.reserve(fractions.size());
  out.port.reserve(fractions.size());
  out.starboard.reserve(fractions.size());
  for (std::size_t k = 0; k < fractions.size(); ++k) {
    out.x.push_back(rib.leading_edge_x + fractions[k] * rib.chord);
    out.port.push_back(rib.port[k] * rib.chord);
    out.starboard.push_back(rib.starboard[k] * rib.chord);
  }
  return out;
}

// The outline at these places and at its own, straight between its own in sqrt(x): a round nose stays round.
Outline refined(const Outline& own, const std::vector<double>& places) {
  Outline out;
  const double front = own.x.front();
  const double close = 1e-7;
  std::size_t k = 1;
  for (auto* list : {&out.x, &out.port, &out.starboard}) list->reserve(places.size());
  const auto push = [&](double x, double p, double s) {
    out.x.push_back(x);
    out.port.push_back(p);
    out.starboard.push_back(s);
  };
  double a = 0, b = std::sqrt(own.x[k] - front);  // roots at k - 1 and k
  for (const double x : places) {
    if (x < front - close || x > own.x.back() + close) continue;
    while (k + 1 < own.x.size() && own.x[k] < x) {
      a = b;
      b = std::sqrt(own.x[++k] - front);
    }
    const double w = std::clamp((std::sqrt(std::max(0.0, x - front)) - a) / (b - a), 0.0, 1.0);
    push(x, own.port[k - 1] + w * (own.port[k] - own.port[k - 1]),
         own.starboard[k - 1] + w * (own.starboard[k] - own.starboard[k - 1]));
  }
  return out;
}

}  // namespace

Pair pair_of(const Rib& measured, const Rib& target, const std::vector<double>& fractions) {
  Pair out{plain_outline(measured, fractions), plain_outline(target, fractions)};
  const double close = 1e-7;
  if (std::abs(target.leading_edge_x - measured.leading_edge_x) < close && std::abs(target.chord - measured.chord) < close) {
    return out;
  }
  std::vector<double> places;
  places.reserve(2 * fractions.size());
  std::merge(out.measured.x.begin(), out.measured.x.end(), out.target.x.begin(), out.target.x.end(), std::back_inserter(places));
  places.erase(std::unique(places.begin(), places.end(), [&](double a, double b) { return b - a < close; }), places.end());
  return {refined(out.measured, places), refined(out.target, places)};
}

}  // namespace fairblade::fill
