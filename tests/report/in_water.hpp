// Three stations of exact forms, planned to another thickness and put in the water.
#pragma once
#include <functional>
#include <stdexcept>

#include "blade.hpp"
#include "plan/plan.hpp"
#include "report/plan.hpp"

namespace in_water {

using namespace fairblade;

inline report::Plan planned(
    double from, double to, const std::function<void(job::Job&)>& alter = [](job::Job&) {}) {
  auto job =
      blade::job_of({blade::exact("A", 0, 420, from), blade::exact("B", 400, 380, from), blade::exact("C", 800, 340, from)});
  for (job::Station& station : job.stations) station.target.thickness = {job::Thickness::Kind::ratio, to};
  alter(job);
  auto plan = plan::make_plan(job);
  if (!plan) throw std::runtime_error(one_line(plan.faults().front()));
  plan::add_water(*plan);
  return *plan;
}

}  // namespace in_water
