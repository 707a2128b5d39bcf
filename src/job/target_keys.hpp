// Private to the job room. Product: the target that was asked for, from the file, a station or the command line.
// Verbs: read_target_key, read_target_keys, node_of_option, check_against_chord, target_default.
#pragma once
#include <span>
#include <string_view>

#include "job/job.hpp"
#include "job/reader.hpp"

namespace fairblade::job {

/// In the order of the job file.
std::span<const std::string_view> target_keys();
/// What a key has when nobody sets it, as text.
std::string_view target_default(std::string_view key);
/// Sets one key; a fault where the value makes no sense. `key` is one of target_keys().
void read_target_key(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target);
/// A key's value as it stands on the command line. Lists are parted by commas; elsewhere a comma is a decimal comma.
Node node_of_option(std::string_view key, std::string_view text, int line);
/// Every target key that stands in `object`.
void read_target_keys(const Reader& reader, const Node& object, TargetRequest& target);
/// Lengths that cannot be on this chord, mm. Each bad value is refused once, at the place where it was written.
void check_against_chord(const Station& station, LengthUnit unit, Faults& faults, std::vector<std::string>& told);

}  // namespace fairblade::job
