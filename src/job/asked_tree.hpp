// Private to the job room. Product: parts of the tree of a job file, made of what was told otherwise: readings of a CSV,
// options, defaults. Verbs: node_of_length, node_of_readings, tell_target, erase_key, add_defaults.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "job/stations.hpp"
#include "job/tree.hpp"

namespace fairblade::job {

/// These stand in Node::line of what no file said: an option, a default.
constexpr int option_line = -2, default_line = -1;

/// A length that reads back to the same mm: a number in the unit, or a text such as "0.3mm" where none is short.
Node node_of_length(double mm, LengthUnit unit);
/// The keys "measured_by" and "readings" of a station whose readings, as they were read, came from a CSV.
Node node_of_readings(const Station& station, LengthUnit unit);
/// A target key as given by an option or a row of a CSV, where there are no braces, under root's "target".
void tell_target(Node& root, std::string_view key, Node value);
void erase_key(Node& object, std::string_view key);
/// The defaults' values, at their places.
void add_defaults(Node& root, const std::vector<DefaultUsed>& defaults, LengthUnit unit);

}  // namespace fairblade::job
