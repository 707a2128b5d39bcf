// Product: the order of work, a list of steps with this job's numbers. Verbs: order_of_work. mm, litres, m², g.
//
// The order is the yard's (common practice): take off, prefill the lows, edges, faces, longboard, templates, seal, coats.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "fill/batches.hpp"
#include "fill/before_coats.hpp"
#include "fill/coats.hpp"
#include "fill/passes.hpp"
#include "fill/zones.hpp"

namespace fairblade::fill {

enum class Task {
  look_over,  ///< is the blade sound
  mark,       ///< stock line and stations, on both faces
  strip,      ///< old coating: depth
  take_off,   ///< the highs: litres, depth at station
  clean,
  core,        ///< an offer: a board bonded in; zone, area, depth is its thickness, litres are saved
  nose_glass,  ///< litres are the glass's
  prefill,     ///< a pass of a zone into its lows
  fill_edge,   ///< the last pass over an edge
  fill_faces,  ///< the last pass over the faces, screeded
  longboard,
  templates,  ///< depth: how far the coats hold a template of the finished surface off
  seal,       ///< neat epoxy over what is filled (area), into its pinholes: litres; both 0 where nothing is filled, but cut
  coat,
  patches,  ///< what the supports hid: area
  measure
};
/// The name that programs read: "take-off".
const char* name_of(Task task);

/// What does not concern a task stays 0 or empty.
struct Step {
  Task task = Task::look_over;
  std::optional<Zone> zone;
  std::optional<std::size_t> batches;  ///< index in Work::batches, of a pass of filler
  std::optional<std::size_t> coat;     ///< index in the job's coats
  int pass = 0, passes = 0;            ///< this one, and how many the zone takes
  double depth = 0;
  double litres = 0;                  ///< to mix, or as the task says
  double area = 0;                    ///< m²
  std::vector<std::string> stations;  ///< where; empty where everywhere
};

/// What it is told from.
struct OrderOf {
  const job::Job& job;
  const std::vector<StationChange>& changes;
  const Volumes& volumes;
  const Zones& zones;
  const std::array<ZonePasses, 3>& passes;
  const std::vector<PassBatches>& batches;
  const Coats& coats;
  const std::optional<BeforeCoats>& before_coats;
};
std::vector<Step> order_of_work(const OrderOf& of);

}  // namespace fairblade::fill
