// Product: ChangeMap, how far both faces are from what they should be, seen from the side, on a grid of heights and
// chord fractions; a plain value that a map is drawn from. Verbs: change_map, map_of_readings. mm.
//
// Depth: square to the surface, as filler stands there. Positive, to add: how far the target stands out of the blade;
// negative, to take off: how far the blade stands out of the target. (The change in the offsets is along the
// half-breadth, and so is greater than this where the surface turns into the nose.) Where coats are to come, to the surface that
// is shaped under them. Between stations by the volumes' loft.
#pragma once
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "fill/fill.hpp"
#include "job/job.hpp"

namespace fairblade::fill {

/// One height. `aft` places are counted aft of the stock centreline, or of the map's own upright where that is unknown.
struct MapRow {
  double down = 0;
  double old_edge = 0, old_chord = 0;   ///< leading edge, aft; chord: the blade as it is
  double new_edge = 0, new_chord = 0;   ///< as it will be
  bool carried_on = false;              ///< above the first station or below the last: that station's section
  std::vector<double> port, starboard;  ///< depth at the map's fractions of the way from front() to back()

  double front() const { return std::min(old_edge, new_edge); }
  double back() const { return std::max(old_edge + old_chord, new_edge + new_chord); }
  const std::vector<double>& of(Face face) const { return face == Face::port ? port : starboard; }
};

/// A depth at one place: a reading, or the deepest.
struct MapPlace {
  std::string station;
  double down = 0, aft = 0;
  double x = 0;  ///< aft of the blade's leading edge as it is
  Face face = Face::port;
  bool both = false;  ///< read with calipers: the faces were not told apart
  double depth = 0;
  bool doubtful = false;  ///< to be read again before anything is made of it: shown, and counted nowhere
};

struct MapStation {
  std::string name;
  double down = 0;
};

struct ChangeMap {
  std::vector<double> fractions;     ///< 0 to 1, rising
  std::vector<MapRow> rows;          ///< from the top down, two to a station where they meet; one alone is a strip
  std::vector<MapStation> stations;  ///< from the top down
  std::vector<MapPlace> readings;
  std::optional<MapPlace> deepest_add, deepest_removal;  ///< at the stations; beyond `error`
  double error = 0;                                      ///< depths within it may be nothing but reading error
  bool stock_known = false;                              ///< else leading edges stand on one upright, aft = 0
  std::vector<std::string> notes;                        ///< what the map must say of itself
};

ChangeMap change_map(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                     const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes);

/// A station of which only depths at some places are known: what is left after a round of filling or sanding.
struct StationDepths {
  std::string name;
  double down = 0;
  std::optional<double> ahead;
  double chord = 0;
  bool both = false;  ///< calipers: give each depth for port and for starboard
  struct At {
    double x = 0;
    Face face = Face::port;
    double depth = 0;
    bool doubtful = false;  ///< as of a MapPlace
  };
  std::vector<At> depths;
};
/// Straight between readings and from station to station; a face not read at one station is taken from its neighbours
/// that were, and one read nowhere shows nothing; both are noted.
ChangeMap map_of_readings(std::vector<StationDepths> stations, double error);

}  // namespace fairblade::fill
