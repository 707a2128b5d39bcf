// The blade as a whole: its area in side view, what of it stands ahead of the stock, its volume. Verbs: blade_figures.
// Between the first and the last station, and to the bottom where that was given (the last section carried on).
#pragma once
#include <optional>
#include <vector>

#include "section/section.hpp"
#include "target/target.hpp"

namespace fairblade::fill {

struct BladeFigures {
  double area = 0;                        ///< mm², in side view
  std::optional<double> balance_percent;  ///< of that area ahead of the stock; unknown without `ahead` at every station
  double volume = 0;                      ///< litres
};

BladeFigures blade_figures(const job::Job& job, const std::vector<section::MeasuredSection>& measured);
BladeFigures blade_figures(const job::Job& job, const std::vector<target::TargetSection>& targets);

}  // namespace fairblade::fill
