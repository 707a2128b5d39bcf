#include <algorithm>
#include <cmath>

#include "fill/fill.hpp"
#include "fill/stand_out.hpp"
#include "target/slice.hpp"

namespace fairblade::fill {
namespace {

using target::Areas;
using target::Outline;
using target::Pair;

// The greatest distance that `a` stands out of `b`.
Deepest deepest_outside(const Outline& a, const Outline& b) {
  Deepest out;
  for (std::size_t k = 0; k < a.x.size(); ++k) {
    for (const Face face : {Face::port, Face::starboard}) {
      const double y = face == Face::port ? a.port[k] : -a.starboard[k];
      const double depth = stands_out(b, a.x[k], y, out.depth);
      if (depth > out.depth + 1e-9) out = {depth, a.x[k], face};
    }
  }
  return out;
}

}  // namespace

StationChange compare(const section::MeasuredSection& measured, const target::TargetSection& target) {
  StationChange out;
  out.station = measured.station;
  const Pair pair = common_outlines(measured, target);
  const Areas areas = areas_between(pair);
  out.add_area = areas.add;
  out.remove_area = areas.remove;
  out.add = deepest_outside(pair.target, pair.measured);
  out.removal = deepest_outside(pair.measured, pair.target);
  for (const auto& point : measured.points) {
    const double wanted = target.half_breadth(point.face, point.x);
    out.offsets.push_back({point.x, point.face, point.half_breadth, wanted, wanted - point.half_breadth, point.line});
  }
  return out;
}

}  // namespace fairblade::fill
