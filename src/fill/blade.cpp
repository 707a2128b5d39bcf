#include "fill/blade.hpp"

#include <algorithm>

namespace fairblade::fill {

double area_ahead(const SideCut& a, const SideCut& b) {
  std::vector<double> cuts{0, 1};
  const auto crossing = [&](double at_a, double at_b) {
    if ((at_a > 0) != (at_b > 0)) cuts.push_back(at_a / (at_a - at_b));
  };
  crossing(a.ahead, b.ahead);
  crossing(a.chord - a.ahead, b.chord - b.ahead);
  std::sort(cuts.begin(), cuts.end());
  const auto at = [&](double w) {
    const double chord = a.chord + w * (b.chord - a.chord);
    return std::clamp(a.ahead + w * (b.ahead - a.ahead), 0.0, chord);
  };
  double sum = 0;
  for (std::size_t k = 1; k < cuts.size(); ++k) sum += (cuts[k] - cuts[k - 1]) * (at(cuts[k - 1]) + at(cuts[k])) / 2;
  return sum * (b.down - a.down);
}

namespace {

struct Station {
  double down, chord, area;  // mm, mm, mm² of the section
  std::optional<double> ahead;
};

BladeFigures figures(const job::Job& job, std::vector<Station> stations) {
  carry_to_ends(job, stations);
  BladeFigures out;
  double ahead = 0;
  bool known = true;
  for (std::size_t k = 1; k < stations.size(); ++k) {
    const Station& a = stations[k - 1];
    const Station& b = stations[k];
    const double h = b.down - a.down;
    out.area += h * (a.chord + b.chord) / 2;
    // y/c and c both straight between stations: area is cubic in height, so Simpson is exact with the middle's area;
    // that is c² times the mean of area/c² at the ends.
    const double middle_chord = (a.chord + b.chord) / 2;
    const double middle = middle_chord * middle_chord * (a.area / (a.chord * a.chord) + b.area / (b.chord * b.chord)) / 2;
    out.volume += h / 6 * (a.area + 4 * middle + b.area) / 1e6;
    known = known && a.ahead && b.ahead;
    if (known) ahead += area_ahead({a.down, a.chord, *a.ahead}, {b.down, b.chord, *b.ahead});
  }
  if (known && out.area > 0) out.balance_percent = 100 * ahead / out.area;
  return out;
}

}  // namespace

BladeFigures blade_figures(const job::Job& job, const std::vector<section::MeasuredSection>& measured) {
  std::vector<Station> stations;
  for (const auto& one : measured) stations.push_back({one.down, one.chord, one.figures.area, one.ahead});
  return figures(job, std::move(stations));
}

BladeFigures blade_figures(const job::Job& job, const std::vector<target::TargetSection>& targets) {
  std::vector<Station> stations;
  for (const auto& one : targets) stations.push_back({one.down, one.chord, one.area, one.ahead});
  return figures(job, std::move(stations));
}

}  // namespace fairblade::fill
