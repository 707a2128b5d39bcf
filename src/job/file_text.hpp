// Private to the job room. Product: a file's text, known to be UTF-8, without its byte-order mark.
// Verbs: read_text.
#pragma once
#include <cstdint>
#include <optional>
#include <string>

#include "job/faults.hpp"

namespace fairblade::job {

/// The text of the file, or nothing and one fault. `largest` in bytes.
std::optional<std::string> read_text(const std::string& path, std::uintmax_t largest, Faults& faults);

}  // namespace fairblade::job
