// fairblade choices JOB: the targets that could be asked for, side by side.
#include <ostream>

#include "cli/arguments.hpp"
#include "cli/cli.hpp"
#include "cli/commands.hpp"
#include "cli/slips.hpp"
#include "cli/target_options.hpp"
#include "plan/choices.hpp"
#include "report/choices.hpp"
#include "report/findings.hpp"

namespace fairblade::cli {

int run_choices(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  CLI::App app("The targets that could be asked for, side by side: litres, depths, area, balance. Writes nothing.",
               "fairblade choices");
  std::string path;
  bool json = false, quiet = false, strict = false;
  TargetOptions target;
  app.get_formatter()->column_width(36);
  app.add_option("JOB", path, "the job file (JSON), or a CSV of readings")->required()->type_name("");
  app.add_flag("--json", json, "print JSON instead of the table");
  app.add_flag("--quiet", quiet, "print nothing but refusals");
  app.add_flag("--strict", strict, "exit status 1 when no choice keeps max_removal");
  add_target_options(app, target);
  app.footer(
      "exit status: 0 done; 1 done, under --strict, but no choice keeps max_removal; 2 refused\n"
      "example: fairblade choices profiles/whimbrel/whimbrel.json --trailing-edge-thickness 4");
  if (const auto status = parse(app, args, out, err)) return *status;

  const auto overrides = overrides_of(app, target);
  const auto job = job::read_job(path, overrides);
  if (!job) return refuse(job.faults(), err);
  const auto choices = plan::weigh_choices(*job, overrides);
  const bool all_refused =
      std::all_of(choices.begin(), choices.end(), [](const plan::Choice& one) { return one.refused.has_value(); });
  if (choices.empty() || all_refused) {  // then the plan itself tells why, with the line
    const auto plan = plan::run_line(*job);
    if (!plan) return refuse(slips_told(*job, found_in(*job), plan.faults()), err);
  }
  if (json) out << report::choices_json(*job, choices);
  else if (!quiet) out << report::choices_text(*job, choices) << report::slips_text(*job, found_in(*job));
  const bool one_keeps =
      std::any_of(choices.begin(), choices.end(), [](const plan::Choice& one) { return !one.refused && !one.breaks_limit; });
  return strict && !one_keeps ? ExitStatus::done_with_warnings : ExitStatus::done;
}

}  // namespace fairblade::cli
