#include "cli/pipeline.hpp"

#include <algorithm>
#include <set>

#include "base/text.hpp"
#include "drawing/section_drawing.hpp"
#include "drawing/template_drawing.hpp"
#include "emit/svg.hpp"
#include "report/report.hpp"

namespace fairblade::cli {
namespace {

std::string lower_case(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

// Names of stations as file names, told apart even where a file system ignores capitals.
std::vector<std::string> file_names(const report::Plan& plan) {
  std::set<std::string> taken;
  std::vector<std::string> out;
  for (const auto& measured : plan.measured) {
    const std::string name = file_name_of(measured.station);
    std::string unique = name;
    for (int k = 2; !taken.insert(lower_case(unique)).second; ++k) unique = name + "_" + std::to_string(k);
    out.push_back(unique);
  }
  return out;
}

// What a job file may ask for but this version does not do: refused where the plan would come out as another shape,
// said where another choice stands in.
void judge_request(const job::Station& station, std::vector<Fault>& faults, std::vector<Warning>& warnings) {
  const job::TargetRequest& request = station.target;
  const auto place = [&](const char* key) {
    const auto found = request.places.find(key);
    return found == request.places.end() ? station.place : found->second;
  };
  const auto refuse = [&](const char* key, const std::string& what, const std::string& remedy) {
    Fault fault;
    fault.place = place(key);
    fault.what = what;
    fault.remedy = remedy;
    const auto same = [&](const Fault& f) { return one_line(f) == one_line(fault); };
    if (std::none_of(faults.begin(), faults.end(), same)) faults.push_back(fault);
  };
  if (request.approach == job::Approach::edges_only) {
    refuse("approach", "\"edges-only\" is not offered by this version", "use \"full-section\"");
  }
  if (request.spanwise == job::Spanwise::straight) {
    warnings.push_back({"spanwise", "station " + station.name,
                        "stations are not drawn to a straight line by this version: each is taken as measured"});
  }
}

}  // namespace

Outcome<report::Plan> make_plan(const job::Job& job) {
  report::Plan plan;
  plan.job = job;
  std::vector<Fault> faults;
  for (const job::Station& station : job.stations) judge_request(station, faults, plan.job.warnings);
  if (!faults.empty()) return faults;
  for (const job::Station& station : job.stations) {
    auto measured = section::measure_section(job, station);
    if (measured) plan.measured.push_back(std::move(*measured));
    else faults.insert(faults.end(), measured.faults().begin(), measured.faults().end());
  }
  if (!faults.empty()) return faults;
  for (const auto& measured : plan.measured) plan.fitted.push_back(form::fit_form(measured, job.reading_error));
  auto targets = target::plan_targets(job, plan.measured, plan.fitted);
  if (!targets) return targets.faults();
  plan.targets = std::move(*targets);
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    plan.changes.push_back(fill::compare(plan.measured[k], plan.targets[k]));
  }
  plan.volumes = fill::sum_volumes(job, plan.measured, plan.targets, plan.changes);
  return plan;
}

std::vector<emit::File> draw_plan(const report::Plan& plan) {
  std::vector<emit::File> out;
  out.push_back({"plan.json", report::plan_json(plan)});
  out.push_back({"offsets.csv", report::offsets_csv(plan)});
  const auto names = file_names(plan);
  for (std::size_t k = 0; k < names.size(); ++k) {
    const auto& measured = plan.measured[k];
    const auto& target = plan.targets[k];
    const auto section = drawing::draw_section(plan.job, measured, target, plan.changes[k], &plan.fitted[k]);
    out.push_back({"sections/" + names[k] + ".svg", emit::to_svg(section)});
    for (const section::Face face : {section::Face::port, section::Face::starboard}) {
      const auto sheet = drawing::draw_template(plan.job, measured, target, face);
      out.push_back({"templates/" + names[k] + "-" + section::name_of(face) + "-final.svg", emit::to_svg(sheet)});
    }
  }
  return out;
}

}  // namespace fairblade::cli
