#include "check/span.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "check/readings.hpp"

namespace fairblade::check {

Straight straight_through(const SpanNumbers& numbers) {
  Straight out;
  const auto n = static_cast<double>(numbers.size());
  for (const auto& one : numbers) {
    out.mean += one.down / n;
    out.level += one.value / n;
  }
  double about = 0;
  for (const auto& one : numbers) {
    about += (one.down - out.mean) * (one.down - out.mean);
    out.slope += (one.down - out.mean) * one.value;
  }
  out.slope = numbers.size() > 2 && about > 0 ? out.slope / about : 0;
  return out;
}

std::optional<Alone> alone(const SpanNumbers& numbers, double slack) {
  std::optional<Alone> out;
  if (numbers.size() < 3) return out;
  double best = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < numbers.size(); ++k) {
    SpanNumbers others = numbers;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(k));
    const Straight line = straight_through(others);
    double square = 0;
    bool fair = true;
    for (const SpanNumber& one : others) {
      const double miss = std::abs(one.value - line.at(one.down));
      fair = fair && miss < std::max(slack, beyond * one.error);
      square += miss * miss;
    }
    if (!fair || square >= best) continue;
    best = square;
    const double off = numbers[k].value - line.at(numbers[k].down);
    const bool far = std::abs(off) > std::max(2 * slack, 1.5 * beyond * numbers[k].error);
    out = far ? std::optional(Alone{numbers[k].station, off}) : std::nullopt;
  }
  return out;
}

}  // namespace fairblade::check
