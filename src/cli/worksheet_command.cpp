// fairblade worksheet JOB, or fairblade worksheet --stations N --span LENGTH --chord LENGTH: sheets to measure with.
#include <algorithm>
#include <charconv>
#include <filesystem>
#include <optional>
#include <ostream>

#include "base/file_names.hpp"
#include "base/text.hpp"
#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "cli/lengths.hpp"
#include "cli/results.hpp"
#include "drawing/worksheet.hpp"
#include "emit/folder.hpp"
#include "emit/one_file.hpp"
#include "pages/pages.hpp"
#include "report/worksheet_csv.hpp"

namespace fairblade::cli {
namespace {

struct WorksheetArguments {
  std::string job, folder, stations, span, chord, tip_chord, units, name, way, paper, table;
  bool quiet = false, strict = false;
};

void describe(CLI::App& app, WorksheetArguments& arguments) {
  app.get_formatter()->column_width(36);
  app.add_option("JOB", arguments.job, "a job file or CSV with stations; readings need not be in it")->type_name("");
  app.add_option("-o,--output", arguments.folder, "where the pages go; out/<name of the job>-worksheet/ unless told")
      ->type_name("DIR");
  app.add_option("--stations", arguments.stations, "without a JOB: so many stations, from top to bottom")->type_name("N");
  app.add_option("--span", arguments.span, "and the blade's height along the stock")->type_name("LENGTH");
  app.add_option("--chord", arguments.chord, "and its chord, as far as is known, at the top")->type_name("LENGTH");
  app.add_option("--tip-chord", arguments.tip_chord, "at the bottom, where the blade tapers")->type_name("LENGTH");
  app.add_option("--units", arguments.units,
                 "of these lengths and of the sheets: mm, cm or in;\nthat of the lengths, as in 36in, or mm, unless told")
      ->type_name("UNIT");
  app.add_option("--job", arguments.name, "the job's name, for every page")->type_name("NAME");
  app.add_option("--measured-by", arguments.way, "half-breadths, thickness or gaps; the job's way, or half-breadths, unless told")
      ->type_name("WAY");
  app.add_option("--paper", arguments.paper, "A4, Letter or both; the job's, or both, unless told")->type_name("PAPER");
  app.add_option("--csv", arguments.table, "instead of pages an empty table to fill in, into FILE or printed; with -o both")
      ->expected(0, 1)
      ->type_name("[FILE]");
  app.add_flag("--quiet", arguments.quiet, "print nothing but refusals, and the table where it is printed");
  app.add_flag("--strict", arguments.strict, "exit status 1 when there is advice on the stations");
  app.footer(
      "exit status: 0 done; 1 done with advice, under --strict; 2 refused, nothing written; 3 pages or table not written\n"
      "example: fairblade worksheet --stations 5 --span 1000 --chord 420");
}

/// The options that lay stations out, where they stand beside a JOB that has its own.
std::optional<Fault> beside_job(const CLI::App& app) {
  for (const char* option : {"--stations", "--span", "--chord", "--tip-chord", "--units", "--job"}) {
    if (app.count(option) > 0) return Fault{{option, 0}, "stands beside a JOB", "leave out one of the two: the job says it"};
  }
  return std::nullopt;
}

Outcome<job::ToMeasure> laid_out(const CLI::App& app, const WorksheetArguments& arguments) {
  std::vector<Fault> faults;
  for (const char* option : {"--stations", "--span", "--chord"}) {
    if (app.count(option) == 0) faults.push_back({{option, 0}, "is missing", "give a JOB, or --stations, --span and --chord"});
  }
  const auto unit = app.count("--units") > 0
                        ? length_unit(arguments.units)
                        : std::optional(unit_of_first({arguments.span, arguments.chord, arguments.tip_chord}));
  if (!unit) faults.push_back({{"--units", 0}, "\"" + arguments.units + "\" is no unit", "use mm, cm or in"});
  if (app.count("--job") > 0 && (arguments.name.empty() || arguments.name.size() > 80)) {
    faults.push_back(
        {{"--job", 0}, arguments.name.empty() ? "is empty" : "is longer than 80 letters", "give the job a short name"});
  }
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
  const bool blank = arguments.name.find_first_not_of(' ') == std::string::npos;
  if (std::any_of(arguments.name.begin(), arguments.name.end(), control)) {
    faults.push_back({{"--job", 0}, "holds control characters", "write it in plain letters"});
  } else if (!arguments.name.empty() && blank) {
    faults.push_back({{"--job", 0}, "is blank", "give the job a short name"});
  }
  std::size_t bad = 0;
  if (!valid_utf8(arguments.name, bad)) faults.push_back({{"--job", 0}, "is not UTF-8", "write it in plain letters"});
  if (!faults.empty()) return faults;

  worksheet::Spacing spacing;
  spacing.units = *unit;
  const std::string& count = arguments.stations;
  const auto end = std::from_chars(count.data(), count.data() + count.size(), spacing.stations);
  if (end.ec != std::errc() || end.ptr != count.data() + count.size()) {
    faults.push_back({{"--stations", 0}, "\"" + count + "\" is no number of stations", "give a whole number, such as 5"});
  }
  Lengths lengths(*unit, faults);
  constexpr double least_chord = 50, most = 5000;  // mm
  const auto span = lengths.read("--span", arguments.span, 100, most);
  const auto chord = lengths.read("--chord", arguments.chord, least_chord, most);
  const auto tip = app.count("--tip-chord") > 0 ? lengths.read("--tip-chord", arguments.tip_chord, least_chord, most) : chord;
  if (!faults.empty()) return faults;
  spacing.span = *span;
  spacing.chord = *chord;
  spacing.tip_chord = *tip;
  auto stations = worksheet::evenly_spaced(spacing);
  if (!stations) return stations.faults();
  job::ToMeasure out;
  out.job = arguments.name.empty() ? "Rudder blade" : arguments.name;
  out.units = *unit;
  out.bottom = *span;
  out.stations = std::move(*stations);
  return out;
}

std::optional<Fault> set_way_and_paper(const CLI::App& app, const WorksheetArguments& arguments, job::ToMeasure& job) {
  if (app.count("--measured-by") > 0) {
    const auto way = job::measured_by_named(arguments.way);
    if (!way)
      return Fault{
          {"--measured-by", 0}, "\"" + arguments.way + "\" is no way of measuring", "use half-breadths, thickness or gaps"};
    for (auto& station : job.stations) station.measured_by = *way;
  }
  using job::Paper;
  Paper& paper = job.print.paper;
  if (app.count("--paper") == 0) {
    if (paper != Paper::a4 && paper != Paper::letter) paper = Paper::both;  // nobody writes on a roll
    return std::nullopt;
  }
  const std::string word = lower_case(arguments.paper);
  if (word == "a4") paper = Paper::a4;
  else if (word == "letter") paper = Paper::letter;
  else if (word == "both") paper = Paper::both;
  else return Fault{{"--paper", 0}, "\"" + arguments.paper + "\" is no paper for this", "use A4, Letter or both"};
  return std::nullopt;
}

std::vector<emit::File> pages_of(const worksheet::Worksheet& sheet) {
  job::Job job;
  job.name = sheet.job.job;
  job.units = sheet.job.units;
  job.print = sheet.job.print;
  const Point room = pages::page_room(job.print);
  std::vector<pages::Piece> pieces;
  pieces.push_back({"cover", drawing::draw_worksheet_cover(sheet, room), {}, {}});
  for (std::size_t k = 0; k < sheet.job.stations.size(); ++k) {
    pieces.push_back({"station " + sheet.job.stations[k].name, drawing::draw_worksheet_station(sheet, k, false, room), {}, {}});
  }
  pieces.push_back({"station " + sheet.job.stations[sheet.twice].name + ", a second time",
                    drawing::draw_worksheet_station(sheet, sheet.twice, true, room),
                    {},
                    {}});
  std::vector<emit::File> out;
  add_pages(pages::frame_pages(job, std::move(pieces)), job.name + ": measuring sheets", out, emit::worksheet_results.sign);
  return out;
}

std::string folder_of(const WorksheetArguments& arguments) {
  if (!arguments.folder.empty()) return arguments.folder;
  std::string name = "worksheet";
  if (!arguments.job.empty()) name = std::filesystem::path(arguments.job).stem().string() + "-worksheet";
  else if (!arguments.name.empty()) name = file_name_of(arguments.name) + "-worksheet";
  return (std::filesystem::path("out") / name).string();
}

/// A table cannot hold all that a job file can: planned from the table alone, the blade would be another job.
void tell_what_is_not_in_it(const job::ToMeasure& job, const WorksheetArguments& arguments, std::ostream& err) {
  if (job.not_in_a_table.empty()) return;
  std::string all;
  for (const std::string& one : job.not_in_a_table) all += (all.empty() ? "" : "; ") + one;
  std::error_code unknown;
  const auto beside = std::filesystem::path(arguments.job).parent_path();
  const auto named =
      std::filesystem::proximate(arguments.table.empty() ? beside / "readings.csv" : std::filesystem::path(arguments.table),
                                 beside.empty() ? "." : beside, unknown);
  err << "note: a table cannot hold all that " << arguments.job << " says: " << all << "\n"
      << "note: keep using " << arguments.job << " with the new readings: write \"readings_file\": \"" << named.string()
      << "\" in it, in place of the readings that it has\n";
}

}  // namespace

int run_worksheet(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app("Blank measuring sheets to print and take to the yard: a cover and a page for each station.",
               "fairblade worksheet");
  WorksheetArguments arguments;
  describe(app, arguments);
  if (const auto status = parse(app, args, out, err)) return *status;
  if (app.count("--output") > 0 && arguments.folder.empty()) return refuse("-o is empty", "name a folder", err);
  const bool with_job = app.count("JOB") > 0, wants_table = app.count("--csv") > 0;
  const bool table_to_file = wants_table && !arguments.table.empty();
  if (with_job) {
    if (const auto fault = beside_job(app)) return refuse({*fault}, err);
  }
  if (arguments.table == "-") return refuse("--csv: \"-\" is no name for a file", "leave it out to have the table printed", err);
  if (table_to_file) {
    if (const auto fault = emit::judge_new_file(arguments.table)) return refuse({*fault}, err);
  }

  auto job = with_job ? job::read_to_measure(arguments.job) : laid_out(app, arguments);
  if (!job) return refuse(job.faults(), err);
  if (job->stations.empty())
    return refuse({{{arguments.job, 0}, "has no station to measure", "give at least one that is not interpolated"}}, err);
  if (const auto fault = set_way_and_paper(app, arguments, *job)) return refuse({*fault}, err);
  const auto sheet = worksheet::worksheet_of(std::move(*job));

  std::string table;
  if (wants_table) {
    if (const auto fault = report::judge_one_table(sheet)) return refuse({*fault}, err);
    table = report::worksheet_csv(sheet);
  }
  emit::NewFile file;
  if (table_to_file) {
    if (const auto fault = file.write(arguments.table, table)) return tell_not_written(*fault, err);
  }
  const bool wants_pages = !wants_table || app.count("--output") > 0;
  const std::string folder = folder_of(arguments);
  if (wants_pages) {
    const auto failed = write_results(folder, pages_of(sheet), emit::worksheet_results, err);
    if (failed) return tell_not_written(*failed, err);
  }
  file.keep();
  const bool table_printed = wants_table && !table_to_file;
  if (table_printed) out << table;
  if (!arguments.quiet && !table_printed) {
    if (wants_pages) {
      out << "Written to " << folder << ": print.html, " << sheet.job.stations.size() + 2
          << " in pages/ (a cover, a page to each station, one of them twice)\n"
          << "Print " << folder << "/print.html at actual size (100 %), and take it to the yard.\n";
    }
    if (table_to_file) {
      const bool whole = sheet.job.not_in_a_table.empty();
      out << "Table to fill in: " << arguments.table << "\nThen: fairblade check " << (whole ? arguments.table : arguments.job)
          << '\n';
    }
  }
  if (!arguments.quiet) {
    if (wants_table) tell_what_is_not_in_it(sheet.job, arguments, err);
    for (const Warning& one : sheet.advice) err << "advice: " << one.text << '\n';
  }
  return arguments.strict && !sheet.advice.empty() ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
