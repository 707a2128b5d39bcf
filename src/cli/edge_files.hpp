// Private to the cli room. Product: the drawings of both edges, as files and as pieces for the pages.
// Verbs: draw_edges, draw_nose_half.
#pragma once
#include <string>
#include <vector>

#include "emit/folder.hpp"
#include "fill/nose.hpp"
#include "pages/pages.hpp"
#include "report/plan.hpp"

namespace fairblade::cli {

/// At every stage the leading-edge gauges, a file to each station and a piece to each half at every height, and their
/// tables; and the trailing-edge card. `names`: the stations in files.
void draw_edges(const report::Plan& plan, const std::vector<std::string>& names, std::vector<emit::File>& files,
                std::vector<pages::Piece>& pieces);

/// The gauge that goes with the aft half of a template that draw_edges has none for: a clearance one, or between stations.
void draw_nose_half(const job::Job& job, const fill::Nose& nose, bool clearance, const std::string& name,
                    std::vector<emit::File>& files, std::vector<pages::Piece>& pieces);

}  // namespace fairblade::cli
