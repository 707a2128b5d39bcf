#include "plan/plan.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "base/side_by_side.hpp"
#include "base/text.hpp"
#include "plan/otherwise.hpp"
#include "target/loft.hpp"
#include "target/remedies.hpp"
#include "target/settled_keep.hpp"

namespace fairblade::plan {

Outcome<Sections> read_sections(const job::Job& job) {
  std::vector<Outcome<section::MeasuredSection>> measured(job.stations.size(), Fault{});
  std::vector<form::FittedForm> fitted(job.stations.size());
  side_by_side(measured.size(), [&](std::size_t k) {
    measured[k] = section::measure_section(job, job.stations[k]);
    if (measured[k]) fitted[k] = form::fit_form(*measured[k], job.reading_error);
  });
  auto all = all_or_faults(std::move(measured));
  if (!all) return all.faults();
  return Sections{std::move(*all), std::move(fitted)};
}

Outcome<Plan> run_line(job::Job job) {
  auto sections = read_sections(job);
  if (!sections) return sections.faults();
  return run_line(std::move(job), std::move(*sections));
}

Outcome<Plan> run_line(job::Job asked, Sections sections) {
  Plan plan;
  plan.job = std::move(asked);
  target::settle_keep(plan.job, sections.measured, sections.fitted);
  const job::Job& job = plan.job;
  plan.measured = std::move(sections.measured);
  plan.fitted = std::move(sections.fitted);
  auto targets = target::plan_targets(job, plan.measured, plan.fitted, plan.blade_warnings);
  if (!targets) return targets.faults();
  plan.targets = std::move(*targets);
  plan.changes.resize(plan.measured.size());
  side_by_side(plan.changes.size(), [&](std::size_t k) { plan.changes[k] = fill::compare(plan.measured[k], plan.targets[k]); });
  plan.volumes = fill::sum_volumes(job, plan.measured, plan.targets, plan.changes);
  plan.before = fill::blade_figures(job, plan.measured);
  plan.after = fill::blade_figures(job, plan.targets);
  return plan;
}

namespace {

/// Litres of a part of the blade that no station stands for, where that is longer than stations lie apart.
void tell_carried_on(const Plan& plan, std::vector<Warning>& out) {
  constexpr double too_far = 1.5;     // of the widest step between stations
  constexpr double beyond_one = 0.5;  // of the chord, where there is one station alone
  const auto& measured = plan.measured;
  if (measured.size() == 1) {
    out.push_back({"one-station", "station " + measured.front().station,
                   "the only one: it tells its own section, but no litres along the blade and no taper: measure three or more"});
  }
  double step = measured.size() > 1 ? 0 : beyond_one / too_far * measured.front().chord;
  for (std::size_t k = 1; k < measured.size(); ++k) step = std::max(step, measured[k].down - measured[k - 1].down);
  const auto tell = [&](double length, const section::MeasuredSection& station, const char* where, double add, double remove) {
    if (length <= too_far * step) return;
    out.push_back({"carried-on", "station " + station.station,
                   both_units(length, plan.job.units) + " of the blade lie " + where +
                       ", farther than the stations lie apart, and nothing was read there: " + fixed(add, 2) + " L to add and " +
                       fixed(remove, 2) + " L to take off are this section carried on; measure one more station there"});
  };
  const fill::Volumes& v = plan.volumes;
  tell(measured.front().down, measured.front(), "above it", v.above_add, v.above_remove);
  if (v.has_below) tell(*plan.job.bottom - measured.back().down, measured.back(), "below it", v.below_add, v.below_remove);
}

/// A station as it would be had its governing place not been read.
struct Unread {
  section::MeasuredSection measured;
  form::FittedForm fitted;
};

// Nothing when too little would be left of it.
std::optional<Unread> without_governing(const Plan& plan, std::size_t k) {
  const target::Governing& governing = *plan.targets[k].governing;
  job::Station station = plan.job.stations[k];
  auto& readings = station.readings;
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
  auto measured = section::measure_section(plan.job, station);
  if (!measured) return std::nullopt;
  form::FittedForm fitted = form::fit_form(*measured, plan.job.reading_error);
  return Unread{std::move(*measured), std::move(fitted)};
}

/// What the litres would be had a governing reading not been read. `sections`, the plan's own or a copy of them, are left as they
/// were.
class Asking {
 public:
  Asking(const Plan& plan, Sections& sections) : plan_(plan), sections_(sections) {
    if (target::stations_stand_alone(plan.job)) one_.emplace(sections.measured, plan.targets);
    else all_.emplace(plan.job, sections.measured, sections.fitted);
  }
  std::optional<double> litres(std::size_t k, Unread unread) {
    if (!one_) return of_all(k, unread);
    const auto target = target::plan_target(plan_.job, plan_.job.stations[k], unread.measured, unread.fitted);
    if (!target) return std::nullopt;
    return one_->with(k, unread.measured, *target);
  }

