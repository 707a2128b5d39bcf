// Private to the cli room. Product: the target keys given as options. Verbs: add_target_options, overrides_of.
#pragma once
#include <CLI/CLI.hpp>
#include <map>
#include <string>
#include <vector>

#include "job/job.hpp"

namespace fairblade::cli {

/// Values by key, as the options were given.
using TargetOptions = std::map<std::string, std::string>;

/// --leading-edge-radius and the rest, one option to each key of a job's "target". `options` must outlive the parsing.
void add_target_options(CLI::App& app, TargetOptions& options);
/// Those that were given, for read_job.
std::vector<job::Override> overrides_of(const CLI::App& app, const TargetOptions& options);

}  // namespace fairblade::cli
