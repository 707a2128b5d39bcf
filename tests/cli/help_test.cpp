// What helps while typing: examples that run, the nearest name for a mistyped one, completion in bash, the man page.
// Expected: --help, which CLI11 makes of the options that there are.
#include <algorithm>
#include <cstdio>
#include <regex>
#include <set>

#include "catch.hpp"
#include "cli/sandbox.hpp"
#include "job/job.hpp"

using namespace sandbox;

namespace {

/// What a shell command prints, and how it ended.
Result shell(const std::string& command) {
  Result result;
  FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe);
  char buffer[4096];
  for (std::size_t got; (got = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) result.out.append(buffer, got);
  result.status = ::pclose(pipe);
  return result;
}

/// The first words of the lines below "commands:".
std::vector<std::string> commands() {
  const std::string help = run({"--help"}).out;
  std::vector<std::string> out;
  const std::regex line("\n  ([a-z]+)  ");
  for (std::sregex_iterator at(help.begin(), help.end(), line), end; at != end; ++at) out.push_back((*at)[1]);
  REQUIRE(out.size() >= 4);
  return out;
}

/// "-o" and "--output" of the lines that list options.
std::set<std::string> options_of(const std::string& command) {
  const std::string help = run({command, "--help"}).out;
  std::set<std::string> out;
  const std::regex line("\n  (-[a-z],)?(--[a-z-]+)");
  for (std::sregex_iterator at(help.begin(), help.end(), line), end; at != end; ++at) {
    out.insert((*at)[2]);
    if ((*at)[1].matched) out.insert((*at)[1].str().substr(0, 2));
  }
  REQUIRE(out.size() >= 4);
  return out;
}

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), {}};
}

/// What bash offers for the last of the words.
std::set<std::string> completed(const std::vector<std::string>& words, const std::string& folder = "/") {
  std::string list;
  for (const std::string& word : words) list += " '" + word + "'";
  const Result result =
      shell("cd '" + folder +
            "' && bash --norc -c 'source \"" SOURCE_DIR
            "/cli/completion/fairblade.bash\"; "
            "COMP_WORDS=(\"$@\"); COMP_CWORD=$(($# - 1)); _fairblade; printf \"%s\\n\" \"${COMPREPLY[@]}\"' bash" +
            list);
  INFO(result.out);
  REQUIRE(result.status == 0);
  std::set<std::string> out;
  std::istringstream lines(result.out);
  for (std::string line; std::getline(lines, line);) out.insert(line);
  out.erase("");
  return out;
}

/// The man page as it is installed, and without roff's backslashes.
const std::string page_file = MAN_PAGE;
std::string plain_page() {
  std::string page = bytes_of(page_file);
  page.erase(std::remove(page.begin(), page.end(), '\\'), page.end());
  return page;
}

}  // namespace

TEST_CASE("every help ends in an example, and it runs") {
  std::vector<std::vector<std::string>> helps{{"--help"}};
  for (const std::string& command : commands()) helps.push_back({command, "--help"});
  const Folder folder;
  fs::create_directory_symlink(PROFILES_DIR, folder.at("profiles"));
  const fs::path here = fs::current_path();
  for (const auto& words : helps) {
    const std::string help = run(words).out, start = "\nexample: fairblade ";
    const std::size_t at = help.rfind(start);
    INFO(help);
    REQUIRE(at != std::string::npos);
    const std::string rest = help.substr(at + start.size());
    CHECK(rest.find_first_of("\n") >= rest.find_last_not_of("\n"));  // nothing stands below it
    const auto example = words_of(rest);
    if (words.size() > 1) CHECK(example.front() == words.front());
    if (example.front() == "plan") fs::remove_all(folder.at("out"));  // a plan over one with another target is told
    fs::current_path(folder.at(""));
    const Result result = run(example);
    fs::current_path(here);
    INFO(result.err);
    CHECK(result.status == 0);
    CHECK_FALSE(result.out.empty());
    CHECK(result.err.empty());
  }
}

TEST_CASE("each command and each option is guessed when a letter is left out") {
  for (const std::string& command : commands()) {
    std::string slip = command;
    slip.erase(slip.size() / 2, 1);
    CHECK(run({slip}).err == "fairblade: there is no command \"" + slip + "\": did you mean " + command + "?\n");
    for (const std::string& option : options_of(command)) {
      if (option.size() < 6) continue;  // --at, -o: what is left of them is too little
      slip = option;
      slip.erase(1 + slip.size() / 2, 1);
      const Result result = run({command, "x", slip});
      CHECK(result.status == 2);
      CHECK(has(result.err, "there is no option " + slip + ": did you mean " + option + "?\n"));
    }
  }
}

