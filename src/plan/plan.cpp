#include "plan/plan.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "target/loft.hpp"

namespace fairblade::plan {

Outcome<Sections> read_sections(const job::Job& job) {
  Sections out;
  std::vector<Fault> faults;
  for (const job::Station& station : job.stations) {
    auto measured = section::measure_section(job, station);
    if (measured) out.measured.push_back(std::move(*measured));
    else faults.insert(faults.end(), measured.faults().begin(), measured.faults().end());
  }
  if (!faults.empty()) return faults;
  for (const auto& measured : out.measured) out.fitted.push_back(form::fit_form(measured, job.reading_error));
  return out;
}

Outcome<Plan> run_line(const job::Job& job) {
  auto sections = read_sections(job);
  if (!sections) return sections.faults();
  return run_line(job, std::move(*sections));
}

Outcome<Plan> run_line(const job::Job& job, Sections sections) {
  Plan plan;
  plan.job = job;
  plan.measured = std::move(sections.measured);
  plan.fitted = std::move(sections.fitted);
  auto targets = target::plan_targets(job, plan.measured, plan.fitted, plan.blade_warnings);
  if (!targets) return targets.faults();
  plan.targets = std::move(*targets);
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    plan.changes.push_back(fill::compare(plan.measured[k], plan.targets[k]));
  }
  plan.volumes = fill::sum_volumes(job, plan.measured, plan.targets, plan.changes);
  plan.before = fill::blade_figures(job, plan.measured);
  plan.after = fill::blade_figures(job, plan.targets);
  return plan;
}

namespace {

// Litres to add had a station's governing place not been read. Nothing when too little would be left of it.
std::optional<double> litres_without(const Plan& plan, std::size_t k) {
  const target::Governing& governing = *plan.targets[k].governing;
  job::Job job = plan.job;
  auto& readings = job.stations[k].readings;
  // Several readings may stand on one line: the one that was read nearest.
  const auto read = std::min_element(readings.begin(), readings.end(), [&](const job::Reading& a, const job::Reading& b) {
    const bool a_there = a.line == governing.line, b_there = b.line == governing.line;
    return a_there != b_there ? a_there : std::abs(a.x - governing.x) < std::abs(b.x - governing.x);
  });
  if (read == readings.end() || read->line != governing.line) return std::nullopt;
  const double x = read->x;
  for (job::Reading& reading : readings) {
    if (reading.x != x) continue;
    reading.caliper.reset();
    (governing.face == section::Face::port ? reading.port : reading.starboard).reset();
  }
  std::erase_if(readings, [](const job::Reading& r) { return !r.port && !r.starboard && !r.caliper; });
  const auto measured = section::measure_section(job, job.stations[k]);
  if (!measured) return std::nullopt;
  Sections sections{plan.measured, plan.fitted};  // the other stations read as they did
  sections.measured[k] = *measured;
  sections.fitted[k] = form::fit_form(*measured, job.reading_error);
  const auto other = run_line(job, std::move(sections));
  if (!other) return std::nullopt;
  return other->volumes.add;
}

void ask_governing(Plan& plan) {
  std::vector<std::size_t> stations;
  for (std::size_t k = 0; k < plan.targets.size(); ++k) {
    if (plan.targets[k].governing) stations.push_back(k);
  }
  // Each question is a plan of its own; on a scanned blade only the stations that would change most are asked.
  const auto stake = [&](std::size_t k) {
    const auto& target = plan.targets[k];
    return (target.thickness_ratio - target.governing->thickness_ratio_without) * target.chord * target.chord;
  };
  std::stable_sort(stations.begin(), stations.end(), [&](std::size_t a, std::size_t b) { return stake(a) > stake(b); });
  constexpr std::size_t most = 12;
  if (stations.size() > most) stations.resize(most);
  std::sort(stations.begin(), stations.end());
  for (const std::size_t k : stations) {
    if (const auto litres = litres_without(plan, k)) plan.governing.push_back({k, *litres});
  }
}

}  // namespace

Outcome<Plan> make_plan(const job::Job& job) {
  auto plan = run_line(job);
  if (!plan) return plan;
  plan->twist = target::find_twist(job, plan->measured, plan->fitted);
  for (std::size_t k = 0; k < plan->measured.size(); ++k) {
    plan->asymmetry.push_back(target::asymmetry_of(plan->measured[k], plan->fitted[k]));
  }
  plan->make_one = target::make_one(plan->measured);
  auto& warnings = plan->blade_warnings;
  for (auto& one : target::name_strays(job, plan->measured, target::find_strays(job, plan->measured, plan->fitted))) {
    warnings.push_back(std::move(one));
  }
  warnings.insert(warnings.end(), plan->twist.warnings.begin(), plan->twist.warnings.end());
  plan->work = fill::plan_work(job, plan->measured, plan->targets, plan->changes, plan->volumes);
  if (!plan->work.faults.empty()) return plan->work.faults;
  warnings.insert(warnings.end(), plan->work.warnings.begin(), plan->work.warnings.end());
  ask_governing(*plan);
  return plan;
}

void add_water(Plan& plan) {
  plan.water = flow::before_and_after(plan.job, plan.measured, plan.targets, flow::quick_panels);
  plan.job.defaults.insert(plan.job.defaults.end(), plan.water.defaults.begin(), plan.water.defaults.end());
}

Outcome<std::vector<Between>> sections_at(const Plan& plan, const std::vector<double>& heights) {
  std::vector<Between> out;
  std::vector<Fault> faults;
  for (const double down : heights) {
    const auto is_here = [&](const section::MeasuredSection& one) { return std::abs(one.down - down) < 0.05; };
    if (std::any_of(plan.measured.begin(), plan.measured.end(), is_here)) continue;
    const std::string name = target::name_at(down);
    auto measured = target::measured_at(plan.job, plan.measured, down, name);
    auto target = target::target_at(plan.job, plan.targets, down, name);
    if (!measured || !target) {
      const auto& more = measured ? target.faults() : measured.faults();
      faults.insert(faults.end(), more.begin(), more.end());
      continue;
    }
    auto change = fill::compare(*measured, *target);
    out.push_back({std::move(*measured), std::move(*target), std::move(change)});
  }
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace fairblade::plan
