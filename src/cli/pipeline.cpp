#include "cli/pipeline.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "base/file_names.hpp"
#include "base/side_by_side.hpp"
#include "base/text.hpp"
#include "cli/edge_files.hpp"
#include "cli/report_pictures.hpp"
#include "cli/results.hpp"
#include "drawing/highs_and_lows.hpp"
#include "drawing/section_drawing.hpp"
#include "drawing/template_drawing.hpp"
#include "drawing/water_drawing.hpp"
#include "emit/svg.hpp"
#include "pages/pages.hpp"
#include "report/report.hpp"

namespace fairblade::cli {
namespace {

constexpr double long_chord = 600;      // mm: beyond it a template is split in two
constexpr double aft_half_from = 0.15;  // of the chord
constexpr double nose_overlap = 0.9;    // of the nose gauge: the aft half begins before that ends

/// One section to draw, a station or a height in between.
struct Section {
  std::string name;  // in files
  const section::MeasuredSection& measured;
  const target::TargetSection& target;
  const fill::StationChange& change;
  const form::FittedForm* fitted;
};

std::vector<Section> sections_of(const report::Plan& plan, const std::vector<plan::Between>& between) {
  std::vector<std::string> stations;
  for (const auto& measured : plan.measured) stations.push_back(measured.station);
  for (const auto& one : between) stations.push_back(one.measured.station);
  const auto names = file_names_of(stations);
  std::vector<Section> out;
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    out.push_back({names[k], plan.measured[k], plan.targets[k], plan.changes[k], &plan.fitted[k]});
  }
  for (std::size_t k = 0; k < between.size(); ++k) {
    const auto& one = between[k];
    out.push_back({names[plan.measured.size() + k], one.measured, one.target, one.change, nullptr});
  }
  return out;
}

/// Draws the templates of sections: each as a file of its own, and as pieces for the pages.
class Templates {
 public:
  Templates(const report::Plan& plan, std::vector<emit::File>& files, std::vector<pages::Piece>& pieces)
      : job_(plan.job), targets_(plan.targets), files_(files), pieces_(pieces) {}

  void draw(const Section& section, const fill::Stage& stage, double stand_off) {
    auto found = fill::stage_section(section.target, stage, stand_off);
    if (!found) return;  // told among the warnings
    const auto surface = std::make_shared<const fill::StageSection>(std::move(*found));
    drawing::TemplateOf wanted{job_, section.target, *surface, section::Face::port, section.measured.thickness_only, 0};
    const std::string end = std::string("-") + fill::name_of(stage.kind) + (stand_off > 0 ? "-clearance" : "");
    draw_files(section.name, wanted, surface, end);
    if (split(section.target, wanted)) draw_in_two(section, stage, stand_off, end, wanted, surface);
    if (fill::on_pages(job_, stage.kind, stand_off > 0)) add_pieces(section, wanted);
  }

  void draw_positive(const Section& section, const fill::Stage& stage) {
    const auto surface = fill::stage_section(section.target, stage);
    if (!surface) return;
    const drawing::TemplateOf wanted{job_, section.target, *surface, section::Face::port, section.measured.thickness_only, 0};
    auto sheet = drawing::draw_positive(wanted);
    const std::string kind = fill::name_of(stage.kind);
    files_.push_back(emit::drawn("templates/" + section.name + "-section-" + kind + ".svg", drawing::framed(sheet, job_.units)));
    if (!fill::on_pages(job_, stage.kind, false)) return;
    pieces_.push_back({section.target.station + ", the section itself, " + kind, std::move(sheet), {}, {}});
  }

 private:
  using Surface = std::shared_ptr<const fill::StageSection>;

  /// The aft half as files, and as what is wanted from there on, where there is a nose gauge to go with it.
  void draw_in_two(const Section& section, const fill::Stage& stage, double stand_off, const std::string& end,
                   drawing::TemplateOf& wanted, const Surface& surface) {
    const auto nose = fill::nose_of(fill::height_of(job_, targets_, section.target), stage, stand_off);
    if (!nose.why_none.empty()) return;
    wanted.from_fraction = std::min(aft_half_from, nose_overlap * nose.tail_fraction);
    draw_files(section.name, wanted, surface, "-aft" + end);
    const bool station = section.fitted != nullptr;
    if (stand_off > 0 || !station) draw_nose_half(job_, nose, stand_off > 0, section.name, files_, pieces_);
  }

  /// Drawn when they are written; until then `surface` keeps what `wanted` refers to.
  void draw_files(const std::string& name, drawing::TemplateOf wanted, const Surface& surface, const std::string& end) {
    for (const section::Face face : {section::Face::port, section::Face::starboard}) {
      wanted.face = face;
      files_.push_back(emit::drawn("templates/" + name + "-" + section::name_of(face) + end + ".svg",
                                   [wanted, surface] { return drawing::draw_template(wanted); }));
    }
  }

  bool split(const target::TargetSection& target, const drawing::TemplateOf& whole) const {
    if (job_.print.split != job::Split::when_needed) return job_.print.split == job::Split::always;
    if (target.chord > long_chord) return true;
    return pages::columns_for(job_.print, drawing::draw_card(whole).sheet.width) > 2;
  }

