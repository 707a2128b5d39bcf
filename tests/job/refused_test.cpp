// The bad jobs of tests/refused, each with the one-line messages that it must give: expected.tsv, file TAB message.
// The messages were written for the owner to act on, and read over one by one; a new one is added by hand.
#include <algorithm>
#include <map>
#include <set>

#include "catch.hpp"
#include "scratch.hpp"

namespace {

const std::string folder = std::string(TESTS_DIR) + "/refused";

std::map<std::string, std::string> expected_messages() {
  std::map<std::string, std::string> out;
  std::ifstream in(folder + "/expected.tsv");
  for (std::string line; std::getline(in, line);) {
    const std::size_t tab = line.find('\t');
    if (line.empty() || line[0] == '#' || tab == std::string::npos) continue;
    std::string& messages = out[line.substr(0, tab)];
    messages += (messages.empty() ? "" : "\n") + line.substr(tab + 1);
  }
  return out;
}

}  // namespace

TEST_CASE("every bad job is refused with its message") {
  const auto expected = expected_messages();
  REQUIRE(expected.size() >= 90);
  for (const auto& [file, messages] : expected) {
    INFO(folder + "/" + file);
    CHECK(faults_of(fairblade::job::read_job(folder + "/" + file), folder) == messages);
  }
}

TEST_CASE("no file lies in tests/refused without its message") {
  const auto expected = expected_messages();
  std::set<std::string> known;
  for (const auto& [file, messages] : expected) {
    known.insert(file);
    known.insert(messages.substr(0, messages.find(':')));  // a CSV that a job names
  }
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    if (name == "expected.tsv" || name.starts_with("readings-")) continue;
    INFO(name);
    CHECK(known.count(name) == 1);
  }
}

TEST_CASE("a bad job that is cut or spoilt anywhere never does worse than a fault") {
  const Scratch scratch;
  std::ifstream in(folder + "/two-faults.json");
  const std::string text((std::istreambuf_iterator<char>(in)), {});
  REQUIRE(text.size() > 400);
  for (std::size_t at = 0; at < text.size(); at += 3) {
    const auto cut = scratch.read("j.json", std::string_view(text).substr(0, at));
    CHECK_FALSE(cut);
    std::string spoilt = text;
    spoilt[at] = "0,]}\"x"[at % 6];
    const auto outcome = scratch.read("j.json", spoilt);
    for (const auto& fault : outcome.faults()) CHECK((!fault.what.empty() && !fault.remedy.empty()));
  }
}
