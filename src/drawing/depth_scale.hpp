// Private to the drawing room. The round depths that a map shows, and depths in words.
// Product: DepthScale, one for what is added and one for what is taken off. Verbs: depth_scale, signed_depth.
#pragma once
#include <string>
#include <vector>

#include "base/units.hpp"
#include "drawing/sheet.hpp"

namespace fairblade::drawing {

constexpr const char* minus = "\xe2\x88\x92";  ///< U+2212, as wide as a plus

struct DepthScale {
  double sign = 1;            ///< +1 to add, -1 to take off
  double from = 0;            ///< mm: nothing is hatched below it
  std::vector<double> lines;  ///< mm, rising, all beyond `from`: a contour each
  std::vector<double> bands;  ///< mm, rising: `from`, and where the hatching gets closer
};
/// Steps of 1, 2 or 5 in the job's unit, no finer than `error`, at most four of them up to `deepest` mm.
DepthScale depth_scale(double sign, double deepest, double error, LengthUnit unit);

/// "+1.2" in the unit's usual places.
std::string signed_depth(double mm, LengthUnit unit);
/// A round depth: "2", "0.5", in the unit.
std::string round_depth(double mm, LengthUnit unit);
/// "0.5 to 2 mm" of each band; the last "more than 4 mm".
std::vector<std::string> band_words(const DepthScale& scale, LengthUnit unit);

/// The hatching of one band: what is added rises singly; what is taken off is crossed. Deeper is closer.
std::vector<Path> band_hatch(const MultiPolygon& area, const DepthScale& scale, std::size_t band);

}  // namespace fairblade::drawing