 private:
  std::optional<double> of_all(std::size_t k, Unread& unread) {
    std::swap(sections_.measured[k], unread.measured);
    std::swap(sections_.fitted[k], unread.fitted);
    std::optional<double> out;
    if (const auto targets = all_->with(k)) out = fill::litres_to_add(sections_.measured, *targets);
    std::swap(sections_.measured[k], unread.measured);
    std::swap(sections_.fitted[k], unread.fitted);
    return out;
  }

  const Plan& plan_;
  Sections& sections_;
  std::optional<fill::LitresWithAnother> one_;  // or
  std::optional<target::TargetsAgain> all_;
};

std::vector<GoverningReading> ask_governing(const Plan& plan, Sections& sections) {
  std::vector<GoverningReading> out;
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
  if (stations.empty()) return out;
  Asking asking(plan, sections);
  constexpr std::size_t together = 4;  // a scan's sections are large
  for (std::size_t first = 0; first < stations.size(); first += together) {
    std::vector<std::optional<Unread>> unread(std::min(together, stations.size() - first));
    side_by_side(unread.size(), [&](std::size_t i) { unread[i] = without_governing(plan, stations[first + i]); });
    for (std::size_t i = 0; i < unread.size(); ++i) {
      if (!unread[i]) continue;
      const auto litres = asking.litres(stations[first + i], std::move(*unread[i]));
      if (litres) out.push_back({stations[first + i], *litres});
    }
  }
  return out;
}

/// An edge made thicker to stand its coats leaves the run aft less of a taper, under which they close a thicker edge still: the
/// least that stays open is found by planning with what was found, rounded up as it will be told. Where that is refused the
/// edges' own tapers tell.
void solve_edges(Plan& plan) {
  constexpr int most_times = 8;  // seen: 3
  std::vector<fill::Edge> edges = plan.work.coats.edges;
  job::Job job = plan.job;
  for (int times = 0; times < most_times; ++times) {
    for (std::size_t k = 0; k < edges.size(); ++k) {
      if (!edges[k].closes) continue;
      edges[k].least = target::rounded_up(edges[k].least, LengthUnit::mm);
      job.stations[k].target.trailing_edge_thickness = {job::TrailingEdgeThickness::Kind::mm, edges[k].least};
    }
    const auto targets = target::plan_targets(job, plan.measured, plan.fitted);
    if (!targets) return;
    const auto again = fill::edges_of(*targets, plan.work.coats.build);
    bool open = true;
    for (std::size_t k = 0; k < edges.size(); ++k) {
      if (!again[k].closes) continue;
      open = false;
      edges[k].closes = true;
      edges[k].least = std::max(again[k].least, edges[k].least + 0.01);
    }
    if (!open) continue;
    for (std::size_t k = 0; k < edges.size(); ++k) plan.work.coats.edges[k].least = edges[k].least;
    const auto faults = fill::faults_of(plan.job, plan.work.coats);  // the first of the work's
    std::copy(faults.begin(), faults.end(), plan.work.faults.begin());
    return;
  }
}

bool any_closes(const fill::Coats& coats) {
  return std::any_of(coats.edges.begin(), coats.edges.end(), [](const fill::Edge& one) { return one.closes; });
}

/// What the sections of a plan say of the blade that no single one does.
std::vector<Warning> compare_stations(Plan& plan) {
  plan.twist = target::find_twist(plan.job, plan.measured, plan.fitted);
  plan.asymmetry.resize(plan.measured.size());
  side_by_side(plan.asymmetry.size(),
               [&](std::size_t k) { plan.asymmetry[k] = target::asymmetry_of(plan.measured[k], plan.fitted[k]); });
  plan.make_one = target::make_one(plan.measured);
  auto out = target::name_strays(plan.job, plan.measured, target::find_strays(plan.job, plan.measured, plan.fitted));
  out.insert(out.end(), plan.twist.warnings.begin(), plan.twist.warnings.end());
  tell_carried_on(plan, out);
  return out;
}

void work_out(Plan& plan) {
  plan.work = fill::plan_work(plan.job, plan.measured, plan.targets, plan.changes, plan.volumes);
  if (any_closes(plan.work.coats)) solve_edges(plan);
}

flow::Water water_of(const Plan& plan) {
  return flow::before_and_after(plan.job, plan.measured, plan.targets, flow::quick_panels);
}

void tell_defaults_of_water(Plan& plan) {
  plan.job.defaults.insert(plan.job.defaults.end(), plan.water.defaults.begin(), plan.water.defaults.end());
}

/// A scan's sections, which are large, are not copied: what each question changes in them it puts back.
std::vector<Warning> judge_scan(Plan& plan) {
  auto out = compare_stations(plan);
  work_out(plan);
  Sections own{std::move(plan.measured), std::move(plan.fitted)};
  plan.governing = ask_governing(plan, own);
  plan.measured = std::move(own.measured);
  plan.fitted = std::move(own.fitted);
  return out;
}

/// The same of a blade measured by hand, and its water: five parts, of which none writes what another reads.
std::vector<Warning> judge(Plan& plan, WaterPage page) {
  std::vector<Warning> out;
  Sections copies{plan.measured, plan.fitted};
  side_by_side(5, [&](std::size_t part) {
    if (part == 0 && page == WaterPage::worked_out) plan.water = water_of(plan);
    if (part == 1) work_out(plan);
    if (part == 2) plan.governing = ask_governing(plan, copies);
    if (part == 3) plan.edges_uncut = edges_uncut(plan);
    if (part == 4) out = compare_stations(plan);
  });
  if (page == WaterPage::worked_out) tell_defaults_of_water(plan);
  return out;
}

}  // namespace

Outcome<Plan> make_plan(job::Job asked, WaterPage page) {
  auto plan = run_line(std::move(asked));
  if (!plan) return plan;
  auto told = is_scan(plan->job) ? judge_scan(*plan) : judge(*plan, page);
  if (!plan->work.faults.empty()) return plan->work.faults;
  auto& warnings = plan->blade_warnings;
  std::move(told.begin(), told.end(), std::back_inserter(warnings));
  warnings.insert(warnings.end(), plan->work.warnings.begin(), plan->work.warnings.end());
  return plan;
}

bool is_scan(const job::Job& job) {
  std::size_t readings = 0;
  for (const job::Station& station : job.stations) readings += station.readings.size();
  return readings > most_by_hand;
}

void add_water(Plan& plan) {
  plan.water = water_of(plan);
  tell_defaults_of_water(plan);
}

Outcome<std::vector<Between>> sections_at(const Plan& plan, const std::vector<double>& heights) {
  std::vector<Between> out;
  std::vector<Fault> faults;
  for (const double down : heights) {
    const auto is_here = [&](const section::MeasuredSection& one) { return std::abs(one.down - down) < 0.05; };
    if (std::any_of(plan.measured.begin(), plan.measured.end(), is_here)) continue;
    const std::string name = target::name_at(down, plan.job.units);
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
