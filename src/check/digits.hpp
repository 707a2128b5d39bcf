// Private to the check room. Product: the number that was probably meant, where a written one cannot be.
// Verbs: meant_by, other_numbers. mm.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/units.hpp"

namespace fairblade::check {

struct Meant {
  double mm = 0;
  std::string how;  ///< "two digits changed places", "the decimal point slipped", ...
};

/// What else could have been written for this length, the likeliest kinds of slip first: an exchanged pair of digits, a
/// slipped point, another unit, a lost sign, one wrong digit. As it is written in `unit`.
std::vector<Meant> other_numbers(double mm, LengthUnit unit);
/// The first of them that `fits`; where `wanted` is known, of those that fit the nearest to it.
std::optional<Meant> meant_by(double mm, LengthUnit unit, const std::function<bool(double)>& fits,
                              std::optional<double> wanted = std::nullopt);

}  // namespace fairblade::check
