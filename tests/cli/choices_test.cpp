// fairblade choices, and sections at heights between stations, in process.
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;
using Json = nlohmann::json;

TEST_CASE("choices of every profile, as a table and as JSON; nothing written") {
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    INFO(name);
    const Result table = run({"choices", profile(name)});
    REQUIRE(table.status == 0);
    CHECK(table.err.empty());
    CHECK(table.out.find("least fill") != std::string::npos);
    const Result json = run({"choices", profile(name), "--json"});
    REQUIRE(json.status == 0);
    const Json rows = Json::parse(json.out)["choices"];
    REQUIRE(rows.size() == 7);
    double before = 0;
    for (const Json& row : rows) {
      if (row.contains("refused")) {
        CHECK_FALSE(row["refused"].get<std::string>().empty());
        continue;
      }
      CHECK(row["add"].get<double>() >= before);
      before = row["add"].get<double>();
      CHECK(row["in_words"].get<std::string>().back() == '.');
      CHECK(row["blade"]["after"]["area"].get<double>() > 0);
    }
  }
}

TEST_CASE("a row can be asked for as it says, and gives the same litres") {
  const Folder folder;
  const Json rows = Json::parse(run({"choices", profile("whimbrel"), "--json"}).out)["choices"];
  for (const Json& row : rows) {
    if (row.contains("refused")) continue;
    std::vector<std::string> words{"plan", profile("whimbrel"), "-o", folder.at("out"), "--json"};
    for (const auto& [key, value] : row["asks"].items()) {
      std::string option = "--" + key;
      for (char& c : option) c = c == '_' ? '-' : c;
      words.push_back(option);
      words.push_back(value.get<std::string>());
    }
    INFO(row["name"]);
    const Result planned = run(words);
    INFO(planned.err);
    REQUIRE(planned.status == 0);
    CHECK(Json::parse(planned.out)["volumes"]["add"].get<double>() == Approx(row["add"].get<double>()).epsilon(1e-9));
  }
}

namespace {

/// The words of a command line as a shell parts them.
std::vector<std::string> words_of_line(const std::string& line) {
  std::vector<std::string> out;
  char quote = 0;
  bool open = false;
  for (const char c : line) {
    if (quote != 0 ? c == quote : c == '"' || c == '\'') {
      quote = quote != 0 ? 0 : c;
      if (!open) out.emplace_back();
      open = true;
    } else if (quote == 0 && c == ' ') {
      open = false;
    } else {
      if (!open) out.emplace_back();
      open = true;
      out.back() += c;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("2026-11-27: what a row says to ask for, pasted behind plan and the job, gives the row's litres") {
  const Folder folder;
  const std::string dunlin = profile("dunlin"), whimbrel = profile("whimbrel");
  for (const std::vector<std::string>& given :
       std::vector<std::vector<std::string>>{{whimbrel, "--keep", "0.25,0.7"},
                                             {whimbrel, "--extend-leading-edge", "up_to 6", "--max-removal", "0.5"},
                                             {dunlin, "--keep", "0.25,0.7", "--trailing-edge-thickness", "3/16\""}}) {
    std::vector<std::string> asked{"choices"};
    asked.insert(asked.end(), given.begin(), given.end());
    const std::string text = run(asked).out;
    asked.emplace_back("--json");
    const Json rows = Json::parse(run(asked).out)["choices"];
    std::size_t at = 0;
    int had = 0;
    for (const Json& row : rows) {
      if (row.contains("refused")) continue;
      ++had;
      const std::string ask = "ask for it: ";
      at = text.find(ask, at);
      REQUIRE(at != std::string::npos);
      at += ask.size();
      std::vector<std::string> words{"plan", given[0], "-o", folder.at("out"), "--json"};
      for (const std::string& word : words_of_line(text.substr(at, text.find('\n', at) - at))) words.push_back(word);
      INFO(given[0] << ", " << row["name"]);
      const Result planned = run(words);
      INFO(planned.err);
      REQUIRE(planned.status == 0);
      CHECK(Json::parse(planned.out)["volumes"]["add"].get<double>() == Approx(row["add"].get<double>()).epsilon(1e-9));
    }
    CHECK(had >= 5);
  }
  // dunlin's is an inch job: under the mm stands what a rule in inches reads.
  CHECK(has(run({"choices", dunlin}).out, " in, x "));
  CHECK_FALSE(has(run({"choices", whimbrel}).out, " in, x "));
}

TEST_CASE("2026-11-27: a leading edge that is left has its tail built out, not a row that cannot be had") {
  const Json rows = Json::parse(
      run({"choices", profile("whimbrel"), "--leading-edge", "leave", "--extend-leading-edge", "0", "--json"}).out)["choices"];
  std::size_t tails = 0;
  for (const Json& row : rows) {
    const std::string name = row["name"].get<std::string>();
    CHECK(name != "least fill, edges built out");
    tails += name == "least fill, tail built out" && !row.contains("refused") ? 1 : 0;
  }
  CHECK(tails == 1);
}

TEST_CASE("--strict tells when no choice keeps the limit") {
  CHECK(run({"choices", profile("whimbrel"), "--strict", "--quiet"}).status == 0);
  const Result none = run({"choices", profile("turnstone"), "--strict", "--quiet", "--max-removal", "0.1"});
  CHECK(none.status == 1);
  CHECK(none.out.empty());
}

TEST_CASE("sections and templates at heights between stations") {
  const Folder folder;
  const Result result = run({"plan", profile("whimbrel"), "-o", folder.at("out"), "--at", "150,333", "--every", "400"});
  INFO(result.err);
  REQUIRE(result.status == 0);
  const auto files = files_in(folder.at("out"));
  for (const char* name : {"at-150", "at-333", "at-400", "at-800"}) {
    CHECK(files.count(std::string("sections/") + name + ".svg") == 1);
    CHECK(files.count(std::string("templates/") + name + "-starboard-final.svg") == 1);
  }
  for (const std::vector<std::string>& bad : std::vector<std::vector<std::string>>{
           {"--at", "15o"}, {"--at", "99999"}, {"--every", "0"}, {"--every", "0.001"}, {"--at", "nan"}}) {
    std::vector<std::string> words{"plan", profile("whimbrel"), "-o", folder.at("bad")};
    words.insert(words.end(), bad.begin(), bad.end());
    const Result refused = run(words);
    CHECK(refused.status == 2);
    CHECK(refused.err.find('\n') == refused.err.size() - 1);  // one line
    CHECK_FALSE(std::filesystem::exists(folder.at("bad")));
  }
}
