// The panel method, and the water page of a whole blade. Factorisations are calls of PanelFlow::solve:
//   valgrind --tool=callgrind --callgrind-out-file=calls.out bench --run water-sections
//   callgrind_annotate --tree=caller calls.out | grep PanelFlow::solve
// Seen: 10 in water-sections, one a section whatever the angles.
#include <memory>
#include <random>

#include "bench/bench.hpp"
#include "blade.hpp"
#include "flow/water.hpp"

namespace bench {
namespace {

using namespace fairblade;

struct Blade {
  job::Job job = blade::job_of({});
  std::vector<section::MeasuredSection> measured;
  std::vector<target::TargetSection> targets;
};

Blade five_stations() {
  Blade out;
  std::mt19937 random(1);
  for (int k = 0; k < 5; ++k) {
    out.job.stations.push_back(blade::exact(std::string(1, static_cast<char>('A' + k)), 250.0 * k, 420 - 25 * k, 0.12));
    blade::add_noise(out.job.stations.back(), 0.5, random);
    out.measured.push_back(blade::measured(out.job, static_cast<std::size_t>(k)));
    target::TargetSection target;
    target.chord = out.measured.back().chord;
    target.down = out.measured.back().down;
    target.ahead = out.measured.back().ahead;
    out.targets.push_back(target);
  }
  return out;
}

}  // namespace

std::vector<Kernel> flow_kernels() {
  const auto blade = std::make_shared<const Blade>(five_stations());
  const auto sections = [=](std::size_t panels) {
    double sum = 0;
    for (std::size_t k = 0; k < blade->measured.size(); ++k) {
      const auto before = flow::section_in_water(flow::nodes_of(blade->measured[k], blade->targets[k], panels), true);
      sum += before.to_port[8].suction;
      sum += flow::section_in_water(flow::nodes_of(blade->targets[k], panels), true).to_port[8].suction;
    }
    return sum;
  };
  const auto page = [=](std::size_t panels) {
    return flow::before_and_after(blade->job, blade->measured, blade->targets, panels).stations[0].nose.ratio;
  };
  return {
      {"panel",
       "one section, 320 panels, one angle",
       [=] {
         auto nodes = flow::nodes_of(blade->targets[0], flow::usual_panels);
         return flow::PanelFlow::solve(std::move(nodes.nodes), nodes.frame)->at(8).lift;
       },
       "",
       {},
       {},
       ""},
      {"water-sections",
       "5 stations, 320 panels, 13 angles to each side, before and after",
       [=] { return sections(flow::usual_panels); },
       "",
       {},
       {},
       ""},
      {"water-page",
       "the same with what reading errors alone would show",
       [=] { return page(flow::usual_panels); },
       "",
       {},
       {},
       ""},
      {"water-plan", "the water page with the panels that plan takes", [=] { return page(flow::quick_panels); }, "", {}, {}, ""}};
}

}  // namespace bench