  void add_pieces(const Section& section, drawing::TemplateOf wanted) {
    const std::string what = (wanted.from_fraction > 0 ? "aft half, " : "") + drawing::stage_words(wanted.stage);
    auto pair = drawing::draw_pair(wanted);
    const bool together = pages::rows_for(job_.print, pair.sheet.width, pair.sheet.height) == 1;
    if (together) return add_piece(section.target, std::move(pair), section.target.station + ", port and starboard, " + what);
    for (const section::Face face : {section::Face::port, section::Face::starboard}) {
      wanted.face = face;
      add_piece(section.target, drawing::draw_card(wanted), section.target.station + ", " + section::name_of(face) + ", " + what);
    }
  }

  void add_piece(const target::TargetSection& target, drawing::TemplateCard card, const std::string& label) {
    const double x = card.origin.x(), y = card.origin.y(), d = card.first_tenth + 2;
    pieces_.push_back({label, std::move(card.sheet), {{x - 2, x + 0.1 * target.chord}}, {{y - d, y + d}}});
  }

  const job::Job& job_;
  const std::vector<target::TargetSection>& targets_;
  std::vector<emit::File>& files_;
  std::vector<pages::Piece>& pieces_;
};

/// Templates of every section at every stage; the clearance version for the first, at which the shape is made.
void draw_templates(const report::Plan& plan, const std::vector<Section>& sections, std::vector<emit::File>& files,
                    std::vector<pages::Piece>& pieces) {
  const job::Job& job = plan.job;
  Templates templates(plan, files, pieces);
  const auto stages = fill::stages_of(job);
  for (const Section& section : sections) {
    if (job.print.clearance > 0) templates.draw(section, stages.front(), job.print.clearance);
    for (const fill::Stage& stage : stages) {
      templates.draw(section, stage, 0);
      if (job.print.positives) templates.draw_positive(section, stage);
    }
  }
}

void draw_pages(const job::Job& job, std::vector<pages::Piece> pieces, std::vector<emit::File>& files) {
  auto set = pages::make_pages(job, std::move(pieces), {fill::template_kinds(job, true), fill::template_kinds(job, false)});
  add_pages(std::move(set), job.name + ": pages to print", files);
}

}  // namespace

std::vector<emit::File> draw_plan(const report::Plan& plan, const std::vector<plan::Between>& between,
                                  const check::Findings& findings) {
  std::vector<emit::File> out;
  const auto highs_and_lows = fill::change_map(plan.job, plan.measured, plan.targets, plan.changes);
  drawing::MapWords map_words;
  map_words.under_coats = report::map_under_coats_words(plan);
  drawing::Sheet map_sheet;
  const auto sections = sections_of(plan, between);
  std::vector<std::string> names;
  for (const Section& one : sections) names.push_back(one.name);

  // Parts that know nothing of each other, the longest first; the files come in one order whichever is done first.
  WholeBlade whole;
  StationPictures stations;
  std::vector<emit::File> templates, edges, printed;
  std::vector<pages::Piece> pieces, edge_pieces;
  side_by_side(7, [&](std::size_t part) {
    if (part == 0) {
      map_sheet = drawing::draw_highs_and_lows(plan.job, highs_and_lows, map_words, pages::room_to_read(plan.job.print));
      whole.map = emit::to_svg(map_sheet);
    }
    if (part == 1) draw_templates(plan, sections, templates, pieces);
    if (part == 2) draw_edges(plan, names, edges, edge_pieces);
    if (part == 3)
      whole.narrow_map = emit::to_svg(drawing::draw_highs_and_lows_for_telephone(plan.job, highs_and_lows, map_words));
    if (part == 4) stations = pictures_of_stations(plan);
    if (part == 5) whole.water = emit::to_svg(drawing::draw_water(plan.job, plan.water));
    if (part == 6) whole.narrow_water = emit::to_svg(drawing::draw_water_for_telephone(plan.job, plan.water));
  });
  pieces.insert(pieces.begin(), {"highs and lows", std::move(map_sheet), {}, {}});
  std::move(edge_pieces.begin(), edge_pieces.end(), std::back_inserter(pieces));
  emit::File map{"highs-and-lows.svg", whole.map}, water{"water.svg", whole.water};
  std::string report;
  side_by_side(2, [&](std::size_t part) {
    if (part == 0) report = report::report_html(plan, report_pictures(std::move(whole), std::move(stations)), findings);
    if (part == 1) draw_pages(plan.job, std::move(pieces), printed);
  });
  out.push_back({"report.html", std::move(report)});
  out.push_back(in_pieces("plan.json", report::plan_json_pieces(plan, job::sources_of(plan.job), findings)));
  out.push_back(in_pieces("offsets.csv", report::offsets_csv_pieces(plan)));
  out.push_back(std::move(map));
  out.push_back(std::move(water));
  for (const Section& one : sections) {
    out.push_back(emit::drawn("sections/" + one.name + ".svg", [&plan, one] {
      return drawing::draw_section(plan.job, one.measured, one.target, one.change, one.fitted);
    }));
  }
  std::move(templates.begin(), templates.end(), std::back_inserter(out));
  std::move(edges.begin(), edges.end(), std::back_inserter(out));
  std::move(printed.begin(), printed.end(), std::back_inserter(out));
  return out;
}

}  // namespace fairblade::cli
