// The hand-made plan with work to do: every number chosen, none worked out by the rooms under test.
#pragma once
#include "report/hand_made.hpp"

namespace hand_made {

inline report::Plan worked() {
  report::Plan plan = hand_made::plan();
  fill::Work& work = plan.work;
  work.zones.by_zone[1].zone = fill::Zone::faces;
  work.zones.by_zone[1].net = 1.25;
  work.zones.by_zone[1].low = 1.0;
  work.mixes[1].zone = fill::Zone::faces;
  work.mixes[1].mix.powder_litres = 0.375;
  work.mixes[1].mix.ratio_by_volume = {100, 50};
  work.floating.buoyancy_gained = 0.5;
  work.passes[1].zone = fill::Zone::faces;
  work.passes[1].passes = {{1, 5.5, 0, 1.25, {"A", "B"}}};
  work.passes[1].core = fill::Core{12, 3, 0.05, 0.6, 4, 1};
  fill::PassBatches batch;
  batch.pass = 1;
  batch.count = 4;
  batch.powder_ml = 62.5;
  batch.overcoat = job::Window{6, 24};
  work.batches = {batch};
  job::Coat asked;
  asked.recoat = job::Window{0.5, 3};
  plan.job.coats = {asked};
  fill::CoatPlan coat;
  coat.name = "Curlew";
  coat.packs = 1;
  coat.packs_used = 0.5;
  coat.part_pack = fill::PartPack{2, 0.05, 0.1, 20, 15, 80.0, 64.0, 16.0, 2.5};
  coat.cloth = fill::ClothNeed{1.5, 1000, 1.5, 0.25};
  work.coats.coats = {coat};
  work.coats.wetted.bare = 0.125;
  work.coats.edges = {{"A", 4, 0.5, 8, 2.75, 1.25, false, 5, false}, {"B", 3, 0.5, 8, 1.75, 1.25, false, 5, false}};
  work.coats.nose_glass = fill::NoseGlassPlan{0.25, 2, {{"A", 4, 8, {90, 60}, 2}, {"B", 1, 0, {}, 1}}, 0.5, 0.125, 0.3, 0.2, {}};
  work.schedule.days = {{0, "Curlew", 29, {{1, 540, 569, 600}}}};
  work.schedule.blocks = {{"A", fill::Face::port, 120, 0.3, 1000.0, false, 40.0}};
  work.shopping.items = {{"epoxy resin", 1.5, "kg", 1.0, 2, 40.0}, {"cloth", 2, "m", {}, 0, {}}};
  work.year_cost = fill::YearCost{"soft", "hard", 50, 40, 8};
  fill::Step step;
  step.task = fill::Task::fill_faces;
  step.zone = fill::Zone::faces;
  step.batches = 0;
  step.pass = step.passes = 1;
  step.depth = 5.5;
  step.litres = 1.25;
  work.order = {step};
  return plan;
}

}  // namespace hand_made
