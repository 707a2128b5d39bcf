// Remedies as they are named to the owner: the least that works, rounded so that it still does, and said as choices.
// Verbs: least_that_works, nearest_that_works, rounded_up, least_tenth, either. mm.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/units.hpp"

namespace fairblade::target {

/// The least value in (from, most] that works, when `most` does; what is returned has been tried.
std::optional<double> least_that_works(double from, double most, const std::function<bool(double)>& works);

/// The same where what is too little may be right and what is far too much wrong again: looked for nearby first.
std::optional<double> nearest_that_works(double from, double most, const std::function<bool(double)>& works);

/// Up to a tenth of a millimetre (five thousandths of an inch), which is printed as it is and may be typed in again.
double rounded_up(double mm, LengthUnit unit);

/// The nearest that works, so rounded, and tried again so.
std::optional<double> least_tenth(double from, double most, LengthUnit unit, const std::function<bool(double)>& works);

/// "this, or that"; `otherwise` when there is none.
std::string either(const std::vector<std::string>& remedies, const std::string& otherwise);

}  // namespace fairblade::target
