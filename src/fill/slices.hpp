// Product: cuts through measured blade and target at many heights, each with the length of span it stands for.
// Verbs: slices, clipped, girth. mm.
//
// The same loft as the volumes': y/c at equal chord fraction, and c, straight between two stations. Weights
// are Simpson's over each bay; above the first station and below the last the end section is carried on unchanged.
#pragma once
#include <optional>
#include <vector>

#include "fill/loft.hpp"
#include "job/job.hpp"

namespace fairblade::fill {

struct Slice {
  double down = 0;
  double weight = 0;                   ///< mm of span; may be 0 on a lone station
  bool beyond = false;                 ///< above the first station or below the last
  std::optional<std::size_t> station;  ///< whose section this is
  Rib measured, target;
};

/// `per_bay` steps between two stations, an even number.
std::vector<Slice> slices(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                          const std::vector<target::TargetSection>& targets, const std::vector<double>& fractions,
                          std::size_t per_bay);
/// The same against a surface that lies within the targets, one rib of it for each station at these fractions: between two
/// stations it is as many mm within as the stations' own shares of it, since coats do not thin as the chord shortens.
std::vector<Slice> slices(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                          const std::vector<target::TargetSection>& targets, const std::vector<Rib>& within,
                          const std::vector<double>& fractions, std::size_t per_bay);

/// The part of an outline between two x, ends worked by straight lines; empty where there is none.
Outline clipped(const Outline& outline, double from, double to);

/// Both faces, and the blunt ends fore and aft, mm.
double girth(const Rib& rib, const std::vector<double>& fractions);
/// mm²
double section_area(const Rib& rib, const std::vector<double>& fractions);

}  // namespace fairblade::fill
