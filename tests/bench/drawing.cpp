// Pages, and SVG text beside plain formatted output of as many numbers.
#include <cstdio>
#include <memory>

#include "bench/bench.hpp"
#include "cli/pipeline.hpp"
#include "drawing/highs_and_lows.hpp"
#include "drawing/template_drawing.hpp"
#include "emit/svg.hpp"
#include "fill/change_map.hpp"
#include "fill/stages.hpp"
#include "pages/pages.hpp"
#include "plan/plan.hpp"

namespace bench {
namespace {

using namespace fairblade;

/// Every coordinate of the sheet's lines by snprintf, to three decimals: the bytes that make up most of a drawing.
double plain_output(const drawing::Sheet& sheet) {
  std::string out;
  char text[64];
  for (const drawing::Item& item : sheet.items) {
    const auto* path = std::get_if<drawing::Path>(&item);
    if (path == nullptr) continue;
    for (const auto& run : path->runs) {
      for (const Point& p : run)
        out.append(text, static_cast<std::size_t>(std::snprintf(text, sizeof text, "L%.3f %.3f", p.x(), p.y())));
    }
  }
  return static_cast<double>(out.size());
}

}  // namespace

std::vector<Kernel> drawing_kernels() {
  const auto job = job::read_job(PROFILES_DIR "/whimbrel/whimbrel.json");
  const auto plan = std::make_shared<const plan::Plan>(*plan::make_plan(*job));
  const auto map = [=] {
    return drawing::draw_highs_and_lows(plan->job, fill::change_map(plan->job, plan->measured, plan->targets, plan->changes));
  };
  const auto sheet = std::make_shared<const drawing::Sheet>(map());
  const auto cards = std::make_shared<std::vector<pages::Piece>>();
  for (const auto& target : plan->targets) {
    const auto surface = fill::stage_section(target, fill::stages_of(plan->job).front());
    cards->push_back(
        {target.station, drawing::draw_pair({plan->job, target, *surface, section::Face::port, false, 0}).sheet, {}, {}});
  }
  return {{"map", "highs and lows of a blade, drawn", [=] { return map().width; }, "", {}, {}, ""},
          {"svg",
           "that map as SVG text, " + std::to_string(emit::to_svg(*sheet).size() / 1000) + " kB",
           [=] { return static_cast<double>(emit::to_svg(*sheet).size()); },
           "snprintf of its coordinates",
           [=] { return plain_output(*sheet); },
           {},
           ""},
          {"stage",
           "a section before its coats",
           [=] { return fill::stage_section(plan->targets[0], fill::stages_of(plan->job).front())->edge_width; },
           "",
           {},
           {},
           ""},
          {"pages",
           "five templates cut up for A4 and Letter",
           [=] { return static_cast<double>(pages::make_pages(plan->job, *cards).pages.size()); },
           "",
           {},
           {},
           ""}};
}

}  // namespace bench
