// Private to the job room. Product: what a key of the job file means, in a few words. Verbs: words_of,
// path_of.
#pragma once
#include <string_view>

namespace fairblade::job {

/// Of a path such as "workshop.dusk"; of one key where it means the same everywhere; empty where the name says it all.
std::string_view words_of(std::string_view path);
/// Of a key that stands in one of the job's objects, "print.paper" of "paper"; empty where none of these is called so.
std::string_view path_of(std::string_view key);

}  // namespace fairblade::job
