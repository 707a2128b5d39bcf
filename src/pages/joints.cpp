#include "pages/joints.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fairblade::pages {
namespace {

constexpr double hair = 1e-6;  // mm

/// The furthest that the next window may begin, so that the joint [next, next + overlap] keeps clear of every stretch.
double clear_start(double latest, double overlap, const std::vector<std::pair<double, double>>& whole) {
  double start = latest;
  for (bool moved = true; moved;) {
    moved = false;
    for (const auto& [from, to] : whole) {
      if (start < to - hair && start + overlap > from + hair) {
        start = from - overlap;
        moved = true;
      }
    }
  }
  return start;
}

/// With each window as far on as it may be; nothing where that comes to a stop.
std::optional<std::vector<double>> greedy(double length, double window, double overlap,
                                          const std::vector<std::pair<double, double>>& whole, std::size_t most) {
  std::vector<double> starts(1, 0.0);
  while (starts.back() + window < length - hair) {
    const double next = clear_start(starts.back() + window - overlap, overlap, whole);
    if (next <= starts.back() + hair || starts.size() >= most) return {};
    starts.push_back(next);
  }
  return starts;
}

}  // namespace

std::vector<double> starts_of(double length, double window, double overlap, const std::vector<std::pair<double, double>>& whole) {
  overlap = std::min(overlap, 0.5 * window);
  if (length <= window + hair) return {0};
  const auto least = static_cast<std::size_t>(std::ceil((length - overlap) / (window - overlap) - hair));
  auto starts = greedy(length, window, overlap, whole, least + 1);
  if (!starts) starts = greedy(length, window, overlap, {}, least + 1);
  return *starts;
}

}  // namespace fairblade::pages
