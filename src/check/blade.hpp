// Private to the check room. Product: findings on the blade, station against station. Verbs: one each.
#pragma once
#include <vector>

#include "check/findings.hpp"
#include "form/form.hpp"
#include "section/section.hpp"

namespace fairblade::check {

/// A section's own centre line, mm to port of the centre plane at its two edges.
///
/// Least squares of (port - starboard)/2 at nine places: steadier here than the robust fit of a form, which on a lopsided
/// section may settle on either side. From calipers, trailing_edge_off_centre tells (as in target/twist.hpp).
struct CentreEnds {
  double leading = 0, trailing = 0;
  double error = 0;  ///< one standard deviation of either
  double at(double share) const { return leading + share * (trailing - leading); }
  double degrees(double chord) const;
};

/// Stations that could be measured, in the order of the job, with what the other rooms made of them.
struct Stations {
  job::Job job;  ///< only those stations, without the readings that were found wrong
  std::vector<section::MeasuredSection> measured;
  std::vector<form::FittedForm> fitted;
};

std::optional<CentreEnds> centre_ends(const Stations& blade, std::size_t k, double sigma);
/// Were both sides read, each by itself?
bool both_sides(const section::MeasuredSection& measured);
/// The beginning of a finding on station k.
Finding at_station(const Stations& blade, std::size_t k, std::string code, Rank rank, Sureness sure, std::string what,
                   std::string remedy);

void judge_noses(const Stations& blade, const std::vector<double>& lost, double sigma, std::vector<Finding>& out);
void judge_swapped_stations(const Stations& blade, double sigma, std::vector<Finding>& out);
void judge_twist(const Stations& blade, double sigma, std::vector<Finding>& out);
void judge_lean(const Stations& blade, double sigma, std::vector<Finding>& out);
void judge_along_the_span(const Stations& blade, double sigma, std::vector<Finding>& out);

}  // namespace fairblade::check
