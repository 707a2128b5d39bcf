// Names of an owner's as names of files. Verbs: file_names_of.
#pragma once
#include <string>
#include <vector>

namespace fairblade {

/// By file_name_of, told apart even where a file system ignores capitals: a name met before gets _2, _3, ... One of which nothing
/// is left goes by its place: number-3.
std::vector<std::string> file_names_of(const std::vector<std::string>& names);

}  // namespace fairblade
