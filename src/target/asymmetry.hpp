// By how much port and starboard differ, and what it takes to make them one. Verbs: asymmetry_of, make_one,
// words_of. mm, mm², litres.
//
// The symmetric envelope about the centre plane has at every x the fuller of the two half-breadths on both sides; against
// the blade as it is it adds the integral of |port - starboard|. Meeting half-way adds half of that and takes off as much.
#pragma once
#include <string>
#include <vector>

#include "form/form.hpp"
#include "job/job.hpp"
#include "section/section.hpp"

namespace fairblade::target {

struct Asymmetry {
  std::string station;
  bool known = false;     ///< calipers or one side alone cannot tell
  double greatest = 0;    ///< mm, port - starboard where they differ most: positive, port is fuller
  double greatest_x = 0;  ///< mm aft of the leading edge
  double rms = 0;         ///< mm over the chord
  /// The same about the section's own fitted centre line: what remains is shape, not twist or a shifted board.
  double own_greatest = 0, own_greatest_x = 0, own_rms = 0;
  double add_area = 0;      ///< mm² to bring the thinner side up to the fuller everywhere
  double halfway_area = 0;  ///< mm² to add, and as much to take off, to meet half-way
  double halfway_cut = 0;   ///< mm, deepest cut then
};

Asymmetry asymmetry_of(const section::MeasuredSection& measured, const form::FittedForm& fitted);

struct MakeOne {
  double add_litres = 0;  ///< the thinner side brought up to the fuller, first station to last, on the loft
  bool complete = true;   ///< no station had to be taken as symmetric because its readings cannot tell
};
MakeOne make_one(const std::vector<section::MeasuredSection>& measured);

/// "port is 3.1 mm fuller than starboard 126 mm aft of the leading edge, 1.4 mm over the whole chord; one shape for both takes
/// 310 mm² of filler here" and, where most of it is twist, that it is. Empty where they agree within what readings can tell.
std::string words_of(const job::Job& job, const Asymmetry& asymmetry);

}  // namespace fairblade::target
