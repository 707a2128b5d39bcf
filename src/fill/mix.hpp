// Product: what to weigh for so many litres of filler paste. Verbs: paste_density, mix_of, mixes_of, floating_of. kg,
// litres, kg/L.
//
// Paste volume = mass of epoxy / its density + mass of powder / density of the particles; the volume of a
// scoop of loose powder is another thing, several times that, and no measure.
#pragma once
#include <array>

#include "fill/zones.hpp"
#include "job/materials.hpp"

namespace fairblade::fill {

constexpr double sea_water = 1.025;  ///< kg/L

struct Mix {
  double litres = 0, paste_kg = 0;
  double paste_density = 0;
  double epoxy_kg = 0, resin_kg = 0, hardener_kg = 0, powder_kg = 0;
  double resin_litres = 0, hardener_litres = 0;
  double powder_litres = 0;                 ///< of the particles alone
  std::array<double, 2> ratio_by_weight{};  ///< resin : hardener, 100 : ...
  std::array<double, 2> ratio_by_volume{};
  bool other_ratio_estimated = false;  ///< the ratio that was not given rests on default densities
};

double paste_density(const job::Filler& filler);
Mix mix_of(const job::Filler& filler, double litres);

/// One zone's filler: what is mixed, and what stays on the blade.
struct ZoneMix {
  Zone zone = Zone::faces;
  Mix mix;                  ///< of ZoneAmount::to_mix
  double weight_added = 0;  ///< kg, cured; sanded and lost filler is not on the blade
};

/// The blade's weight and what it displaces, kg. Coats are not counted in weight_added.
struct Floating {
  double weight_added = 0;
  double buoyancy_gained = 0;  ///< filler less what is taken off (before the coats, where there are any), in sea water
  double weight_in_water = 0;  ///< weight_added - buoyancy_gained; what was taken off is not weighed, its material being unknown
};

std::array<ZoneMix, 3> mixes_of(const job::Job& job, const Zones& zones);
/// `taken_off`: litres.
Floating floating_of(const std::array<ZoneMix, 3>& mixes, const Zones& zones, double taken_off);

}  // namespace fairblade::fill
