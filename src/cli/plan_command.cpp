// fairblade plan JOB: the whole job, from readings to a folder of drawings and numbers.
#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <ostream>

#include "base/heap.hpp"
#include "base/side_by_side.hpp"
#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "cli/earlier_target.hpp"
#include "cli/lengths.hpp"
#include "cli/pipeline.hpp"
#include "cli/results.hpp"
#include "cli/slips.hpp"
#include "cli/target_options.hpp"
#include "emit/one_file.hpp"
#include "job/asked.hpp"
#include "report/decisions.hpp"
#include "report/findings.hpp"
#include "report/five.hpp"
#include "report/report.hpp"

namespace fairblade::cli {
namespace {

struct PlanArguments {
  std::string job, folder, heights, every, gauge_spacing, job_file;
  bool json = false, quiet = false, strict = false;
  TargetOptions target;
};

void describe(CLI::App& app, PlanArguments& arguments) {
  app.get_formatter()->column_width(36);
  app.add_option("JOB", arguments.job, "the job file (JSON), or a CSV of readings")->required()->type_name("");
  app.add_option("-o,--output", arguments.folder, "where the results go; out/<name of the job file>/ unless told")
      ->type_name("DIR");
  app.add_flag("--json", arguments.json, "print plan.json instead of the table");
  app.add_flag("--quiet", arguments.quiet, "print nothing but refusals");
  app.add_flag("--strict", arguments.strict, "exit status 1 when there are warnings");
  app.add_option("--at", arguments.heights, "draw sections and templates at these heights too, e.g. 150,250")
      ->type_name("DOWN,...");
  app.add_option("--every", arguments.every, "and at every such step from the first station down")->type_name("STEP");
  app.add_option("--gauge-spacing", arguments.gauge_spacing, "between leading-edge gauges, down the blade")->type_name("STEP");
  app.add_option("--write-job", arguments.job_file, "save what was asked, options and all, as a job file with comments")
      ->type_name("FILE");
  add_target_options(app, arguments.target);
  app.footer(
      "exit status: 0 done; 1 done with warnings, under --strict; 2 refused, nothing written; 3 results not written\n"
      "example: fairblade plan profiles/whimbrel/whimbrel.json --thickness 13% --trailing-edge-thickness 4");
}

std::string folder_of(const PlanArguments& arguments) {
  if (!arguments.folder.empty()) return arguments.folder;
  return (std::filesystem::path("out") / std::filesystem::path(arguments.job).stem()).string();
}

// Heights asked for by --at and --every, mm, rising.
Outcome<std::vector<double>> heights_of(const PlanArguments& arguments, const job::Job& job) {
  std::vector<double> out;
  std::string_view rest = arguments.heights;
  while (!rest.empty()) {
    const std::size_t comma = rest.find(',');
    const std::string_view word = rest.substr(0, comma);
    rest = comma == std::string_view::npos ? std::string_view() : rest.substr(comma + 1);
    const auto height = length_of(word, job.units);
    if (!height)
      return Fault{{"--at", 0}, "\"" + std::string(word) + "\" is no height", "give numbers with commas between, e.g. 150,250"};
    out.push_back(*height);
  }
  if (!arguments.every.empty()) {
    const auto step = length_of(arguments.every, job.units);
    const double first = job.stations.front().down;
    const double span = job.stations.back().down - first;
    if (!step || *step <= 0 || span / *step > 500) {
      return Fault{
          {"--every", 0}, "\"" + arguments.every + "\" is no step", "give one number, a 500th of the blade's span at least"};
    }
    for (int k = 1; first + k * *step < job.stations.back().down; ++k) out.push_back(first + k * *step);
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end(), [](double a, double b) { return b - a < 0.05; }), out.end());
  return out;
}

// --gauge-spacing wins over the job file.
std::optional<Fault> set_gauge_spacing(const std::string& text, job::Job& job) {
  constexpr double least = 10, most = 1000;  // mm, as in the job file
  const auto spacing = length_of(text, job.units);
  if (!spacing || *spacing < least || *spacing > most) {
    return Fault{{"--gauge-spacing", 0},
                 "\"" + text + "\" is no spacing of gauges",
                 "give one length from " + in_unit(least, job.units) + " to " + in_unit(most, job.units)};
  }
  job.print.gauge_spacing = *spacing;
  std::erase_if(job.defaults, [](const DefaultUsed& one) { return one.key == "print.gauge_spacing"; });
  return std::nullopt;
}

// A job file that asks the same; heights to draw at are no part of a job.
std::string job_file_of(const job::Asked& asked, const plan::Plan& plan, const PlanArguments& arguments) {
  std::vector<std::string> remarks{version_line() + ": what was asked of " + arguments.job};
  if (!arguments.heights.empty())
    remarks.push_back("Drawn between the stations too; ask for it again with --at " + arguments.heights);
  if (!arguments.every.empty())
    remarks.push_back("Drawn between the stations too; ask for it again with --every " + arguments.every);
  return job::job_file_text(*asked.tree, plan.job, remarks);
}

// The job went into the plan that was refused: it is read again, which costs a refused run little.
std::vector<Fault> told_of(const std::string& path, const std::vector<job::Override>& overrides, const check::Findings& findings,
                           std::vector<Fault> faults) {
  const auto job = job::read_job(path, overrides);
  return job ? slips_told(*job, findings, std::move(faults)) : faults;
}

struct Planned {
  Outcome<plan::Plan> plan = Fault{};
  check::Findings findings{};
  std::optional<job::FrozenPlan> earlier{};
};

/// A plan, with its water unless it is of a scan, what a mate would say of its readings, and the plan that the folder holds, if
/// one is named: none needs another.
Planned planned(job::Job job, const std::string& folder) {
  Planned out;
  const auto look_back = [&] {
    if (!folder.empty()) out.earlier = earlier_plan(folder);
  };
  if (plan::is_scan(job)) {
    share_one_heap();
    out.plan = plan::make_plan(std::move(job));
    look_back();
    return out;
  }
  keep_heap();
  const job::Job read = job;
  side_by_side(3, [&](std::size_t part) {
    if (part == 0) out.plan = plan::make_plan(std::move(job), plan::WaterPage::worked_out);
    else if (part == 1) out.findings = found_in(read);
    else look_back();
  });
  return out;
}

// Files at the top by name, drawings by their number in each folder.
void print_files(const std::string& folder, const std::vector<emit::File>& files, std::ostream& out) {
  std::map<std::string, std::size_t> drawings;
  out << "\nWritten to " << folder;
  const char* before = ": ";
  for (const emit::File& file : files) {
    const std::size_t slash = file.path.find('/');
    if (slash != std::string::npos) {
      ++drawings[file.path.substr(0, slash + 1)];
      continue;
    }
    out << before << file.path;
    before = ", ";
  }
  for (const auto& [part, count] : drawings) out << ", " << count << " in " << part;
  out << '\n';
}

/// As it is typed: a name with a space in it is one word only between quotes.
std::string for_shell(const std::string& name) { return name.find(' ') == std::string::npos ? name : '"' + name + '"'; }

}  // namespace

