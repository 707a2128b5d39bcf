// Product: Litres, what one round's readings leave to add and to take off. Verbs: litres_left. mm inside, litres out.
//
// Readings that stand alone are left out until they are read again. Depth runs straight between the others along the girth of
// each face, its end readings carried on to the edges; straight between heights at equal fractions of the girth; and beyond the
// first and the last height that was read it is carried on to the first and the last station of the plan, which is what the
// plan's own litres cover. Integrated exactly along the girth (the places where high turns to low are found), by Simpson's rule
// down the blade. That is the layer's area times its depth: where the surface is bent to radius R, depth d, it is short by d/2R
// of it (2 % at a nose of 10 mm for 0.5 mm).
#pragma once
#include <vector>

#include "recheck/placed.hpp"

namespace fairblade::recheck {

struct Amount {
  double add = 0, remove = 0;  ///< litres
};

struct Litres {
  Amount left;                             ///< from the first to the last station of the plan
  double add_error = 0, remove_error = 0;  ///< one standard deviation, from reading error
  /// What a blade exactly on its target would show, to add and to take off alike, read with this error at these places:
  /// 0.3989 s at a reading, and 0.8116 of that on the whole between two of them, along the girth and down the blade
  /// (the mean of sqrt(w² + (1 - w)²)). By simulation of 400 rounds: 0.0372 L foretold, 0.0378 L seen.
  double by_chance = 0;
  Amount beyond;                  ///< above the first station and below the last, their depths carried on
  std::vector<Amount> by_height;  ///< shares of `left`, beside the heights: half-way to the neighbours
  bool carried_on = false;        ///< some station of the plan lies beyond the heights that were read
};

Litres litres_left(const Frozen& frozen, const std::vector<HeightRead>& heights);

}  // namespace fairblade::recheck
