#include "cli/pipeline.hpp"

#include <algorithm>
#include <set>

#include "base/text.hpp"
#include "drawing/highs_and_lows.hpp"
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
std::vector<std::string> file_names(const std::vector<std::string>& stations) {
  std::set<std::string> taken;
  std::vector<std::string> out;
  for (const std::string& station : stations) {
    const std::string name = file_name_of(station);
    std::string unique = name;
    for (int k = 2; !taken.insert(lower_case(unique)).second; ++k) unique = name + "_" + std::to_string(k);
    out.push_back(unique);
  }
  return out;
}

}  // namespace

std::vector<emit::File> draw_plan(const report::Plan& plan, const std::vector<plan::Between>& between) {
  std::vector<emit::File> out;
  out.push_back({"plan.json", report::plan_json(plan)});
  out.push_back({"offsets.csv", report::offsets_csv(plan)});
  const auto map = fill::change_map(plan.job, plan.measured, plan.targets, plan.changes);
  out.push_back({"highs-and-lows.svg", emit::to_svg(drawing::draw_highs_and_lows(plan.job, map))});
  std::vector<std::string> stations;
  for (const auto& measured : plan.measured) stations.push_back(measured.station);
  for (const auto& one : between) stations.push_back(one.measured.station);
  const auto names = file_names(stations);
  const auto draw = [&](const std::string& name, const section::MeasuredSection& measured,
                        const target::TargetSection& target, const fill::StationChange& change,
                        const form::FittedForm* fitted) {
    out.push_back({"sections/" + name + ".svg", emit::to_svg(drawing::draw_section(plan.job, measured, target, change, fitted))});
    for (const section::Face face : {section::Face::port, section::Face::starboard}) {
      const auto sheet = drawing::draw_template(plan.job, measured, target, face);
      out.push_back({"templates/" + name + "-" + section::name_of(face) + "-final.svg", emit::to_svg(sheet)});
    }
  };
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    draw(names[k], plan.measured[k], plan.targets[k], plan.changes[k], &plan.fitted[k]);
  }
  for (std::size_t k = 0; k < between.size(); ++k) {
    draw(names[plan.measured.size() + k], between[k].measured, between[k].target, between[k].change, nullptr);
  }
  return out;
}

}  // namespace fairblade::cli
