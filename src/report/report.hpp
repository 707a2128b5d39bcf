// What people and programs read of a plan, as text. Verbs: summary, report_html, plan_json, offsets_csv,
// under_coats_words, map_under_coats_words.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "check/findings.hpp"
#include "job/sources.hpp"
#include "report/pieces.hpp"
#include "report/plan.hpp"

namespace fairblade::report {

/// For the screen: a table of the stations, how near the blade is to a standard section, litres, warnings, defaults.
/// mm, with the job's own unit beside it. UTF-8, at most 100 columns where names allow it.
std::string summary(const Plan& plan);

/// A drawing of ours as SVG text, with the words that stand under it.
struct Picture {
  std::string title, svg;
};
/// What other rooms made for the page.
struct ReportPictures {
  std::vector<Picture> maps;                              ///< of the whole blade
  std::vector<Picture> narrow_maps;                       ///< the same for a telephone's width, shown there instead
  std::vector<std::pair<std::size_t, Picture>> stations;  ///< by the station's place in the plan
  Picture water, narrow_water;                            ///< before and after
};
/// The stations that the page shows one by one: all, or of many the first, the last, the deepest and some between.
std::vector<std::size_t> stations_shown(const Plan& plan);

/// report.html: one file that needs no other and no script, for a telephone and for A4 in grey. Well-formed XML too.
/// `findings`: what was found in the readings; none with no readings where they were not judged.
std::string report_html(const Plan& plan, const ReportPictures& pictures, const check::Findings& findings = {});

/// plan.json: mm, mm², litres; full precision; what cannot be told is null. Keys beside those of the products:
///   units          the job's, for people: "mm", "cm", "in" (every length here is mm all the same)
///   reading_error  mm, one standard deviation; bottom: mm down, or null
///   stages         name, to_come (mm a side of coats not on yet), surface; the filler is shaped at the first
///   sources        file as it was given, fnv1a64 of its bytes: tells a later recheck whether the job was edited
///   stations[].target.leading_edge_left_to  x by which a leading edge that is left as it is has run into the target, if one is
///   stations[].calipers  true: its readings do not tell port from starboard
///   warnings       what is almost certainly wrong in the readings (`findings`) first, by check's codes; then the plan's own
std::string plan_json(const Plan& plan, const std::vector<job::Source>& sources = {}, const check::Findings& findings = {});
Pieces plan_json_pieces(const Plan& plan, const std::vector<job::Source>& sources, const check::Findings& findings);

/// How much deeper than the depths told the blade is shaped under its coats; empty without coats.
std::string under_coats_words(const Plan& plan);
/// Which surface the map's depths are to; empty without coats.
std::string map_under_coats_words(const Plan& plan);

/// offsets.csv: one row per reading and side, mm to 0.001.
std::string offsets_csv(const Plan& plan);
Pieces offsets_csv_pieces(const Plan& plan);

}  // namespace fairblade::report
