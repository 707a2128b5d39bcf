// fairblade check JOB: what is wrong with the readings; nothing is planned or written.
#include <ostream>

#include "check/findings.hpp"
#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "job/as_written.hpp"
#include "report/findings.hpp"

namespace fairblade::cli {

int run_check(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app(
      "Reads the measuring sheet like a mate who measured a hundred rudders: slips, swapped sides, units, twist, hollows.",
      "fairblade check");
  std::string path;
  bool json = false, quiet = false, strict = false;
  app.get_formatter()->column_width(36);
  app.add_option("JOB", path, "the job file (JSON), or a CSV of readings")->required()->type_name("");
  app.add_flag("--json", json, "print JSON instead of the list");
  app.add_flag("--quiet", quiet, "print nothing but refusals");
  app.add_flag("--strict", strict, "exit status 1 when anything was found");
  app.footer(
      "exit status: 0 done; 1 something was found, under --strict; 2 the job is refused\n"
      "example: fairblade check profiles/whimbrel/whimbrel.json");
  if (const auto status = parse(app, args, out, err)) return *status;

  const auto job = job::read_job_as_written(path);
  if (!job) return refuse(job.faults(), err);
  const auto findings = check::find(*job);
  if (json) out << report::findings_json(*job, findings);
  else if (!quiet) out << report::findings_text(*job, findings);
  return strict && !findings.list.empty() ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
