// The targets an owner could ask for, weighed side by side. Verbs: weigh_choices.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace fairblade::plan {

/// One deepest place of the whole blade.
struct DeepestPlace {
  double depth = 0, x = 0;  ///< mm, along the normal; aft of the measured leading edge
  std::string station;
  section::Face face = section::Face::port;
};

struct Choice {
  std::string name;                    ///< "least fill", "0012 throughout", ...
  std::vector<job::Override> asks;     ///< the target keys that ask for it, as options of `plan`
  std::optional<std::string> refused;  ///< why there is no such plan; nothing below means anything then
  double add = 0, remove = 0;          ///< litres, first to last station
  double add_error = 0;                ///< litres, one standard deviation
  DeepestPlace deepest_add, deepest_removal;
  fill::BladeFigures before, after;
  bool breaks_limit = false;   ///< cuts deeper than max_removal somewhere
  std::string gain_and_price;  ///< one plain sentence
};

/// Sorted by litres to add; those that cannot be had come last. The job's own wishes (nose, edge, extensions,
/// limits, patches) stand in every row but for what the row is about; those that were told as options are asked for again. Empty
/// when a station's readings are refused.
std::vector<Choice> weigh_choices(const job::Job& job, const std::vector<job::Override>& overrides = {});

}  // namespace fairblade::plan
