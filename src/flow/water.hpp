// Product of the flow room: Water, a blade before and after in the water, station by station and as a whole.
// Verbs: before_and_after. mm, degrees, knots, Hz, N, Nm; each part's header tells its method and source.
//
// Two shapes compared, not a design: balance, loads and the stock belong to a qualified designer.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "flow/blade.hpp"
#include "flow/edge_tone.hpp"
#include "flow/sections.hpp"
#include "flow/stall.hpp"
#include "job/job.hpp"

namespace fairblade::flow {

constexpr double usual_knots = 5, usual_helm = 8;  ///< where the job says nothing
/// Where the job says nothing: `none` for a blade that turns about a hinge ahead of its leading edge at every station (taken
/// to hang on a transom, through the surface), else `full`.
EndPlate usual_end_plate(const job::Job& job);

struct Tone {
  Edge edge;
  std::optional<Band> frequency;  ///< Hz at the speed
  std::optional<Band> humming;    ///< knots, where a frequency was heard
};

struct StationWater {
  std::string station;
  double down = 0;
  double weight = 0;  ///< share of the blade's area that it stands for; they add up to 1
  SectionWater before, after;
  Feigned feigned;  ///< what reading errors alone would show
  NoseComparison nose;
  Tone tone_before, tone_after;
};

/// The three sentences, and whether each gain is beyond twice its error from the readings.
struct Meaning {
  std::string stall, hum, helm;  ///< "later?", "does it hum?", "twitchy?"; never empty
  std::string pull;              ///< of a lopsided blade; empty where the readings cannot tell or none shows
  std::string verdict;           ///< what is worth doing for the water's sake, or that nothing is
  bool stall_gain = false, stall_loss = false, hum_change = false, helm_change = false, pull_gain = false;
};

struct Water {
  double knots = 0, helm = 0;
  EndPlate end_plate = EndPlate::full;
  std::optional<double> heard;
  std::vector<StationWater> stations;  ///< one per station, in the job's order
  BladeWater blade_before, blade_after;
  /// Degrees of helm that hold the blade's own pull, all stations by their weights; nothing where sides are not known.
  std::optional<double> cancel_before, cancel_after;
  double cancel_error = 0;               ///< degrees, from reading errors
  std::vector<EdgeOption> edge_options;  ///< for the target's edge, middle station
  Meaning meaning;
  std::vector<std::string> limits;    ///< what this page does not know, to be printed with it
  std::vector<DefaultUsed> defaults;  ///< "speed", "water.end_plate", "water.helm"
};

/// measured and targets: one per station of the job, in its order. job.speed and job.water say what is asked.
Water before_and_after(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                       const std::vector<target::TargetSection>& targets, std::size_t panels = usual_panels);

}  // namespace fairblade::flow
