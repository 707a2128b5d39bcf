// Private to the check room. Product: findings on single readings of one station, and the station without them.
// Verbs: judge_readings, judge_repeats, judge_calipers, own_error_of.
#pragma once
#include <vector>

#include "check/fair_line.hpp"
#include "check/findings.hpp"
#include "job/own_error.hpp"

namespace fairblade::check {

constexpr double beyond = job::disagree_beyond;  ///< standard deviations; see findings.hpp

/// What one station's readings say of each other.
struct StationJudged {
  job::Station station;  ///< without the readings that were found wrong; swapped rows set right
  double nose_lost = 0;  ///< mm of leading edge that the readings say is gone; 0: none that they can tell
  double scatter = 0;    ///< standard deviations of readings about the fair line, robust; 0 where it cannot be told
};

/// The thickness read at the very leading edge, mm, and its standard deviation; nothing where it was not read.
struct EdgeThickness {
  double mm = 0, error = 1;
  bool flat() const { return mm > beyond * error; }
};
std::optional<EdgeThickness> edge_thickness(const job::Station& station, double sigma);

/// One standard deviation of a reading, from repeats at one place, and what the job says.
OwnError own_error_of(const job::Job& job);

StationJudged judge_readings(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out);

/// Readings of one place that differ by more than reading error.
void judge_repeats(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out);

/// port + starboard against the caliper, where all three were read.
void judge_calipers(const job::Job& job, const job::Station& station, double sigma, std::vector<Finding>& out);

}  // namespace fairblade::check
