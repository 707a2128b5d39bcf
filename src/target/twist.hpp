// Twist and lean: where each section's own centre line lies against the centre plane. Verbs: find_twist.
// Offsets mm to port; degrees, positive with the trailing edge to port of the leading edge.
//
// A section's own centre line is the fit's (centre shift and skew, robust); with too few readings for that, the middle of
// the readings at the two edges; for calipers, the given `trailing_edge_off_centre`, the section taken to turn about the
// stock (about its leading edge where the stock's place is not known).
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"

namespace fairblade::target {

struct StationTwist {
  std::string station;
  bool known = false;        ///< nothing below means anything otherwise
  double skew_degrees = 0;   ///< against the centre plane
  double twist_degrees = 0;  ///< against the centre station's (the centre plane's where that is not known)
  double twist_mm = 0;       ///< the same over this chord: how much further to port the trailing edge stands than the leading
  double error_degrees = 0;  ///< one standard deviation of skew_degrees, from the reading error
  double trailing_edge_off = 0, leading_edge_off = 0;  ///< mm to port of the centre plane
};

struct BladeTwist {
  std::vector<StationTwist> stations;  ///< one per station of the job
  std::string centre_station;
  double total_degrees = 0;            ///< from the most to port to the most to starboard, measured stations
  std::optional<double> lean_degrees;  ///< of where the sections cross the stock (their middles, where its place is not known),
                                       ///< positive to port going down; nothing for fewer than two stations
  std::vector<Warning> warnings;       ///< "twist", "lean": beyond one degree
};

BladeTwist find_twist(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                      const std::vector<form::FittedForm>& fitted);

}  // namespace fairblade::target
