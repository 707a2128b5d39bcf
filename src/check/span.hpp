// Private to the check room. Product: which one station stands off a straight line along the span. Verbs: alone.
#pragma once
#include <optional>
#include <vector>

namespace fairblade::check {

/// One number to a station that should run straight along the span, or be the same.
struct SpanNumber {
  std::size_t station;
  double down, value, error;
};
using SpanNumbers = std::vector<SpanNumber>;

struct Straight {
  double mean = 0, level = 0, slope = 0;
  double at(double down) const { return level + slope * (down - mean); }
};
/// Through three and more by least squares; of two, their mean.
Straight straight_through(const SpanNumbers& numbers);

struct Alone {
  std::size_t station;
  double off;  ///< against the line of the others
};
/// The one station that alone stands off, where the others keep to a line (to one value where they are two) within
/// `slack` and their errors: the one without which they keep to it best.
std::optional<Alone> alone(const SpanNumbers& numbers, double slack);

}  // namespace fairblade::check