TEST_CASE("bash completes exactly what help lists") {
  const auto names = commands();
  std::set<std::string> first(names.begin(), names.end());
  first.insert({"--help", "--version"});
  CHECK(completed({"fairblade", ""}) == first);
  CHECK(completed({"fairblade", "pl"}) == std::set<std::string>{"plan"});
  for (const std::string& command : names) {
    INFO(command);
    CHECK(completed({"fairblade", command, "-"}) == options_of(command));
  }
}

TEST_CASE("bash completes the words that an option takes, and the reader takes them") {
  using Words = std::set<std::string>;
  const std::map<std::string, Words> words{{"--approach", {"full-section", "edges-only"}},
                                           {"--thickness", {"least-fill", "closest"}},
                                           {"--max-thickness-at", {"form", "closest"}},
                                           {"--leading-edge-radius", {"form"}},
                                           {"--trailing-edge-thickness", {"form"}},
                                           {"--leading-edge", {"shape", "leave"}},
                                           {"--spanwise", {"fair", "straight", "as-measured"}}};
  for (const auto& [option, expected] : words) {
    INFO(option);
    CHECK(completed({"fairblade", "plan", "x.json", option, ""}) == expected);
    CHECK(completed({"fairblade", "choices", option, "=", ""}) == expected);
    for (const std::string& word : expected) {
      CHECK(completed({"fairblade", "plan", option, "=", word.substr(0, 2)}).count(word) == 1);
      CHECK(fairblade::job::read_job(profile("turnstone"), {{option.substr(2), word}}));
    }
  }
  CHECK(completed({"fairblade", "offsets", "0012", "--units", ""}) == Words{"mm", "cm", "in"});
  CHECK(completed({"fairblade", "worksheet", "--measured-by", ""}) == Words{"half-breadths", "thickness", "gaps"});
  CHECK(completed({"fairblade", "worksheet", "--paper", ""}) == Words{"A4", "Letter", "both"});
  CHECK(completed({"fairblade", "offsets", "0012", "--units", "="}) == Words{"mm", "cm", "in"});
  CHECK(completed({"fairblade", "offsets", "0012", "--trailing-edge-thickness", ""}).empty());
  CHECK(completed({"fairblade", "plan", "--max-removal", ""}).empty());
}

TEST_CASE("an option that takes a value is never completed with a file for it") {
  for (const std::string& command : commands()) {
    const std::string help = run({command, "--help"}).out;
    const Folder folder;
    folder.write("knot.json", "{}");
    const std::regex line("\n  (-[a-z],)?(--[a-z-]+)( [A-Z])?");
    for (std::sregex_iterator at(help.begin(), help.end(), line), end; at != end; ++at) {
      const std::string option = (*at)[2];
      const bool file = option == "--svg" || option == "--write-job" || (option == "--csv" && command == "worksheet");
      const bool offered = completed({"fairblade", command, option, ""}, folder.at("")).count("knot.json") == 1;
      INFO(command + " " + option);
      CHECK(offered == (file || (!(*at)[3].matched && command != "offsets")));
    }
  }
}

TEST_CASE("bash completes names of jobs, and folders to find them in") {
  const Folder folder;
  for (const char* name : {"knot.json", "my readings.csv", "letter.txt", "SHEET.CSV"}) folder.write(name, "");
  fs::create_directory(folder.at("sub"));
  const std::string here = folder.at("");
  CHECK(completed({"fairblade", "plan", ""}, here) == std::set<std::string>{"knot.json", "my readings.csv", "SHEET.CSV", "sub"});
  CHECK(completed({"fairblade", "check", "--json", "kn"}, here) == std::set<std::string>{"knot.json"});
  CHECK(completed({"fairblade", "plan", "knot.json", "-o", ""}, here) == std::set<std::string>{"sub"});
  CHECK(completed({"fairblade", "offsets", "0012", "--svg", "l"}, here) == std::set<std::string>{"letter.txt"});
  CHECK(completed({"fairblade", "offsets", ""}, here).empty());
}

