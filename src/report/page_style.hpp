// Private to the report room. Product: the style of report.html. Verbs: page_style.
// One column on a telephone, two where there is room; on paper in grey, nothing told by colour. Type #1a1a1a and #4a4a4a on
// white: contrast 17 : 1 and 8.9 : 1 by WCAG 2's formula, which asks 4.5.
#pragma once
#include <string>

#include "job/job.hpp"

namespace fairblade::report {

/// Pages are Letter where the job's are, else A4.
std::string page_style(job::Paper paper);

}  // namespace fairblade::report
