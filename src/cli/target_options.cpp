#include "cli/target_options.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace fairblade::cli {
namespace {

// Keys as in a job's "target", and what the help says. Values are judged by the job room, as those of a file are.
constexpr std::array<std::pair<std::string_view, std::string_view>, 12> keys{{
    {"approach", "full-section, or edges-only"},
    {"thickness", "least-fill, closest, a share such as 12%, or a length such as 50mm"},
    {"max_thickness_at", "form, closest, or a fraction of the chord from 0.2 to 0.6"},
    {"leading_edge_radius", "form, a length, or a share of the chord such as 1.8%"},
    {"trailing_edge_thickness", "form, or a length"},
    {"extend_leading_edge", "a length to build the leading edge forward by"},
    {"extend_trailing_edge", "a length to build the trailing edge aft by"},
    {"keep", "edges-only: where the kept part of the chord begins and ends"},
    {"leading_edge", "shape, or leave"},
    {"no_cut", "a patch where nothing comes off: down from, down to, x from, x to"},
    {"max_removal", "deepest cut allowed, a length"},
    {"spanwise", "fair, straight, or as-measured"},
}};

std::string option_of(std::string_view key) {
  std::string out = "--" + std::string(key);
  std::replace(out.begin(), out.end(), '_', '-');
  return out;
}

}  // namespace

void add_target_options(CLI::App& app, TargetOptions& options) {
  for (const auto& [key, help] : keys) {
    app.add_option(option_of(key), options[std::string(key)], std::string(help))
        ->group("Target (wins over the job file; lengths in the job's unit)")
        ->type_name("VALUE");
  }
}

std::vector<job::Override> overrides_of(const CLI::App& app, const TargetOptions& options) {
  std::vector<job::Override> out;
  for (const auto& [key, help] : keys) {
    if (app.count(option_of(key)) > 0) out.emplace_back(key, options.at(std::string(key)));
  }
  return out;
}

}  // namespace fairblade::cli
