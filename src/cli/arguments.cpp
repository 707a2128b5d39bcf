#include "cli/arguments.hpp"

#include <algorithm>
#include <ostream>
#include <utility>

#include "base/text.hpp"
#include "cli/cli.hpp"

namespace fairblade::cli {
namespace {

constexpr std::size_t most_faults = 20;

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> out;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames()) out.push_back("--" + name);
    for (const std::string& name : option->get_snames()) out.push_back("-" + name);
  }
  return out;
}

Fault fault_of_words(std::string what, std::string remedy) {
  Fault out;
  out.place.file = "fairblade";
  out.what = std::move(what);
  out.remedy = std::move(remedy);
  return out;
}

// What is left over after parsing: mistyped options, or words too many.
std::vector<Fault> faults_of(const CLI::App& app, const std::vector<std::string>& left) {
  const std::vector<std::string> names = option_names(app);
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string help = "see " + app.get_name() + " --help";
  std::vector<Fault> options, words;
  bool options_over = false;
  for (const std::string& word : left) {
    if (word == "--" && !std::exchange(options_over, true)) continue;  // the usual end of the options
    if (options_over || word.size() < 2 || word.front() != '-') {
      words.push_back(fault_of_words("\"" + word + "\" is one word too many", help));
      continue;
    }
    const std::string name = word.substr(0, word.find('='));
    const std::string near = nearest_name(name, known);
    options.push_back(fault_of_words("there is no option " + name, near.empty() ? help : "did you mean " + near + "?"));
  }
  return options.empty() ? words : options;  // an unknown option leaves its value behind as a word
}

// Values that were given and are nothing; a command has its own words for some.
std::vector<Fault> empty_values(const CLI::App& app) {
  static const std::vector<std::string> own_words{"output", "svg", "job"};
  std::vector<Fault> out;
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_lnames().empty() || option->get_expected_min() == 0) continue;  // no flags
    const std::string& name = option->get_lnames().front();
    const auto& given = option->results();
    if (std::find(given.begin(), given.end(), std::string()) == given.end()) continue;
    if (std::find(own_words.begin(), own_words.end(), name) != own_words.end()) continue;
    out.push_back({{"--" + name, 0}, "is empty", "give it a value, or leave it out"});
  }
  return out;
}

}  // namespace

std::string version_line() { return std::string("fairblade ") + FAIRBLADE_VERSION; }

int refuse(const std::vector<Fault>& faults, std::ostream& err) {
  const std::size_t shown = std::min(faults.size(), most_faults);
  for (std::size_t k = 0; k < shown; ++k) err << one_line(faults[k]) << '\n';
  return ExitStatus::refused;
}

int refuse(std::string what, std::string remedy, std::ostream& err) {
  return refuse(std::vector<Fault>(1, fault_of_words(std::move(what), std::move(remedy))), err);
}

std::optional<int> parse(CLI::App& app, const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  app.set_help_flag("-h,--help", "print this help and stop");
  app.set_version_flag("--version", version_line(), "print the version and stop");
  app.allow_extras();
  const auto left_over = [&] { return faults_of(app, app.remaining()); };
  try {
    app.parse(std::vector<std::string>(args.rbegin(), args.rend()));  // the library takes words from the back
  } catch (const CLI::CallForVersion&) {
    out << version_line() << '\n';
    return ExitStatus::done;
  } catch (const CLI::CallForHelp&) {
    out << app.help();
    return ExitStatus::done;
  } catch (const CLI::ParseError& error) {
    if (const auto faults = left_over(); !faults.empty()) return refuse(faults, err);
    return refuse(error.what(), "see " + app.get_name() + " --help", err);
  }
  if (const auto faults = left_over(); !faults.empty()) return refuse(faults, err);
  if (const auto faults = empty_values(app); !faults.empty()) return refuse(faults, err);
  return std::nullopt;
}

}  // namespace fairblade::cli
