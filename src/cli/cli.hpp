// The command line: words in, a result on the sinks and an exit status out. Verbs: run.
#pragma once
#include <iosfwd>
#include <string>
#include <vector>

namespace fairblade::cli {

enum ExitStatus : int {
  done = 0,
  done_with_warnings = 1,  ///< only under --strict
  refused = 2,             ///< the job or the arguments
  not_written = 3
};

/// `args`: the words after the program's name. What is asked for goes to `out`, refusals to `err`, one line each.
int run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);

}  // namespace fairblade::cli
