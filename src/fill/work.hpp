// Product: the whole job as work: zones, mixes, passes, batches, coats, schedule, shopping, order of work. Verbs: plan_work.
#pragma once
#include "fill/batches.hpp"
#include "fill/before_coats.hpp"
#include "fill/coats.hpp"
#include "fill/mix.hpp"
#include "fill/order.hpp"
#include "fill/passes.hpp"
#include "fill/schedule.hpp"
#include "fill/shopping.hpp"
#include "fill/zones.hpp"

namespace fairblade::fill {

struct Work {
  Zones zones;
  std::array<ZoneMix, 3> mixes;  ///< in the order of Zone, as zones and passes
  Floating floating;
  std::array<ZonePasses, 3> passes;
  std::vector<PassBatches> batches;
  Coats coats;
  Schedule schedule;
  Shopping shopping;
  std::optional<BeforeCoats> before_coats;
  double sawn_off = 0;  ///< litres built past the trailing edge's saw line, in none of the above
  std::optional<YearCost> year_cost;
  std::vector<Step> order;    ///< what is done first, and next
  std::vector<Fault> faults;  ///< what cannot be done as asked: refuse the plan with these
  std::vector<Warning> warnings;
};

Work plan_work(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes,
               const Volumes& volumes);

}  // namespace fairblade::fill
