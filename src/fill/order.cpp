#include "fill/order.hpp"

#include <algorithm>

namespace fairblade::fill {

const char* name_of(Task task) {
  switch (task) {
    case Task::look_over: return "look-over";
    case Task::mark: return "mark";
    case Task::strip: return "strip";
    case Task::take_off: return "take-off";
    case Task::clean: return "clean";
    case Task::core: return "core";
    case Task::nose_glass: return "nose-glass";
    case Task::prefill: return "prefill";
    case Task::fill_edge: return "fill-edge";
    case Task::fill_faces: return "fill-faces";
    case Task::longboard: return "longboard";
    case Task::templates: return "templates";
    case Task::seal: return "seal";
    case Task::coat: return "coat";
    case Task::patches: return "patches";
    case Task::measure: return "measure";
  }
  return "";
}

namespace {

Step simple(Task task) {
  Step out;
  out.task = task;
  return out;
}

void before_filling(const OrderOf& of, std::vector<Step>& out) {
  out.push_back(simple(Task::look_over));
  out.push_back(simple(Task::mark));
  if (of.job.coating_to_strip > 0) {
    out.push_back(simple(Task::strip));
    out.back().depth = of.job.coating_to_strip;
  }
  const auto deepest = std::max_element(of.changes.begin(), of.changes.end(),
                                        [](const auto& a, const auto& b) { return a.removal.depth < b.removal.depth; });
  Step highs = simple(Task::take_off);
  if (const auto& before = of.before_coats) {  // which is no less than what the finished shape shows
    highs.depth = before->deepest;
    highs.litres = before->remove + before->beyond;
    highs.stations = {of.changes[before->station].station};
  } else if (deepest != of.changes.end()) {
    highs.depth = deepest->removal.depth;
    highs.litres = of.volumes.remove + of.volumes.above_remove + of.volumes.below_remove;
    highs.stations = {deepest->station};
  }
  if (highs.depth > no_filler) out.push_back(std::move(highs));
  out.push_back(simple(Task::clean));
}

Step pass_step(const OrderOf& of, const ZonePasses& zone, const Pass& pass, Task task) {
  Step out = simple(task);
  out.zone = zone.zone;
  out.pass = pass.number;
  out.passes = static_cast<int>(zone.passes.size());
  out.depth = pass.depth;
  out.litres = pass.litres;
  out.stations = pass.stations;
  for (std::size_t k = 0; k < of.batches.size(); ++k) {
    if (of.batches[k].zone == zone.zone && of.batches[k].pass == pass.number) out.batches = k;
  }
  return out;
}

// Glass and boards, the lows of every zone pass by pass, then the last pass of the edges and of the faces: the edges are
// what a screed over the faces rides on.
void filling(const OrderOf& of, std::vector<Step>& out) {
  for (const ZonePasses& zone : of.passes) {
    if (!zone.core) continue;
    Step step = simple(Task::core);
    step.zone = zone.zone;
    step.depth = zone.core->thickness;
    step.litres = zone.core->filler_saved;
    step.area = zone.core->area;
    out.push_back(std::move(step));
  }
  if (of.coats.nose_glass && of.coats.nose_glass->cloth_area > 0) {
    out.push_back(simple(Task::nose_glass));
    out.back().zone = Zone::leading_edge;
    out.back().litres = of.coats.nose_glass->glass_litres;
    out.back().area = of.coats.nose_glass->cloth_area;
  }
  std::size_t most = 0;
  for (const ZonePasses& zone : of.passes) most = std::max(most, zone.passes.size());
  for (std::size_t number = 0; number + 1 < most; ++number) {
    for (const ZonePasses& zone : of.passes) {
      if (number + 1 < zone.passes.size()) out.push_back(pass_step(of, zone, zone.passes[number], Task::prefill));
    }
  }
  for (const Zone each : {Zone::leading_edge, Zone::trailing_edge, Zone::faces}) {
    const ZonePasses& zone = of.passes[static_cast<std::size_t>(each)];
    if (zone.passes.empty()) continue;
    out.push_back(pass_step(of, zone, zone.passes.back(), each == Zone::faces ? Task::fill_faces : Task::fill_edge));
  }
}

void after_filling(const OrderOf& of, std::vector<Step>& out) {
  if (of.coats.wetted.filled > 0) out.push_back(simple(Task::longboard));
  out.push_back(simple(Task::templates));
  out.back().depth = of.coats.build;
  if (of.coats.wetted.filled > 0) {
    out.push_back(simple(Task::seal));
    out.back().litres = of.coats.pinhole_litres;
    out.back().area = of.coats.wetted.filled;
  } else if (of.job.coats.empty() &&
             std::any_of(out.begin(), out.end(), [](const Step& one) { return one.task == Task::take_off; })) {
    out.push_back(simple(Task::seal));
  }
  double patches = 0;
  for (std::size_t k = 0; k < of.coats.coats.size(); ++k) {
    const CoatPlan& coat = of.coats.coats[k];
    if (!(coat.area > 0)) continue;
    Step step = simple(Task::coat);
    step.coat = k;
    step.depth = coat.build;
    step.litres = coat.litres;
    step.area = coat.area;
    out.push_back(std::move(step));
    patches = std::max(patches, coat.patches);
  }
  if (patches > 0) {
    out.push_back(simple(Task::patches));
    out.back().area = patches;
  }
  out.push_back(simple(Task::measure));
}

}  // namespace

std::vector<Step> order_of_work(const OrderOf& of) {
  std::vector<Step> out;
  before_filling(of, out);
  filling(of, out);
  after_filling(of, out);
  return out;
}

}  // namespace fairblade::fill
