#include "cli/cli.hpp"

#include <algorithm>
#include <ostream>
#include <string>
#include <string_view>

#include "base/text.hpp"
#include "cli/arguments.hpp"
#include "cli/commands.hpp"

namespace fairblade::cli {
namespace {

void print_help(std::ostream& out) {
  out << "fairblade: from measured stations of a rudder blade to cutting templates and litres of filler\n\n"
         "usage: fairblade COMMAND ...\n\ncommands:\n";
  std::size_t longest = 0;
  for (const Command& command : commands) longest = std::max(longest, command.name.size());
  for (const Command& command : commands) {
    out << "  " << command.name << std::string(longest - command.name.size() + 3, ' ') << command.does << '\n';
  }
  out << "\nfairblade COMMAND --help tells more. fairblade --version prints the version.\n"
         "example: fairblade plan profiles/whimbrel/whimbrel.json -o out/whimbrel\n";
}

int dispatch(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  if (args.empty()) {
    print_help(err);
    return ExitStatus::refused;
  }
  const std::string& word = args.front();
  if (word == "--help" || word == "-h" || word == "help") {
    print_help(out);
    return ExitStatus::done;
  }
  if (word == "--version") {
    out << version_line() << '\n';
    return ExitStatus::done;
  }
  std::vector<std::string_view> known;
  for (const Command& command : commands) {
    if (command.name == word) return command.run({args.begin() + 1, args.end()}, out, err);
    known.push_back(command.name);
  }
  const std::string near = nearest_name(word, known);
  return refuse("there is no command \"" + word + "\"", near.empty() ? "see fairblade --help" : "did you mean " + near + "?",
                err);
}

}  // namespace

int run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  const int status = dispatch(args, out, err);
  if (out.flush()) return status;
  err << "fairblade: standard output could not be written: see whether it was closed, or its disk is full\n";
  return ExitStatus::not_written;
}

}  // namespace fairblade::cli
