// Private to the report room. Product: a step of the order of work in words. Verbs: words_of.
#pragma once
#include <string>
#include <vector>

#include "report/plan.hpp"

namespace fairblade::report {

struct StepWords {
  std::string title;                   ///< what to do, without a full stop
  std::vector<std::string> sentences;  ///< with this job's numbers
};
StepWords words_of(const Plan& plan, const fill::Step& step);

}  // namespace fairblade::report
