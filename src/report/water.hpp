// The blade before and after in the water, as lines and cells for whatever page shows them. Verbs: water_page,
// water_text.
#pragma once
#include <string>
#include <vector>

#include "report/plan.hpp"

namespace fairblade::report {

/// A heading, and rows of cells under the first of them; a cell may be empty.
struct PlainTable {
  std::string heading;
  std::vector<std::vector<std::string>> rows;
};

/// drawing::draw_water(plan.job, plan.water) is the picture that goes with it.
struct WaterPage {
  std::vector<std::string> sentences;     ///< stall, hum, helm; and of a lopsided blade its pull
  std::string verdict;                    ///< what is worth doing, or that nothing is
  std::string caution;                    ///< a comparison, not a design
  PlainTable blade, stations;             ///< now and then; a row per figure, a row per station
  std::vector<std::string> edge_options;  ///< what yards do about a tone, none of it certain
  std::vector<std::string> limits;        ///< what the page does not know; to be printed with it
};
/// Lengths in mm with the job's own unit beside them.
WaterPage water_page(const Plan& plan);

/// The sentences and the verdict for the screen.
std::string water_text(const Plan& plan);

}  // namespace fairblade::report
