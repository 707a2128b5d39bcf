// Product: OpenPlace, a place that an earlier round left to do and that no later one read again. Verbs: OpenPlaces' own. mm.
//
// Whole stations that were not read are told elsewhere (Recheck::unread). A place is read again where the same face of the same
// height has a reading within a fortieth of the chord. Of a scan the deepest of each such stretch stands for it.
#pragma once
#include <string>
#include <vector>

#include "recheck/placed.hpp"

namespace fairblade::recheck {

struct OpenPlace {
  std::string file;  ///< of the round that left it
  std::string name;  ///< of its height
  double down = 0;
  Judged reading;
};

class OpenPlaces {
 public:
  /// Drops what this round read again.
  void read_again(const std::vector<HeightRead>& heights);
  /// Adds what it leaves: beyond the tolerance and beyond twice its own error, readings that stand alone apart.
  void add(const std::string& file, const std::vector<HeightRead>& heights, double tolerance);
  /// What is left at heights that the last round did read, the deepest first.
  std::vector<OpenPlace> at_heights_of(const std::vector<HeightRead>& last) const;

 private:
  std::vector<OpenPlace> places_;
};

}  // namespace fairblade::recheck
