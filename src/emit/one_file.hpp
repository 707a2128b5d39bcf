// Writing one file all or nothing. Verbs: write_drawing.
#pragma once
#include <optional>
#include <string>

#include "base/fault.hpp"

namespace fairblade::emit {

/// The bytes of a drawing under that name: written beside it and renamed, so that an earlier one stays whole if it fails.
/// Refused: a folder, or a file that is no drawing of ours.
std::optional<Fault> write_drawing(const std::string& path, const std::string& bytes);

}  // namespace fairblade::emit
