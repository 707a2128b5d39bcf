// Product: the readings that keep stations from having any target. Verbs: hindrances. mm.
#pragma once
#include <string>
#include <vector>

#include "target/target.hpp"

namespace fairblade::target {

/// A station's governing reading where no section that may be planned passes outside it.
struct Hindrance {
  std::string station;
  Face face = Face::port;
  double x = 0;  ///< aft of the measured leading edge
  Fault fault;   ///< as plan_targets refuses it
};

/// Those of plan_targets' refusals that hang on one reading each: for who knows more of the readings than this room.
std::vector<Hindrance> hindrances(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                                  const std::vector<form::FittedForm>& fitted);

}  // namespace fairblade::target
