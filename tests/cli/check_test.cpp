// fairblade check, in process.
#include <nlohmann/json.hpp>

#include "base/text.hpp"
#include "catch.hpp"
#include "cli/foil_sheet.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;
using Json = nlohmann::json;

namespace {

// Port at the greatest half-breadth of station B; 24.0 with its digits exchanged is 42.0.
std::string sheet(const std::string& greatest) {
  return foil_sheet("", [&](const std::string& station, const std::string& x, bool port, const std::string& usual) {
    return station == "B" && x == "120" && port ? greatest : usual;
  });
}

}  // namespace

TEST_CASE("check names a slip with its line, and nothing in good readings") {
  const Folder folder;
  const std::string good = folder.write("good.csv", sheet("24.0"));
  const Result fine = run({"check", good, "--strict"});
  INFO(fine.out << fine.err);
  CHECK(fine.status == 0);
  CHECK(has(fine.out, "Nothing found: 90 readings, 3 stations."));

  const std::string bad = folder.write("bad.csv", sheet("42.0"));
  const Result slip = run({"check", bad});
  CHECK(slip.status == 0);
  CHECK(run({"check", bad, "--strict", "--quiet"}).status == 1);
  CHECK(has(slip.out, "1. B port, x 120.0 mm"));
  CHECK(has(slip.out, "bad.csv:25"));
  const Json json = Json::parse(run({"check", bad, "--json"}).out);
  REQUIRE(json["findings"].size() == 1);
  CHECK(json["findings"][0]["code"] == "slipped-digit");
  CHECK(json["findings"][0]["line"] == 25);
}

TEST_CASE("2026-11-27: a slip among gaps is told by the gap that stands on the sheet") {
  // The same section from boards 60 mm off; at B the gap of 36.0 mm to its 24.0 mm is written as 63.0.
  std::string text =
      foil_sheet("board,60\n", [](const std::string& station, const std::string& x, bool port, const std::string& y) {
        return station == "B" && x == "120" && port ? std::string("63.0") : fairblade::fixed(60 - std::stod(y), 1);
      });
  const std::string columns = "port,starboard";
  text.replace(text.find(columns), columns.size(), "port_gap,starboard_gap");
  const Folder folder;
  const std::string bad = folder.write("bad.csv", text);
  const Json found = Json::parse(run({"check", bad, "--json"}).out)["findings"];
  INFO(found.dump(1));
  REQUIRE(found.size() == 1);
  const std::string what = found[0]["what"];
  CHECK(has(what, "-3.0 mm (a gap of 63.0 mm) where the others say 2"));
  CHECK(has(what, "24.0 mm (a gap of 36.0 mm) would fit (two digits changed places)"));
}

TEST_CASE("2026-11-27: two rows of a station that were exchanged are named, and nothing else") {
  // At B what belongs to x = 60 (21.4) stands at x = 240 (18.3), and the other way round.
  const std::string text = foil_sheet("", [](const std::string& station, const std::string& x, bool, const std::string& usual) {
    return station != "B" ? usual : x == "60" ? std::string("18.3") : x == "240" ? std::string("21.4") : usual;
  });
  const Folder folder;
  const Json found = Json::parse(run({"check", folder.write("rows.csv", text), "--json"}).out)["findings"];
  INFO(found.dump(1));
  REQUIRE(found.size() == 1);
  CHECK(found[0]["code"] == "rows-exchanged");
  CHECK(found[0]["station"] == "B");
  CHECK(found[0]["line"] == 23);  // by hand: 2 rows above A, 15 rows a station
  CHECK(has(found[0]["what"], "what was read at x 60.0 mm and at x 240.0 mm have changed places"));
}

TEST_CASE("check reads the three profiles, and writes nothing") {
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    const Result result = run({"check", profile(name)});
    INFO(result.out << result.err);
    CHECK(result.status == 0);
    CHECK(result.err.empty());
  }
  CHECK(has(run({"check", profile("whimbrel")}).out, "the leading edge is flat"));  // its trouble
}

TEST_CASE("check names what plan would refuse, and refuses what is no job") {
  const Folder folder;
  std::string text = sheet("24.0");
  for (std::size_t at = 0; (at = text.find(",60,400,", at)) != std::string::npos;) text.replace(at, 8, ",60,380,");
  const std::string short_chord = folder.write("short.csv", text);
  CHECK(run({"plan", short_chord, "-o", folder.at("out")}).status == 2);
  const Result told = run({"check", short_chord, "--json"});
  REQUIRE(told.status == 0);
  CHECK(Json::parse(told.out)["findings"][0]["code"] == "chord-disagrees");
  const Result refused = run({"check", folder.write("none.csv", "station,x\n")});
  CHECK(refused.status == 2);
  CHECK(refused.out.empty());
}
