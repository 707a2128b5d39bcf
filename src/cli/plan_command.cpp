// fairblade plan JOB: the whole job, from readings to a folder of drawings and numbers.
#include <filesystem>
#include <map>
#include <ostream>

#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "cli/pipeline.hpp"
#include "cli/target_options.hpp"
#include "report/report.hpp"

namespace fairblade::cli {
namespace {

struct PlanArguments {
  std::string job, folder;
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
  add_target_options(app, arguments.target);
  app.footer("example: fairblade plan profiles/whimbrel/whimbrel.json --thickness 13% --trailing-edge-thickness 4\n"
             "exit status: 0 done; 1 done with warnings, under --strict; 2 refused, nothing written; 3 results not written");
}

std::string folder_of(const PlanArguments& arguments) {
  if (!arguments.folder.empty()) return arguments.folder;
  return (std::filesystem::path("out") / std::filesystem::path(arguments.job).stem()).string();
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

}  // namespace

int run_plan(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app("The whole job: measures against a target, and writes drawings, offsets and litres of filler.",
               "fairblade plan");
  PlanArguments arguments;
  describe(app, arguments);
  if (const auto status = parse(app, args, out, err)) return *status;
  if (app.count("--output") > 0 && arguments.folder.empty()) {
    return refuse("-o is empty", "name a folder", err);
  }

  const auto job = job::read_job(arguments.job, overrides_of(app, arguments.target));
  if (!job) return refuse(job.faults(), err);
  const auto plan = make_plan(*job);
  if (!plan) return refuse(plan.faults(), err);

  const std::string folder = folder_of(arguments);
  const auto files = draw_plan(*plan);
  if (const auto fault = emit::write_folder(folder, files)) {
    err << one_line(*fault) << '\n';
    return ExitStatus::not_written;
  }
  if (arguments.json) {
    out << report::plan_json(*plan);
  } else if (!arguments.quiet) {
    out << report::summary(*plan);
    print_files(folder, files, out);
  }
  const bool warned = !report::gather_warnings(*plan).empty();
  return arguments.strict && warned ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
