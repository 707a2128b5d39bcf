#include "fill/fill.hpp"
#include "fill/stand_out.hpp"
#include "target/slice.hpp"

namespace fairblade::fill {
using target::Areas;
using target::Pair;

StationChange compare(const section::MeasuredSection& measured, const target::TargetSection& target) {
  StationChange out;
  out.station = measured.station;
  const Pair pair = common_outlines(measured, target);
  const Areas areas = areas_between(pair);
  out.add_area = areas.add;
  out.remove_area = areas.remove;
  out.add = deepest_outside(pair.target, pair.measured);
  out.removal = deepest_outside(pair.measured, pair.target);
  out.targets.reserve(measured.points.size());
  for (const auto& point : measured.points) out.targets.push_back(target.half_breadth(point.face, point.x));
  return out;
}

std::vector<OffsetRow> Offsets::of(Face face) const {
  std::vector<OffsetRow> out;
  for (const OffsetRow& row : *this) {
    if (row.face == face) out.push_back(row);
  }
  return out;
}

}  // namespace fairblade::fill
