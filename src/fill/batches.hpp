// Product: how many batches of what size each pass takes, and the minutes each gives. Verbs: pot_life, batches_of.
//
// Pot life halves for each 10 °C warmer (common practice; published factors run from 1.5 to 2.5). A larger mass goes
// off sooner: here as the cube root of mass, as its surface keeps less pace with its bulk (an estimate, no source); a
// smaller one is not credited with more. The mass is that of the epoxy in it.
#pragma once
#include <optional>
#include <vector>

#include "fill/mix.hpp"
#include "fill/passes.hpp"

namespace fairblade::fill {

/// Minutes at that temperature, °C, of so many grams of epoxy.
double pot_life(const job::Workshop& shop, double temperature, double epoxy_g);

/// The equal batches of one pass. Sums over all passes are the zone's mix.
struct PassBatches {
  Zone zone = Zone::faces;
  int pass = 0;
  int count = 0;
  double litres = 0;                                 ///< of the pass
  double batch_g = 0;                                ///< paste; never more than batch_limit_g
  double resin_g = 0, hardener_g = 0, powder_g = 0;  ///< of one batch
  double resin_ml = 0, hardener_ml = 0;
  double powder_ml = 0;                 ///< of the particles alone; a scoop of loose powder is several times that
  double minutes = 0;                   ///< pot life of one batch
  double spread_minutes = 0;            ///< to spread one batch
  double pass_minutes = 0;              ///< to spread them all, one after the other
  bool smaller_for_time = false;        ///< below the limit, for it to be spread in time
  bool cannot_spread_in_time = false;   ///< the whole pass takes longer than one batch stays workable
  std::optional<job::Window> overcoat;  ///< hours until the next pass
  std::optional<double> sand_after_hours;
};

std::vector<PassBatches> batches_of(const job::Job& job, const std::array<ZonePasses, 3>& passes);

/// For batches that cannot be spread in time, one a zone.
std::vector<Warning> warnings_of(const job::Workshop& shop, const std::vector<PassBatches>& batches);

}  // namespace fairblade::fill
