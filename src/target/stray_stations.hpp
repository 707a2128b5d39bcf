// Which station reads off the fair line of the others. Verbs: find_strays, name_strays. mm.
//
// The line is a least-squares quadratic in `down` (the deleted residual r/(1 - h), whose standard deviation is
// the station's error / sqrt(1 - h)). A station is named beyond three of those; then it is left out and the others are
// judged again while four remain, and each is measured against those that do not stray. Four stations on a quadratic
// leave one degree of freedom, so that no arithmetic can tell which of them strays: the smallest slip that explains it
// is named, with its rivals.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "base/fault.hpp"
#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"

namespace fairblade::target {

enum class SpanFigure { thickness, chord, leading_edge };

struct Rival {
  std::size_t station = 0;
  double mm = 0;
};

struct Stray {
  std::size_t station = 0;
  SpanFigure figure = SpanFigure::thickness;
  double mm = 0;              ///< full (+) or thin (-), long or short, forward or aft of the others' fair line
  double error = 0;           ///< mm, one standard deviation of that
  std::vector<Rival> rivals;  ///< stations that would explain it as well (within 5 %), the least slip first
};

struct StrayReport {
  std::vector<Stray> strays;
  std::vector<SpanFigure> unfair;  ///< too many stray (over a third): it is the blade that is not a quadratic, none is named
};

/// One quantity by itself, in mm; `station` names its place in the job. Fewer than four: nothing is told.
struct SpanReading {
  std::size_t station = 0;
  double down = 0, value = 0, error = 0;
  double to_mm = 1;  ///< value and error times this are mm (a thickness ratio: the chord)
};
/// Nothing strays: empty. `unfair` is set when too many do.
std::vector<Stray> strays_of(const std::vector<SpanReading>& readings, SpanFigure figure, bool& unfair);

/// One standard deviation of a station's thickness t·chord (skeg and rudder together), mm: the fit's own, but not less than 0.8
/// of what so many readings with that error allow, which also serves where the fit cannot tell.
double thickness_error(const section::MeasuredSection& measured, const form::FittedForm& fitted, double reading_error);

/// Thickness (by the fitted ratio), chord and leading-edge line; stations that were interpolated are not judged.
StrayReport find_strays(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                        const std::vector<form::FittedForm>& fitted);

/// "station C is 2.3 mm full".
std::string words_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured, const Stray& stray);
/// Codes "stray-station" and "line-not-fair".
std::vector<Warning> name_strays(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                 const StrayReport& report);

}  // namespace fairblade::target
