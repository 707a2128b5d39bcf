#include "check/set_aside.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

#include "base/numerics.hpp"
#include "check/readings.hpp"
#include "check/weighed.hpp"

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

/// All numbers but `out`, and those in it that `but` names.
Weighed without(Links& links, const Smoothness& smooth, const std::vector<std::size_t>& out,
                std::optional<std::size_t> but = {}) {
  Weighed left = links.weighed(smooth);
  for (const std::size_t k : out) {
    if (k != but) left.leave_out(k);
  }
  return left;
}

// The worst by the others is set aside, and the rest judged again, until none is beyond. Nothing is probable where there is no
// end to that.
Sorted sorted_with(Links& links, const Smoothness& smooth) {
  const std::vector<Seen>& seen = links.seen();
  Sorted out{links.frame(), smooth, {}, {}, -std::numeric_limits<double>::infinity(), 0};
  const std::size_t most = std::max<std::size_t>(3, seen.size() / 6);
  std::vector<std::size_t> agreeing(seen.size()), slips;
  std::iota(agreeing.begin(), agreeing.end(), std::size_t{0});
  Weighed left = links.weighed(smooth);
  std::vector<double> sizes;
  bool settled = false;
  while (left.known()) {
    sizes.clear();
    for (const std::size_t k : agreeing) {
      const Expected expected = left.by_others(k);
      sizes.push_back(std::abs(seen[k].value - expected.value) / expected.error);
    }
    const auto worst = std::max_element(sizes.begin(), sizes.end());
    const auto at = worst - sizes.begin();
    const double worst_size = *worst;
    out.scatter = 1.4826 * median(sizes);
    settled = worst_size <= beyond * std::max(1.0, out.scatter);
    if (settled || slips.size() == most) break;
    slips.push_back(agreeing[static_cast<std::size_t>(at)]);
    agreeing.erase(agreeing.begin() + at);
    left.leave_out(slips.back());
  }
  for (const std::size_t k : agreeing) out.agreeing.push_back(seen[k]);
  if (!settled) return out;
  std::vector<std::size_t> suspects;
  for (const std::size_t k : slips) {
    const Suspect one{seen[k], without(links, smooth, slips, k).by_others(k)};
    if (one.size() > beyond) {
      out.suspects.push_back(one);
      suspects.push_back(k);
    } else {
      out.agreeing.push_back(one.seen);
    }
  }
  if (suspects.size() != slips.size()) left = without(links, smooth, suspects);
  const double anything = std::log(rare / (2.0 / 3 * links.frame().chord));
  out.probability = left.log_likelihood() + anything * static_cast<double>(out.suspects.size()) + prior_of(smooth);
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
