#include "job/own_error.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace fairblade::job {
namespace {

void count_place(const std::vector<double>& values, double told, Repeats& out) {
  if (values.size() < 2) return;
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  if (*high - *low > repeats_agree_within(told)) return;
  double mean = 0;
  for (const double value : values) mean += value / static_cast<double>(values.size());
  for (const double value : values) out.square += (value - mean) * (value - mean);
  out.more += static_cast<int>(values.size()) - 1;
}

}  // namespace

Repeats repeats_in(const Station& station, double told) {
  Repeats out;
  for (const auto value : {&Reading::port, &Reading::starboard, &Reading::caliper}) {
    std::vector<double> here;
    double x = 0;
    for (const Reading& reading : station.readings) {
      if (!(reading.*value)) continue;
      if (!here.empty() && reading.x - x > same_place) {
        count_place(here, told, out);
        here.clear();
      }
      if (here.empty()) x = reading.x;
      here.push_back(*(reading.*value));
    }
    count_place(here, told, out);
  }
  return out;
}

double own_error(double told, bool told_by_owner, const Repeats& repeats) {
  const double weight = told_by_owner ? 6 : 3;
  return std::sqrt((weight * told * told + repeats.square) / (weight + repeats.more));
}

}  // namespace fairblade::job
