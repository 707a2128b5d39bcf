// Private to the pages room. The first pages of a set: what it holds, how to print it, the cautions. Verbs: covers_of.
#pragma once
#include <vector>

#include "pages/compose.hpp"

namespace fairblade::pages {

/// As many as the list takes; the list counts the covers themselves.
std::vector<Draft> covers_of(const job::Job& job, const Paper& paper, const std::vector<Draft>& pages, const Kinds& kinds);

}  // namespace fairblade::pages