TEST_CASE("the man page names every command and option") {
  const std::string page = plain_page();
  CHECK(has(page, std::string("fairblade ") + FAIRBLADE_VERSION));
  for (const std::string& command : commands()) {
    INFO(command);
    // The part on the command: from its heading to the next.
    const std::size_t from = page.find("\n.SS fairblade " + command);
    REQUIRE(from != std::string::npos);
    const std::string part = page.substr(from, page.find("\n.S", from + 1) - from);
    const bool target = has(part, "the target");
    const std::size_t at = page.find("\n.SS The target");
    const std::string all = part + page.substr(page.find("\n.SS Options of every command"), 1000) +
                            (target ? page.substr(at, page.find("\n.SH", at) - at) : "");
    for (const std::string& option : options_of(command)) {
      INFO(option);
      CHECK(std::regex_search(all, std::regex(option + "([^a-z-]|$)")));
    }
  }
  for (const char* heading : {"NAME", "SYNOPSIS", "DESCRIPTION", "FILES", "EXIT STATUS", "EXAMPLES", "CAUTIONS"}) {
    INFO(heading);
    CHECK(has(page, std::string("\n.SH ") + heading + "\n"));
  }
}

TEST_CASE("the man page names no option that there is not") {
  std::set<std::string> known;
  for (const std::string& command : commands()) known.merge(options_of(command));
  const std::string page = plain_page();
  const std::regex option("(^|[^a-z-])(--[a-z-]+)");
  for (std::sregex_iterator at(page.begin(), page.end(), option), end; at != end; ++at) {
    INFO((*at)[2]);
    CHECK(known.count((*at)[2]) == 1);
  }
}

TEST_CASE("the man page's examples run") {
  const std::string page = plain_page().substr(plain_page().find(".SH EXAMPLES"));
  const Folder folder;
  fs::create_directory_symlink(PROFILES_DIR, folder.at("profiles"));
  folder.write("readings.csv",
               "station,down,ahead,chord,x,port,starboard\nA,0,50,400,0,0,0\nA,,,,40,19,19\nA,,,,120,24,24\n"
               "A,,,,280,14,14\nA,,,,400,0.5,0.5\nB,500,50,390,0,0,0\nB,,,,40,18.5,18.5\nB,,,,120,23.5,23.5\n"
               "B,,,,270,13.5,13.5\nB,,,,390,0.5,0.5\n");
  const fs::path here = fs::current_path();
  const std::regex line("\nfairblade ([^\n]+)");
  int seen = 0;
  for (std::sregex_iterator at(page.begin(), page.end(), line), end; at != end; ++at, ++seen) {
    fs::current_path(folder.at(""));
    const Result result = run(words_of((*at)[1]));
    fs::current_path(here);
    INFO((*at)[1]);
    INFO(result.err);
    CHECK(result.status == 0);
  }
  CHECK(seen >= 5);
}

TEST_CASE("the man page is clean roff") {
  // Every macro of man(7) that it uses; no line that roff would take for another request; no tabs, nothing but ASCII.
  static const std::set<std::string> macros{"TH", "SH", "SS", "TP", "TQ", "PP", "B",  "BR", "I",  "IR",
                                            "RI", "BI", "IP", "EX", "EE", "nf", "fi", "RS", "RE", "\\\""};
  std::istringstream lines(bytes_of(page_file));
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK(std::all_of(line.begin(), line.end(), [](char c) { return c >= 0x20 && c < 0x7f; }));
    CHECK((line.empty() || line.back() != ' '));
    CHECK_FALSE(line.empty());
    if (!line.empty() && line.front() == '.') CHECK(macros.count(line.substr(1, line.find(' ') - 1)) == 1);
    CHECK((line.empty() || line.front() != '\''));
  }
  bool tried = false;
  if (shell("command -v groff").status == 0) {
    tried = true;
    CHECK(shell("groff -ww -man -Tutf8 -z '" + page_file + "'").out.empty());
    CHECK(has(shell("groff -man -Tascii '" + page_file + "'").out, "hanging"));
  }
  if (shell("command -v mandoc").status == 0) {
    tried = true;
    CHECK(shell("mandoc -T lint -W warning '" + page_file + "'").out.empty());
  }
  if (!tried) WARN("neither groff nor mandoc is here: the man page was tried by its lines only");
}
