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

double rounded_up(double mm) { return std::ceil(mm * 10 - 1e-9) / 10; }

std::optional<double> least_tenth(double from, double most, const std::function<bool(double)>& works) {
  const auto least = least_that_works(from, most, works);
  if (!least || !works(rounded_up(*least))) return std::nullopt;
  return rounded_up(*least);
}

std::string either(const std::vector<std::string>& remedies, const std::string& otherwise) {
  std::string out;
  for (const std::string& remedy : remedies) out += (out.empty() ? "" : ", or ") + remedy;
  return out.empty() ? otherwise : out;
}

}  // namespace fairblade::target
