// Private to the check room. Product: what a station's other readings say that each one should be.
// Verbs: seen_at, values_of, spot_of, nearness, halves_together, centres_together, together, expected_at. mm.
//
// A Gaussian process (Rasmussen & Williams 2006): half-thickness H = chord (t form + a smooth remainder), centre line
// C = shift + skew + a smooth remainder; port = H + C, starboard = H - C, caliper = 2H. The remainders are smooth in the
// angle a of x = chord (1 - cos a)/2, which is root-shaped at both ends. H at the very leading edge is free: it may be
// worn.
#pragma once
#include <Eigen/Core>
#include <cstddef>
#include <vector>

#include "job/job.hpp"

namespace fairblade::check {

enum class Kind { port, starboard, caliper };
const char* name_of(Kind kind);

/// One number of the measuring sheet.
struct Seen {
  Kind kind = Kind::port;
  double x = 0, value = 0;
  int line = 0;
  std::size_t row = 0;  ///< in Station::readings
};
/// Every number of a station, in the order of its readings.
std::vector<Seen> seen_at(const job::Station& station);
Eigen::VectorXd values_of(const std::vector<Seen>& seen);

/// What a reading should be by others; `error` is one standard deviation, the reading's own error with it.
struct Expected {
  double value = 0, error = 1;
};

/// Sizes in chords, reach in radians of the angle.
struct Smoothness {
  double shape = 0.003, camber = 0.003, reach = 0.8;
};

/// A station's frame: mm; the form begins `skeg` ahead of the leading edge.
struct Frame {
  double chord = 0, skeg = 0, sigma = 0.5;
};

/// Where a reading stands, as the covariances take it: it reads half times H + centre times C.
struct Spot {
  double half = 1, centre = 0;
  double angle = 0, form = 0, along = 0;
  bool edge = false;  ///< the leading edge itself
};

Spot spot_of(const Seen& seen, const Frame& frame);
/// Covariances in chords²: of half-thicknesses and of centre lines, `near` being the spots' nearness.
double nearness(const Spot& a, const Spot& b, double reach);  ///< exp(-apart²/2), apart in reaches of the angle
double halves_together(const Spot& a, const Spot& b, double near, const Smoothness& smooth);
double centres_together(const Spot& a, const Spot& b, double near, const Smoothness& smooth);
/// Of what is read at both.
double together(const Spot& a, const Spot& b, double near, const Smoothness& smooth);

/// What `asked` should read, by `seen` alone.
std::vector<Expected> expected_at(const std::vector<Seen>& asked, const std::vector<Seen>& seen, const Frame& frame,
                                  const Smoothness& smooth);
constexpr Smoothness old_blade{0.003, 0.003, 0.8};
/// From a published form, over an old blade, to a plate that is none.
const std::vector<Smoothness>& smoothnesses();

}  // namespace fairblade::check