int run_plan(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app("The whole job: measures against a target, and writes drawings, offsets and litres of filler.", "fairblade plan");
  PlanArguments arguments;
  describe(app, arguments);
  if (const auto status = parse(app, args, out, err)) return *status;
  if (app.count("--output") > 0 && arguments.folder.empty()) {
    return refuse("-o is empty", "name a folder", err);
  }

  const bool saves = app.count("--write-job") > 0;
  if (saves) {
    if (const auto fault = emit::judge_new_file(arguments.job_file)) return refuse({*fault}, err);
  }

  auto asked = job::read_asked(arguments.job, overrides_of(app, arguments.target), saves);
  if (!asked) return refuse(asked.faults(), err);
  if (app.count("--gauge-spacing") > 0) {
    if (const auto fault = set_gauge_spacing(arguments.gauge_spacing, asked->job)) return refuse({*fault}, err);
    job::ask_too(*asked, "print.gauge_spacing", arguments.gauge_spacing);
  }
  const std::string folder = folder_of(arguments);
  auto [plan, findings, earlier] = planned(std::move(asked->job), arguments.quiet ? std::string() : folder);
  if (!plan) return refuse(told_of(arguments.job, overrides_of(app, arguments.target), findings, plan.faults()), err);
  const auto decisions = report::decisions(*plan, findings);
  plan->blade_warnings.insert(plan->blade_warnings.begin(), decisions.begin(), decisions.end());  // they are the owner's first
  if (plan::is_scan(plan->job)) {
    if (!saves) {  // of a scan they take much room, and what follows asks the sections alone
      for (job::Station& station : plan->job.stations) std::vector<job::Reading>().swap(station.readings);
    }
    plan::add_water(*plan);
  }
  const auto heights = heights_of(arguments, plan->job);
  if (!heights) return refuse(heights.faults(), err);
  const auto between = plan::sections_at(*plan, *heights);
  if (!between) {
    auto faults = between.faults();
    for (Fault& fault : faults) fault.place = {"--at", 0};  // the steps of --every stay within
    return refuse(faults, err);
  }

  const auto files = draw_plan(*plan, *between, findings);
  const std::string other = earlier ? other_than_planned(*earlier, *plan) : std::string();
  emit::NewFile job_file;
  auto failed = saves ? job_file.write(arguments.job_file, job_file_of(*asked, *plan, arguments)) : std::nullopt;
  if (!failed) failed = write_results(folder, files, emit::plan_results, err);
  if (failed) return tell_not_written(*failed, err);
  job_file.keep();
  if (!other.empty()) {
    err << "note: " << folder << " held a plan with " << other
        << ": templates already cut by that no longer fit, and recheck goes "
        << "by this one; to keep both, plan into another folder with -o\n";
  }
  if (arguments.json) {
    out << whole(files, "plan.json");
  } else if (!arguments.quiet) {
    out << report::summary(*plan);
    print_files(folder, files, out);
    if (saves) out << "What was asked, to change and plan again: " << arguments.job_file << '\n';
    out << report::slips_text(plan->job, findings) << report::five_lines(*plan) << "\nTo read and to work from: " << folder
        << "/report.html\n"
        << "After each round of filling, what is still high or low: fairblade recheck " << for_shell(folder) << " READINGS.csv\n";
  }
  const auto warnings = report::gather_warnings(*plan);
  const bool warned =
      !std::all_of(warnings.begin(), warnings.end(), report::by_default_alone) || !check::almost_certain_slips(findings).empty();
  return arguments.strict && warned ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
