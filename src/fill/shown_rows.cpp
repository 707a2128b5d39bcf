#include "fill/shown_rows.hpp"

#include <algorithm>
#include <array>

namespace fairblade::fill {

std::vector<OffsetRow> rows_shown(std::vector<OffsetRow> rows, std::size_t most) {
  if (rows.size() <= most) return rows;
  const auto [low, high] = std::minmax_element(rows.begin(), rows.end(),
                                               [](const OffsetRow& a, const OffsetRow& b) { return a.change() < b.change(); });
  std::vector<std::size_t> kept{static_cast<std::size_t>(low - rows.begin()), static_cast<std::size_t>(high - rows.begin())};
  for (std::size_t k = 0; k < most - 2; ++k) kept.push_back(k * (rows.size() - 1) / (most - 3));
  std::sort(kept.begin(), kept.end());
  kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
  std::vector<OffsetRow> out;
  for (const std::size_t k : kept) out.push_back(rows[k]);
  return out;
}

std::vector<OffsetRow> rows_laid(const section::MeasuredSection& measured, const target::TargetSection& target, Face face) {
  constexpr std::array<double, 18> percent{0, 1.25, 2.5, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 95, 100};
  std::vector<OffsetRow> out;
  for (const double share : percent) {
    const double x = share / 100 * measured.chord;
    out.push_back({x, measured.side(face).at(x), target.half_breadth(face, x), face});
  }
  return out;
}

Past past_of(const target::TargetSection& target, double x) {
  constexpr double rounding = 1e-6;  // mm: a reading at the edge itself stays on the section, as in half_breadth
  if (x < target.leading_edge_x - rounding) return Past::leading_edge;
  return x > target.trailing_edge_x() + rounding ? Past::trailing_edge : Past::none;
}

}  // namespace fairblade::fill
