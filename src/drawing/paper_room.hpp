// What a sheet that is read, not cut along, may take of a page, so that it stays whole on one. mm. Verbs: none, a
// size alone.
#pragma once

namespace fairblade::drawing {

/// The least of paper and margin that stay usual: 10 mm on A4 and on Letter take these.
struct PaperRoom {
  double long_side = 243, short_side = 174;  ///< of a map, upright or lying
  double table_height = 243;                 ///< of tables, cards and their pictures, which are 180 mm wide
};

}  // namespace fairblade::drawing
