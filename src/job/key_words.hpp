// Private to the job room. Product: what a key of the job file means, in a few words. Verbs: words_of.
#pragma once
#include <string_view>

namespace fairblade::job {

/// Of a path such as "workshop.dusk"; of one key where it means the same everywhere; empty where the name says it all.
std::string_view words_of(std::string_view path);

}  // namespace fairblade::job
