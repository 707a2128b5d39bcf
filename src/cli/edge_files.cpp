#include "cli/edge_files.hpp"

#include <iterator>

#include "drawing/edge_card.hpp"
#include "drawing/nose_gauge.hpp"
#include "drawing/nose_table.hpp"
#include "emit/svg.hpp"

namespace fairblade::cli {
namespace {

/// NAME.svg, NAME-2.svg, ...; each sheet a piece too.
void add_sheets(const std::string& name, const std::string& label, const std::vector<drawing::Sheet>& sheets,
                std::vector<emit::File>& files, std::vector<pages::Piece>& pieces) {
  for (std::size_t k = 0; k < sheets.size(); ++k) {
    const std::string number = k > 0 ? std::to_string(k + 1) : "";
    files.push_back(emit::drawn("templates/" + name + (k > 0 ? "-" + number : "") + ".svg", sheets[k]));
    pieces.push_back({label + (k > 0 ? ", sheet " + number : ""), sheets[k], {}, {}});
  }
}

void add_cards(const job::Job& job, const std::vector<fill::Nose>& noses, std::vector<pages::Piece>& pieces) {
  for (drawing::Card& card : drawing::gauge_cards(job, noses)) pieces.push_back({card.label, std::move(card.sheet), {}, {}});
}

}  // namespace

void draw_edges(const report::Plan& plan, const std::vector<std::string>& names, std::vector<emit::File>& files,
                std::vector<pages::Piece>& pieces) {
  const auto paper = pages::room_to_read(plan.job.print);
  for (const fill::Stage& stage : fill::stages_of(plan.job)) {
    const auto noses = fill::noses_down(plan.job, plan.targets, stage, plan.job.print.gauge_spacing);
    const std::string kind = fill::name_of(stage.kind);
    for (const fill::Nose& nose : noses) {
      if (!nose.station || !nose.why_none.empty()) continue;
      files.push_back(
          emit::drawn("templates/" + names[*nose.station] + "-nose-" + kind + ".svg", drawing::draw_gauge_sheet(plan.job, nose)));
    }
    const bool on_pages = fill::on_pages(plan.job, stage.kind, false);
    std::vector<pages::Piece> of_stage;
    if (on_pages) add_cards(plan.job, noses, of_stage);
    add_sheets("leading-edge-table-" + kind, "leading edge, table, " + kind, drawing::nose_tables(plan.job, stage, noses, paper),
               files, of_stage);
    if (on_pages) std::move(of_stage.begin(), of_stage.end(), std::back_inserter(pieces));
  }
  const auto card = fill::edge_card_of(plan.job, plan.targets, plan.job.print.gauge_spacing, plan.measured);
  add_sheets("trailing-edge-card", "trailing-edge card", drawing::edge_cards(plan.job, card, paper), files, pieces);
}

void draw_nose_half(const job::Job& job, const fill::Nose& nose, bool clearance, const std::string& name,
                    std::vector<emit::File>& files, std::vector<pages::Piece>& pieces) {
  const std::string end = fill::name_of(nose.section.stage.kind) + std::string(clearance ? "-clearance" : "");
  files.push_back(emit::drawn("templates/" + name + "-nose-" + end + ".svg", drawing::draw_gauge_sheet(job, nose)));
  if (!fill::on_pages(job, nose.section.stage.kind, clearance)) return;
  add_cards(job, {nose}, pieces);
}

}  // namespace fairblade::cli
