// The blade as a whole: its area in side view, what of it stands ahead of the stock, its volume. Verbs: blade_figures,
// area_ahead, carry_to_ends. From the blade's top, and to its bottom where that was given: the end sections carried on.
#pragma once
#include <optional>
#include <vector>

#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::fill {

/// A station in side view, mm; `ahead` of the stock.
struct SideCut {
  double down = 0, chord = 0, ahead = 0;
};
/// mm² ahead of the stock between two stations. The edges run straight; what lies ahead is held between nothing and the
/// chord, so it is straight between the heights where it meets either. Exact.
double area_ahead(const SideCut& a, const SideCut& b);

/// Cuts from the top down, not none, carried on to the blade's top, from which `down` is counted, and to its bottom where that
/// was given.
template <class Cut>
void carry_to_ends(const job::Job& job, std::vector<Cut>& cuts) {
  if (cuts.front().down > 0) {
    cuts.insert(cuts.begin(), cuts.front());
    cuts.front().down = 0;
  }
  if (job.bottom && *job.bottom > cuts.back().down) {
    cuts.push_back(cuts.back());
    cuts.back().down = *job.bottom;
  }
}

struct BladeFigures {
  double area = 0;                        ///< mm², in side view
  std::optional<double> balance_percent;  ///< of that area ahead of the stock; unknown without `ahead` at every station
  double volume = 0;                      ///< litres
};

BladeFigures blade_figures(const job::Job& job, const std::vector<section::MeasuredSection>& measured);
BladeFigures blade_figures(const job::Job& job, const std::vector<target::TargetSection>& targets);

}  // namespace fairblade::fill
