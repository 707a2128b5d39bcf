#include "check/set_aside.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/numerics.hpp"
#include "check/readings.hpp"

namespace fairblade::check {
namespace {

constexpr double rare = 5e-3;  // one reading in two hundred is a slip

/// Natural logarithm of how likely a blade is so lumpy, before anything was read: an old one seldom is.
double prior_of(const Smoothness& smooth) {
  double out = 0;
  if (smooth.shape > 0.005) out -= 2;
  if (smooth.shape > 0.02) out -= 3;
  if (smooth.camber > 0.005) out -= 3;
  if (smooth.reach < 0.6) out -= 3;
  return out;
}

// The worst by the others is set aside, and the rest judged again, until none is beyond.
Sorted sorted_with(const std::vector<Seen>& seen, const Frame& frame, const Smoothness& smooth) {
  Sorted out{frame, smooth, seen, {}, -std::numeric_limits<double>::infinity(), 0};
  const std::size_t most = std::max<std::size_t>(3, seen.size() / 6);
  std::vector<Seen> slips;
  while (true) {
    const auto by_others = each_by_the_others(out.agreeing, frame, smooth);
    if (by_others.empty()) return out;
    std::vector<double> sizes;
    for (std::size_t k = 0; k < by_others.size(); ++k) {
      sizes.push_back(std::abs(out.agreeing[k].value - by_others[k].value) / by_others[k].error);
    }
    out.scatter = 1.4826 * median(sizes);
    const auto worst = std::max_element(sizes.begin(), sizes.end());
    if (*worst <= beyond * std::max(1.0, out.scatter)) break;
    if (slips.size() == most) return out;
    const auto at = worst - sizes.begin();
    slips.push_back(out.agreeing[static_cast<std::size_t>(at)]);
    out.agreeing.erase(out.agreeing.begin() + at);
  }
  const auto expected = expected_at(slips, out.agreeing, frame, smooth);
  for (std::size_t k = 0; k < expected.size(); ++k) {
    const Suspect one{slips[k], expected[k]};
    if (one.size() > beyond) out.suspects.push_back(one);
    else out.agreeing.push_back(one.seen);
  }
  const double anything = std::log(rare / (2.0 / 3 * frame.chord));
  out.probability =
      log_likelihood(out.agreeing, frame, smooth) + anything * static_cast<double>(out.suspects.size()) + prior_of(smooth);
  return out;
}

}  // namespace

Sorted sort_out(const std::vector<Seen>& seen, const Frame& frame) {
  Sorted best{frame, {0.05, 0.01, 0.4}, seen, {}, -std::numeric_limits<double>::infinity(), 0};
  for (const Smoothness& smooth : smoothnesses()) {
    Sorted one = sorted_with(seen, frame, smooth);
    if (one.probability > best.probability) best = std::move(one);
  }
  return best;
}

Sorted sort_out(const std::vector<Seen>& seen, const Frame& frame, const Smoothness& smooth) {
  return sorted_with(seen, frame, smooth);
}

}  // namespace fairblade::check
