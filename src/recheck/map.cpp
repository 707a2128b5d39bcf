#include "recheck/map.hpp"

#include "fill/shown_rows.hpp"

namespace fairblade::recheck {

fill::ChangeMap map_of(const Recheck& recheck) {
  std::vector<fill::StationDepths> stations;
  for (const HeightRead& height : recheck.now().heights) {
    const auto& section = height.surface.section;
    fill::StationDepths one;
    one.name = height.surface.name;
    one.down = height.surface.down;
    if (height.surface.origin_ahead) one.ahead = *height.surface.origin_ahead - section.leading_edge_x;
    one.chord = section.trailing_edge_x - section.leading_edge_x;
    one.both = height.calipers;
    for (const Face face : {Face::port, Face::starboard}) {
      std::vector<fill::OffsetRow> rows;
      for (const Judged& each : height.readings) {
        if (each.face == face && !each.alone)
          rows.push_back({each.x - section.leading_edge_x, 0, each.depth, face});  // as if against nothing
      }
      for (const Judged& each : height.readings) {
        if (each.face == face && each.alone) one.depths.push_back({each.x - section.leading_edge_x, face, each.depth, true});
      }
      const auto shown = fill::rows_shown(std::move(rows), fill::most_shown);
      for (const auto& row : shown) one.depths.push_back({row.x, row.face, row.change()});
    }
    stations.push_back(std::move(one));
  }
  return fill::map_of_readings(std::move(stations), recheck.options.tolerance);
}

}  // namespace fairblade::recheck
