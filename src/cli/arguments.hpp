// Private to the cli room. Product: a command's words, taken apart by CLI11; mistyped ones answered with the nearest.
// Verbs: parse, refuse.
#pragma once
#include <CLI/CLI.hpp>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "base/fault.hpp"

namespace fairblade::cli {

/// Reads `args` into what `app` was told to fill. Nothing: go on. Otherwise the exit status: help or version was
/// printed on `out`, or a refusal on `err`.
std::optional<int> parse(CLI::App& app, const std::vector<std::string>& args, std::ostream& out, std::ostream& err);

/// One line per fault, up to 20; the exit status of a refusal.
int refuse(const std::vector<Fault>& faults, std::ostream& err);
/// The arguments themselves are at fault.
int refuse(std::string what, std::string remedy, std::ostream& err);

/// "fairblade 0.1.0".
std::string version_line();

}  // namespace fairblade::cli
