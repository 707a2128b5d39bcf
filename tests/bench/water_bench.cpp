// A whole blade's water page: five stations, 320 panels, 13 angles to each side, before and after. Not run by CTest.
// Count instructions: valgrind --tool=callgrind --callgrind-out-file=calls.out bench_water [alone|plan]
// "alone": the sections only, ten factorisations, without what reading errors would show and without the words.
// "plan": the whole page with the panels that `plan` takes.
// Factorisations are calls of PanelFlow::solve: callgrind_annotate --tree=caller calls.out. Seen: 10 alone, one a section
// whatever the angles; 85 in the page, those and for each station 15 of 160 panels for the reading errors.
// Seen (GCC 12, x86-64, -O2): 1.46e9 instructions for the whole page, 0.56e9 alone, 1.19e9 as `plan` runs it (0.11 s of
// one shared core).
#include <cstdio>
#include <cstring>

#include "blade.hpp"
#include "flow/water.hpp"

using namespace fairblade;

int main(int count, char** words) {
  auto job = blade::job_of({});
  std::vector<section::MeasuredSection> measured;
  std::vector<target::TargetSection> targets;
  std::mt19937 random(1);
  for (int k = 0; k < 5; ++k) {
    job.stations.push_back(blade::exact(std::string(1, static_cast<char>('A' + k)), 250.0 * k, 420 - 25 * k, 0.12));
    blade::add_noise(job.stations.back(), 0.5, random);
    measured.push_back(blade::measured(job, static_cast<std::size_t>(k)));
    target::TargetSection target;
    target.chord = measured.back().chord;
    target.down = measured.back().down;
    target.ahead = measured.back().ahead;
    targets.push_back(target);
  }
  double sum = 0;
  if (count > 1 && std::strcmp(words[1], "alone") == 0) {
    for (std::size_t k = 0; k < 5; ++k) {
      sum += flow::section_in_water(flow::nodes_of(measured[k], targets[k]), true).to_port[8].suction;
      sum += flow::section_in_water(flow::nodes_of(targets[k]), true).to_port[8].suction;
    }
  } else {
    const bool as_plan = count > 1 && std::strcmp(words[1], "plan") == 0;
    const std::size_t panels = as_plan ? flow::quick_panels : flow::usual_panels;
    sum = flow::before_and_after(job, measured, targets, panels).stations[0].nose.ratio;
  }
  std::printf("%.6f\n", sum);
}
