#include "fill/noise.hpp"

#include <cmath>

#include "base/numerics.hpp"

namespace fairblade::fill {

Noise noise_of(const std::vector<WeighedChange>& changes) {
  double variance = 0;
  Noise out;
  for (const WeighedChange& one : changes) {
    const double z = std::abs(one.change) / one.sigma;
    const double p = normal_below(one.change / one.sigma);
    variance += one.sigma * one.sigma * one.weight * one.weight * p * p;
    out.excess += one.weight * one.sigma * (normal_density(z) - z * (1 - normal_below(z)));
  }
  out.error = std::sqrt(variance);
  return out;
}

}  // namespace fairblade::fill
