#include "cli/earlier_target.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <utility>

#include "fill/stages.hpp"

namespace fairblade::cli {
namespace {

constexpr std::uintmax_t largest = 4u << 20;  // bytes; of a blade of 40 stations, read in some 40 ms
constexpr double same = 0.05;                 // mm; closer than any template is cut

bool apart(double a, double b) { return !(std::abs(a - b) <= same); }

bool same_section(const job::FrozenStation& earlier, const target::TargetSection& now) {
  if (apart(earlier.down, now.down) || apart(earlier.target_chord, now.chord)) return false;
  for (std::size_t k = 0; k < earlier.x.size(); ++k) {
    if (apart(earlier.port[k], now.half_breadth(section::Face::port, earlier.x[k])) ||
        apart(earlier.starboard[k], now.half_breadth(section::Face::starboard, earlier.x[k]))) {
      return false;
    }
  }
  return true;
}

/// At each stage the blade is shaped as far inside the target as the coats still to come are thick.
bool same_stage(const job::FrozenStage& earlier, const fill::Stage& now) {
  return earlier.name == fill::name_of(now.kind) && !apart(earlier.to_come, now.to_come);
}

}  // namespace

std::optional<job::FrozenPlan> earlier_plan(const std::string& folder) {
  std::error_code error;
  const auto file = std::filesystem::path(folder) / "plan.json";
  const auto size = std::filesystem::is_regular_file(file, error) ? std::filesystem::file_size(file, error) : 0;
  if (error || size == 0 || size > largest) return std::nullopt;
  auto earlier = job::read_frozen_plan(file.string());
  if (!earlier) return std::nullopt;
  return std::move(*earlier);
}

std::string other_than_planned(const job::FrozenPlan& earlier, const plan::Plan& plan) {
  if (!std::equal(earlier.stations.begin(), earlier.stations.end(), plan.targets.begin(), plan.targets.end(), same_section))
    return "another target";
  const auto stages = fill::stages_of(plan.job);
  if (std::equal(earlier.stages.begin(), earlier.stages.end(), stages.begin(), stages.end(), same_stage)) return {};
  return "other coats";
}

}  // namespace fairblade::cli
