// Product: the part of the chord that edges-only stations keep, where nobody asked for one. Verbs: settle_keep.
#pragma once
#include <vector>

#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"

namespace fairblade::target {

/// The default, 0.2 to 0.75 of the chord, leaves many a blade no fair curve to the edge that is asked for: it then ends, for all
/// such stations alike, at the nearest whole hundredth of the chord ahead of it where there is one, and begins at the nearest to
/// it. Where there is none it stays, and is refused with what would help. The default is listed as it was settled.
/// `measured` and `fitted` as job.stations.
void settle_keep(job::Job& job, const std::vector<section::MeasuredSection>& measured,
                 const std::vector<form::FittedForm>& fitted);

}  // namespace fairblade::target
