#include "check/set_aside.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

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

std::vector<Seen> of(const Links& links, const std::vector<std::size_t>& which) {
  std::vector<Seen> out;
  out.reserve(which.size());
  for (const std::size_t k : which) out.push_back(links.seen()[k]);
  return out;
}

// The worst by the others is set aside, and the rest judged again, until none is beyond. Nothing is probable where there is no
// end to that.
Sorted sorted_with(Links& links, const Smoothness& smooth) {
  Sorted out{links.frame(), smooth, links.seen(), {}, -std::numeric_limits<double>::infinity(), 0};
  const std::size_t most = std::max<std::size_t>(3, links.seen().size() / 6);
  std::vector<std::size_t> agreeing(links.seen().size());
  std::iota(agreeing.begin(), agreeing.end(), std::size_t{0});
  std::vector<Seen> slips;
  double likelihood = 0;
  while (true) {
    out.agreeing = of(links, agreeing);
    const ByOthers by_others = links.each_by_the_others(agreeing, smooth);
    if (by_others.expected.empty()) return out;
    likelihood = by_others.log_likelihood;
    std::vector<double> sizes;
    for (std::size_t k = 0; k < agreeing.size(); ++k) {
      const Expected& expected = by_others.expected[k];
      sizes.push_back(std::abs(out.agreeing[k].value - expected.value) / expected.error);
    }
    out.scatter = 1.4826 * median(sizes);
    const auto worst = std::max_element(sizes.begin(), sizes.end());
    if (*worst <= beyond * std::max(1.0, out.scatter)) break;
    if (slips.size() == most) return out;
    const auto at = worst - sizes.begin();
    slips.push_back(out.agreeing[static_cast<std::size_t>(at)]);
    agreeing.erase(agreeing.begin() + at);
  }
  const auto expected = expected_at(slips, out.agreeing, links.frame(), smooth);
  for (std::size_t k = 0; k < expected.size(); ++k) {
    const Suspect one{slips[k], expected[k]};
    if (one.size() > beyond) out.suspects.push_back(one);
    else out.agreeing.push_back(one.seen);
  }
  if (out.agreeing.size() != agreeing.size()) likelihood = log_likelihood(out.agreeing, links.frame(), smooth);
  const double anything = std::log(rare / (2.0 / 3 * links.frame().chord));
  out.probability = likelihood + anything * static_cast<double>(out.suspects.size()) + prior_of(smooth);
  return out;
}

}  // namespace

Sorted sort_out(const std::vector<Seen>& seen, const Frame& frame) {
  Sorted best{frame, {0.05, 0.01, 0.4}, seen, {}, -std::numeric_limits<double>::infinity(), 0};
  Links links(seen, frame);
  for (const Smoothness& smooth : smoothnesses()) {
    Sorted one = sorted_with(links, smooth);
    if (one.probability > best.probability) best = std::move(one);
  }
  return best;
}

Sorted sort_out(const std::vector<Seen>& seen, const Frame& frame, const Smoothness& smooth) {
  Links links(seen, frame);
  return sorted_with(links, smooth);
}

}  // namespace fairblade::check
