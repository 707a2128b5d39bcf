#include "base/numerics.hpp"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cassert>
#include <cmath>
#include <numbers>

namespace fairblade {

double median(std::vector<double> values) {
  assert(!values.empty());
  const std::size_t half = values.size() / 2;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(half);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 1) return *middle;
  return (*middle + *std::max_element(values.begin(), middle)) / 2;
}

double normal_density(double z) { return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi); }
double normal_below(double z) { return std::erfc(-z / std::sqrt(2.0)) / 2; }

std::optional<double> root_between(const std::function<double(double)>& f, double low, double high) {
  const double at_low = f(low);
  const double at_high = f(high);
  if (at_low == 0) return low;
  if (at_high == 0) return high;
  if (!(std::isfinite(at_low) && std::isfinite(at_high)) || (at_low > 0) == (at_high > 0)) return std::nullopt;
  std::uintmax_t steps = 100;
  const auto ends =
      boost::math::tools::toms748_solve(f, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(46), steps);
  return (ends.first + ends.second) / 2;
}

double least_between(const std::function<double(double)>& f, double low, double high) {
  std::uintmax_t steps = 100;
  return boost::math::tools::brent_find_minima(f, low, high, 26, steps).first;
}

std::vector<double> polynomial_roots(const std::vector<double>& c, double low, double high) {
  std::size_t degree = c.size();
  while (degree > 0 && c[degree - 1] == 0) --degree;
  if (degree < 2) return {};
  std::vector<double> derivative;
  for (std::size_t k = 1; k < degree; ++k) derivative.push_back(c[k] * static_cast<double>(k));
  std::vector<double> knots{low};
  for (const double s : polynomial_roots(derivative, low, high)) knots.push_back(s);
  knots.push_back(high);
  const auto value = [&](double s) {
    double sum = 0;
    for (std::size_t k = degree; k-- > 0;) sum = sum * s + c[k];
    return sum;
  };
  std::vector<double> roots;
  for (std::size_t k = 0; k + 1 < knots.size(); ++k) {
    if (const auto root = root_between(value, knots[k], knots[k + 1])) {
      if (roots.empty() || *root > roots.back()) roots.push_back(*root);
    }
  }
  return roots;
}

std::vector<double> merged(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> out(a.size() + b.size());
  std::merge(a.begin(), a.end(), b.begin(), b.end(), out.begin());
  return out;
}

std::vector<double> chord_fractions(std::size_t count) {
  std::vector<double> out(count + 1);
  for (std::size_t k = 0; k <= count; ++k) {
    const double u = static_cast<double>(k) / static_cast<double>(count);
    out[k] = u * u;
  }
  return out;
}

}  // namespace fairblade
