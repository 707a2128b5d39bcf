#include "target/remedies.hpp"

#include <cmath>

namespace fairblade::target {

std::optional<double> least_that_works(double from, double most, const std::function<bool(double)>& works) {
  if (!works(most)) return std::nullopt;
  for (int k = 0; k < 40; ++k) {
    const double middle = (from + most) / 2;
    (works(middle) ? most : from) = middle;
  }
  return most;
}

double rounded_up(double mm, LengthUnit unit) {
  const double steps = unit == LengthUnit::inch ? 200 / mm_per_inch : 10;  // in a mm
  return std::ceil(mm * steps - 1e-9) / steps;
}

std::optional<double> nearest_that_works(double from, double most, const std::function<bool(double)>& works) {
  constexpr int doublings = 5;
  for (int k = doublings; k >= 0; --k) {
    if (const auto found = least_that_works(from, from + (most - from) / (1 << k), works)) return found;
  }
  return std::nullopt;
}

std::optional<double> least_tenth(double from, double most, LengthUnit unit, const std::function<bool(double)>& works) {
  const auto least = nearest_that_works(from, most, works);
  if (!least || !works(rounded_up(*least, unit))) return std::nullopt;
  return rounded_up(*least, unit);
}

std::string either(const std::vector<std::string>& remedies, const std::string& otherwise) {
  std::string out;
  for (const std::string& remedy : remedies) out += (out.empty() ? "" : ", or ") + remedy;
  return out.empty() ? otherwise : out;
}

}  // namespace fairblade::target
