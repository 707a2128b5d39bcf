#include "fill/work.hpp"

#include <iterator>
#include <utility>

#include "fill/stages.hpp"
#include "fill/trailing_edge.hpp"

namespace fairblade::fill {

Work plan_work(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes,
               const Volumes& volumes) {
  Work out;
  const auto surface = surface_of(job, measured, targets);
  out.zones = zones_of(job, measured, targets, changes, volumes, surface, build_of(job));
  out.before_coats = before_coats(job, targets, changes, volumes, surface);
  out.coats = coats_of(job, measured, targets, out.zones, surface);
  if (out.coats.nose_glass) take_glass(job, out.coats.nose_glass->glass_litres, out.zones);
  out.mixes = mixes_of(job, out.zones);
  const double taken_off = out.before_coats ? out.before_coats->remove + out.before_coats->beyond
                                            : volumes.remove + volumes.above_remove + volumes.below_remove;
  out.floating = floating_of(out.mixes, out.zones, taken_off);
  out.passes = passes_of(job, measured, changes, out.zones, surface, out.coats);
  out.batches = batches_of(job, out.passes);
  out.faults = faults_of(job, out.coats);
  for (Fault& fault : faults_of(job)) out.faults.push_back(std::move(fault));
  out.schedule = schedule_of(job, targets, out.coats, out.faults);
  out.shopping = shopping_of(job, out.mixes, out.coats);
  out.sawn_off = litres_sawn_off(edge_card_of(job, targets, job.print.gauge_spacing, measured));
  if (job.compare_coatings.size() == 2) out.year_cost = compare_coatings(job.compare_coatings[0], job.compare_coatings[1]);
  out.order = order_of_work({job, changes, volumes, out.zones, out.passes, out.batches, out.coats, out.before_coats});
  for (auto list : {warnings_of(job.workshop, out.batches), warnings_of(out.coats), warnings_of(job, out.schedule),
                    warnings_of(job, targets)}) {
    out.warnings.insert(out.warnings.end(), std::make_move_iterator(list.begin()), std::make_move_iterator(list.end()));
  }
  return out;
}

}  // namespace fairblade::fill
