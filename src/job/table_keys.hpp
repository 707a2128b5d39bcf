// Private to the job room. Product: what a job file says, as the rows that a CSV has above its header, and what no such row
// can hold. Verbs: key_rows_of, same_value.
#pragma once
#include <span>
#include <string>
#include <vector>

#include "job/to_measure.hpp"
#include "job/tree.hpp"

namespace fairblade::job {

struct KeyRows {
  std::vector<KeyOfTable> rows;        ///< in the order of the job file; "units" and what belongs to stations apart
  std::vector<std::string> not_in_it;  ///< keys whose values have no form in a CSV: "coats", "target.no_cut"
};
KeyRows key_rows_of(const Node& root);

/// The same values, however the numbers are written.
bool same_value(std::span<const std::string> one, std::span<const std::string> other);

}  // namespace fairblade::job
