// fairblade recheck PLAN READINGS...: what is left to do, against the target that a plan froze.
//
// Results go to out/NAME-recheck unless told, NAME being the plan's folder: beside where `plan` writes by itself, and
// never into the plan's own folder, whose results are of another run.
#include <filesystem>
#include <ostream>

#include "base/heap.hpp"
#include "base/text.hpp"
#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "cli/lengths.hpp"
#include "cli/results.hpp"
#include "drawing/highs_and_lows.hpp"
#include "emit/folder.hpp"
#include "emit/svg.hpp"
#include "job/numbers.hpp"
#include "plan/plan.hpp"
#include "recheck/map.hpp"
#include "report/recheck.hpp"

namespace fairblade::cli {
namespace {

namespace fs = std::filesystem;

struct RecheckArguments {
  std::string plan, folder, tolerance, stage;
  std::vector<std::string> readings;
  bool json = false, quiet = false, strict = false;
};

void describe(CLI::App& app, RecheckArguments& arguments) {
  app.get_formatter()->column_width(36);
  app.add_option("PLAN", arguments.plan, "the folder that plan wrote, or its plan.json")->required()->type_name("");
  app.add_option("READINGS", arguments.readings, "CSVs of readings, one for each round, oldest first")->required()->type_name("");
  app.add_option("-o,--output", arguments.folder, "where the results go; out/<name of PLAN>-recheck/ unless told")
      ->type_name("DIR");
  app.add_option(
         "--tolerance", arguments.tolerance,
         "within it nothing need be done; a bare number is in the job's unit,\n0.5mm or 0.02in in its own; 0.5mm unless told")
      ->type_name("LENGTH");
  app.add_option("--stage", arguments.stage,
                 "the surface that was measured: bare, glassed or final;\nthe one at which filler is shaped unless told")
      ->type_name("STAGE");
  app.add_flag("--json", arguments.json, "print recheck.json instead of the list");
  app.add_flag("--quiet", arguments.quiet, "print nothing but refusals");
  app.add_flag("--strict", arguments.strict, "exit status 1 when something is left to do, or to read");
  app.footer(
      "A column down in the CSV takes readings at any height between the stations, columns ahead and chord tell\n"
      "where the edges are now. Marks that still count from the old leading edge: a row x_from,old-leading-edge\n"
      "above the header; of another surface than the one at which filler is shaped, a row stage,glassed or stage,final,\n"
      "which wins over --stage. The target is the plan's, whatever became of the job.\n\n"
      "exit status: 0 done; 1 something is left to do, under --strict; 2 refused; 3 not written\n"
      "example: fairblade recheck out/whimbrel profiles/whimbrel/after-filling.csv");
}

std::string folder_of(const RecheckArguments& arguments) {
  if (!arguments.folder.empty()) return arguments.folder;
  std::error_code error;
  fs::path plan = fs::weakly_canonical(arguments.plan, error);
  if (error) plan = arguments.plan;
  if (!fs::is_directory(plan, error)) plan = plan.parent_path();
  const std::string name = plan.filename().string();
  return "out/" + (name.empty() ? "plan" : name) + "-recheck";
}

Outcome<recheck::Options> options_of(const RecheckArguments& arguments, LengthUnit unit) {
  constexpr double least = 0.01, most = 5;  // mm; within more than that no surface is finished
  recheck::Options out;
  out.stage = arguments.stage;
  if (arguments.tolerance.empty()) return out;
  const auto read = length_of(arguments.tolerance, unit);
  if (!read || !(*read >= least && *read <= most)) {
    const bool elsewhere = read && unit != LengthUnit::mm && *read > 0;  // in mm it would be one
    const double bare = elsewhere ? *read / millimetres_in(unit) : 0;
    const bool in_mm = elsewhere && job::length_of_text(arguments.tolerance, unit).kind == job::LengthOfText::Kind::no_unit &&
                       bare >= least && bare <= most;
    return Fault{{"--tolerance", 0},
                 "\"" + arguments.tolerance + "\" is " + (elsewhere ? both_units(*read, unit) + ", " : "") + "no tolerance",
                 "give a length from " + trimmed(least, 2) + " mm to " + trimmed(most, 0) + " mm, as in " +
                     (in_mm ? trimmed(bare, 3) : "0.5") + "mm"};
  }
  out.tolerance = *read;
  return out;
}

std::vector<emit::File> files_of(const recheck::Recheck& recheck) {
  drawing::MapWords words;
  words.heading = "What is left";
  words.within = "the tolerance";
  const auto next = report::what_next(recheck);
  if (recheck.verdict != recheck::Verdict::go_on) words.begin = "Nowhere. ";
  for (std::size_t k = 0; k + 1 < next.size() || (k == 0 && !next.empty()); ++k) words.begin += (k > 0 ? " " : "") + next[k];
  const auto map = drawing::draw_highs_and_lows(recheck.frozen.job, recheck::map_of(recheck), words);
  return {{"what-is-left.svg", emit::to_svg(map)},
          in_pieces("recheck.json", report::recheck_json(recheck)),
          in_pieces("still-to-do.csv", report::still_to_do_csv(recheck))};
}

}  // namespace

int run_recheck(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app(
      "New readings after a round of filling or sanding, against the target frozen in a plan: what is still high or "
      "low.",
      "fairblade recheck");
  RecheckArguments arguments;
  describe(app, arguments);
  if (const auto status = parse(app, args, out, err)) return *status;
  if (app.count("--output") > 0 && arguments.folder.empty()) return refuse("-o is empty", "name a folder", err);

  auto plan = job::read_frozen_plan(arguments.plan);
  if (!plan) return refuse(plan.faults(), err);
  const auto options = options_of(arguments, plan->units);
  if (!options) return refuse(options.faults(), err);
  std::size_t readings = 0;
  for (const job::FrozenStation& station : plan->stations) readings += station.readings.size();
  if (readings > 2 * plan::most_by_hand) share_one_heap();  // of two sides
  auto recheck = recheck::recheck(std::move(*plan), arguments.readings, *options);
  if (!recheck) return refuse(recheck.faults(), err);
  if (arguments.tolerance.empty())
    recheck->defaults.push_back({"tolerance", in_unit(options->tolerance, recheck->frozen.job.units)});

  const std::string folder = folder_of(arguments);
  const auto files = files_of(*recheck);
  if (const auto failed = write_results(folder, files, emit::recheck_results, err)) return tell_not_written(*failed, err);
  if (arguments.json) {
    out << whole(files, "recheck.json");
  } else if (!arguments.quiet) {
    out << report::recheck_text(*recheck) << "\nWritten to " << folder << ": what-is-left.svg, recheck.json, still-to-do.csv\n";
  }
  const bool left = recheck->verdict == recheck::Verdict::go_on || !recheck->unread.empty() || !recheck->left_open.empty();
  return arguments.strict && left ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
