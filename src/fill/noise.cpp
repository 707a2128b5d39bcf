#include "fill/noise.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/numerics.hpp"

namespace fairblade::fill {

std::vector<double> stretches(const Offsets& rows, double chord) {
  std::vector<double> out(rows.size());
  std::vector<std::size_t> along(rows.size());
  std::iota(along.begin(), along.end(), std::size_t{0});
  std::stable_sort(along.begin(), along.end(), [&](std::size_t a, std::size_t b) {
    return rows[a].face != rows[b].face ? rows[a].face < rows[b].face : rows[a].x < rows[b].x;
  });
  for (std::size_t first = 0; first < along.size();) {
    const OffsetRow here = rows[along[first]];
    const auto with = [&](std::size_t k) { return k < along.size() && rows[along[k]].face == here.face; };
    std::size_t next = first;
    while (with(next) && rows[along[next]].x == here.x) ++next;
    const double before = first > 0 && with(first - 1) ? std::max(0.0, (rows[along[first - 1]].x + here.x) / 2) : 0;
    const double after = with(next) ? std::min(chord, (rows[along[next]].x + here.x) / 2) : chord;
    for (; first < next; ++first) out[along[first]] = after - before;
  }
  return out;
}

void NoiseSum::add(const WeighedChange& one) {
  const double z = std::abs(one.change) / one.sigma;
  const double p = normal_below(one.change / one.sigma);
  variance_ += one.sigma * one.sigma * one.weight * one.weight * p * p;
  excess_ += one.weight * one.sigma * (normal_density(z) - z * (1 - normal_below(z)));
}

void NoiseSum::add(const NoiseSum& other) {
  variance_ += other.variance_;
  excess_ += other.excess_;
}

Noise NoiseSum::total() const { return {std::sqrt(variance_), excess_}; }

}  // namespace fairblade::fill
