// Taking an old coat off a measured outline before anything else is worked out. Verbs: strip_coating. mm.
#pragma once
#include <optional>

#include "section/section.hpp"

namespace fairblade::section {

/// Moves every node inward by `job.coating_to_strip` along the outline's normal; the leading edge goes aft and the
/// trailing edge forward by as much (the coat went round both), so `chord` and `ahead` shrink and x is counted from
/// the bare leading edge. A fault when nothing would be left.
std::optional<Fault> strip_coating(const job::Job& job, const job::Station& station, MeasuredSection& measured);

}  // namespace fairblade::section
