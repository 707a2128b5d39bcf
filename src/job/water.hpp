// What the owner asks of the page that compares the blade before and after in the water. Read with the job (job.hpp);
// what is left out is a default, chosen and listed by the flow room. Verbs: none, a wish alone.
#pragma once
#include <optional>

namespace fairblade::job {

/// How much the hull closes the blade's upper end. `full`: the hull is a mirror, right for a top within a few
/// centimetres of a flat enough hull. `none`: a blade through the surface, hung on a transom, or a wide gap.
enum class EndPlate { none, half, full };

struct WaterWish {
  std::optional<EndPlate> end_plate;
  std::optional<double> helm;   ///< degrees, for the load and the picture of the pressures
  std::optional<double> heard;  ///< Hz that the owner hears
};

}  // namespace fairblade::job
