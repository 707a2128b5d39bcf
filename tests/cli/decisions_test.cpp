// What an owner did not ask for and should decide on (2026-11-26: an edge of 2 mm became one of 0.8 without a word), and what
// is written of readings past a new edge.
#include <algorithm>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>

#include "catch.hpp"
#include "cli/foil_sheet.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;
using Json = nlohmann::json;

namespace {

// 0012 on 400 mm (NACA Report 460, rounded to 0.1 mm), its edge as thick as told: the form's own is 0.021 * 0.12 * 400 = 1.0.
std::string sheet(const std::string& keys, const std::string& half_edge, const std::string& half_nose = "0") {
  return foil_sheet(keys, [&](const std::string&, const std::string& x, bool, const std::string& usual) {
    return x == "0" ? half_nose : x == "400" ? half_edge : usual;
  });
}

/// The same behind a fixed skeg so long.
std::string with_skeg(const std::string& text, const std::string& skeg) {
  std::string out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    const bool first_row = line.size() > 2 && line[1] == ',' && line[2] != ',' && line.find("station") == std::string::npos;
    const bool table = line.rfind("units", 0) != 0;
    out += line + (!table ? "" : line.rfind("station", 0) == 0 ? ",skeg" : first_row ? "," + skeg : ",") + "\n";
  }
  return out;
}

bool has_code(const Json& plan, const std::string& code) {
  for (const Json& one : plan["warnings"]) {
    if (one["code"] == code) return true;
  }
  return false;
}

std::string unwrapped(std::string text) {
  for (std::size_t at = 0; (at = text.find("\n    ", at)) != std::string::npos;) text.replace(at, 5, " ");
  return text;
}

}  // namespace

TEST_CASE("an edge that becomes thin by default is a decision; one that was asked for is none") {
  const Folder folder;
  const std::string job = folder.write("thin.csv", sheet("", "1.6"));  // 3.2 mm
  const Result result = run({"plan", job, "-o", folder.at("out")});
  INFO(result.out << result.err);
  const std::string out = unwrapped(result.out);
  CHECK(has(out, "stations A, B and C: the trailing edge is 3.2 mm thick now and becomes 1.0 mm"));
  CHECK(has(out, "(--trailing-edge-thickness 3.2) or for 3.0 mm (--trailing-edge-thickness 3.0;"));
  CHECK(has(out, "so thin an edge chips, and paste that thin does not hold"));
  const std::string report = bytes_of(folder.at("out") + "/report.html");
  CHECK_FALSE(has(report, "Nothing in this job needs a decision"));
  CHECK(has(report, "the trailing edge is 3.2 mm thick now and becomes 1.0 mm"));

  for (const char* edge : {"3", "1"}) {
    const Json plan = Json::parse(run({"plan", job, "-o", folder.at("out"), "--json", "--trailing-edge-thickness", edge}).out);
    CHECK_FALSE(has_code(plan, "thin-edge"));
  }
  // As thin as it is now: nothing becomes thinner.
  const std::string same = folder.write("same.csv", sheet("", "0.5"));
  CHECK_FALSE(has_code(Json::parse(run({"plan", same, "-o", folder.at("out"), "--json"}).out), "thin-edge"));
  // A default alone is no fault of the job: this one has a cut by default, and no other warning.
  CHECK(run({"plan", same, "-o", folder.at("out"), "--strict", "--quiet"}).status == 0);
}

TEST_CASE("a cut that only a default allows is a decision, with the litres that it saves") {
  const Folder folder;
  const std::string job = folder.write("cut.csv", sheet("", "1.6"));
  const Result result = run({"plan", job, "-o", folder.at("out")});
  const std::string out = unwrapped(result.out);
  INFO(out);
  CHECK(
      has(out, "(max_removal is a default): how thick is the skin there? For the faces to stay uncut ask for --max-removal 0: "));
  // The litres are those of the plan that is asked for so.
  const Json uncut = Json::parse(run({"plan", job, "-o", folder.at("uncut"), "--json", "--max-removal", "0"}).out);
  char litres[32];
  std::snprintf(litres, sizeof litres, "%.2f L to add instead of", uncut["volumes"]["add"].get<double>());
  CHECK(has(out, litres));
  CHECK_FALSE(has_code(uncut, "default-cut"));
  CHECK_FALSE(
      has_code(Json::parse(run({"plan", job, "-o", folder.at("out"), "--json", "--max-removal", "1"}).out), "default-cut"));
}

TEST_CASE("a flat leading edge is a decision until something is built ahead of it") {
  const Folder folder;
  const std::string job = folder.write("flat.csv", sheet("", "1.6", "3.5"));  // 7 mm wide where a nose has none
  const Result result = run({"plan", job, "-o", folder.at("out")});
  INFO(result.out << result.err);
  CHECK(has(unwrapped(result.out), "stations A, B and C: the leading edge is flat, 7.0 mm wide"));
  CHECK(has(result.out, "(almost certain)"));
  CHECK(has_code(Json::parse(run({"plan", job, "-o", folder.at("out"), "--json"}).out), "flat-leading-edge"));
  for (const auto& decided : {std::pair{"--extend-leading-edge", "6"}, {"--leading-edge", "leave"}}) {
    const Result other = run({"plan", job, "-o", folder.at("out"), "--json", decided.first, decided.second});
    INFO(other.err);
    CHECK_FALSE(has_code(Json::parse(other.out), "flat-leading-edge"));
  }
}

TEST_CASE("what building a flat nose out saves is told, as a plan that is asked for it comes to") {
  const Folder folder;
  const std::string job = folder.write("flat.csv", sheet("", "1.6", "5"));
  const std::string told = unwrapped(run({"plan", job, "-o", folder.at("out")}).out);
  INFO(told);
  std::smatch found;
  REQUIRE(
      std::regex_search(told, found, std::regex(R"re(--extend-leading-edge "(up_to [0-9.]+)" makes it ([0-9.]+) L to add)re")));
  const Json then = Json::parse(run({"plan", job, "-o", folder.at("then"), "--json", "--extend-leading-edge", found[1]}).out);
  CHECK(then["volumes"]["add"].get<double>() == Approx(std::stod(found[2])).margin(0.0051));
  CHECK_FALSE(has_code(then, "nose-cut"));
}

TEST_CASE("a reading past the new edge is no half-breadth of nothing to cut down to") {
  // Whimbrel's station D, read to x 334: fairing along the span brings its edge forward (the screen says 0.7 mm).
  const Folder folder;
  const Result result = run({"plan", profile("whimbrel"), "-o", folder.at("out")});
  REQUIRE(has(unwrapped(result.out), "station D greatest thickness 0.3 mm up, trailing edge 0.7 mm forward"));
  const std::string report = bytes_of(folder.at("out") + "/report.html");
  CHECK(has(report, "past the new edge"));
  CHECK(has(report, "the saw line on the trailing-edge card tells where"));
  CHECK(has(bytes_of(folder.at("out") + "/sections/D.svg"), ">past edge<"));
  CHECK_FALSE(has(bytes_of(folder.at("out") + "/sections/B.svg"), ">past edge<"));
  // For programs the columns stay numbers: change is target less measured.
  CHECK(has(bytes_of(folder.at("out") + "/offsets.csv"), "D,720.000,334.000,starboard,0.500,0.000,-0.500\n"));
}

TEST_CASE("2026-11-26: what is almost certainly wrong in the readings leads plan.json's warnings") {
  const Folder folder;
  const Json clean =
      Json::parse(run({"plan", folder.write("clean.csv", sheet("", "0.5")), "-o", folder.at("out"), "--json"}).out);
  CHECK_FALSE(has_code(clean, "slipped-digit"));
  const std::string slip = folder.write(
      "slip.csv", foil_sheet("", [](const std::string& station, const std::string& x, bool port, const std::string& usual) {
        return station == "B" && x == "120" && port ? "42.0" : usual;  // 24.0
      }));
  const Json plan = Json::parse(run({"plan", slip, "-o", folder.at("out"), "--json"}).out);
  REQUIRE_FALSE(plan["warnings"].empty());
  CHECK(plan["warnings"][0]["code"] == "slipped-digit");
  CHECK(plan["warnings"][0]["where"] == "station B");
  CHECK(has(plan["warnings"][0]["text"].get<std::string>(), "port: "));
}

TEST_CASE("2026-11-26: litres of a part that nobody read are told") {
  const Folder folder;
  const Json far =
      Json::parse(run({"plan", folder.write("far.csv", sheet("bottom,2000\n", "0.5")), "-o", folder.at("out"), "--json"}).out);
  CHECK(has_code(far, "carried-on"));
  const Json near = Json::parse(run({"plan", folder.write("near.csv", sheet("", "0.5")), "-o", folder.at("out"), "--json"}).out);
  CHECK_FALSE(has_code(near, "carried-on"));
}

TEST_CASE("2026-11-26: no litres are offered for uncut faces where no face is cut") {
  const Folder folder;
  const std::string job = folder.write("edges.csv", sheet("", "1.6"));
  const Result result = run({"plan", job, "-o", folder.at("out"), "--approach", "edges-only", "--trailing-edge-thickness", "1"});
  INFO(result.out << result.err);
  CHECK(result.status == 0);
  CHECK_FALSE(has(unwrapped(result.out), "for the faces to stay uncut"));
  CHECK_FALSE(has(unwrapped(result.out), "For the faces to stay uncut"));
}

TEST_CASE("2026-11-26: a decimal comma in an option is one; in a file of commas it is told") {
  const Folder folder;
  const std::string job = folder.write("comma.csv", sheet("", "1.6"));
  const auto litres = [&](const char* edge) {
    return Json::parse(
        run({"plan", job, "-o", folder.at("out"), "--json", "--trailing-edge-thickness", edge, "--thickness", "12,5%"})
            .out)["volumes"]["add"];
  };
  CHECK(litres("3,5") == litres("3.5"));
  const Result told =
      run({"plan", folder.write("row.csv", sheet("trailing_edge_thickness,3,5\n", "1.6")), "-o", folder.at("out")});
  CHECK(told.status == 2);
  CHECK(has(told.err, "for a decimal comma write a point, or part the columns by semicolons"));
  const Result dash = run({"worksheet", "--csv", "-"});
  CHECK(dash.status == 2);
  CHECK(has(dash.err, "leave it out to have the table printed"));
  CHECK_FALSE(std::filesystem::exists("-"));
}

TEST_CASE("2026-11-27: a nose built out towards a skeg is told, with the gap to keep; choices offers none") {
  const Folder folder;
  const std::string behind = with_skeg(sheet("", "1.6"), "60");
  const std::string job = folder.write("skeg.csv", behind);
  const Result built = run({"plan", job, "-o", folder.at("out"), "--extend-leading-edge", "4"});
  INFO(built.out << built.err);
  CHECK(has(unwrapped(built.out), "behind a fixed skeg the leading edge is built 4.0 mm forward, into the gap"));
  CHECK(has(unwrapped(built.out), "5 to 10 mm"));
  CHECK_FALSE(has_code(Json::parse(run({"plan", job, "-o", folder.at("out"), "--json"}).out), "towards-skeg"));
  const Result choices = run({"choices", job});
  CHECK_FALSE(has(choices.out, "extend-leading-edge"));
  CHECK(has(choices.out, "extend-trailing-edge"));
  CHECK(has(run({"choices", folder.write("free.csv", sheet("", "1.6"))}).out, "extend-leading-edge"));
}

TEST_CASE("2026-11-27: an edge that is left as it is has no room for the coats") {
  const Folder folder;
  const std::string readings = folder.write("r.csv", sheet("", "1.6"));
  const std::string head = R"({"job": "Curlew, invented", "reading_error": 0.2, "readings_file": "r.csv",)";
  const std::string stations =
      R"("stations": [{"name": "A", "down": 0, "ahead": 60, "chord": 400}, {"name": "B", "down": 300, "ahead": 60, "chord": 400},
         {"name": "C", "down": 600, "ahead": 60, "chord": 400}], "target": {"leading_edge": "leave"})";
  const std::string coats = R"(, "coats": [{"name": "barrier", "thickness": 0.25, "layers": 2, "stage": "paint"}]})";
  const auto planned = [&](const std::string& text) {
    const Result result = run({"plan", folder.write("job.json", text), "-o", folder.at("out"), "--json"});
    INFO(result.err);
    return Json::parse(result.out);
  };
  CHECK(has_code(planned(head + stations + coats), "left-under-coats"));
  CHECK_FALSE(has_code(planned(head + stations + "}"), "left-under-coats"));
  // 2026-11-28: a body that edges-only keeps is cut for them all over, and nobody said so.
  std::string kept = stations;
  kept.replace(kept.find("\"leading_edge\": \"leave\""), 23, "\"approach\": \"edges-only\"");
  const Json under = planned(head + kept + coats);
  CHECK(has_code(under, "kept-under-coats"));
  CHECK_FALSE(has_code(under, "left-under-coats"));
  CHECK(has(under["warnings"].dump(), "trailing edge 1.0 mm thinner"));
  CHECK_FALSE(has_code(planned(head + kept + "}"), "kept-under-coats"));
  CHECK(has(run({"choices", folder.write("job.json", head + stations + coats)}).out, "the rest comes off"));
  CHECK_FALSE(has(run({"choices", folder.write("job.json", head + stations + "}")}).out, "the rest comes off"));
}

TEST_CASE("2026-11-27: the blade's own thickness is told, not its nearest form's") {
  // A plate 24 mm thick, pointed at both ends over 100 mm of 400: 6.0 % of its chord.
  const Folder folder;
  const std::string plate = foil_sheet("", [&](const std::string&, const std::string& x, bool, const std::string&) {
    const double at = std::stod(x), from_end = std::min(at, 400 - at);
    return std::to_string(std::min(12.0, 12 * from_end / 100));
  });
  const Result result = run({"plan", folder.write("plate.csv", plate), "-o", folder.at("out")});
  INFO(result.out << result.err);
  CHECK(has(bytes_of(folder.at("out") + "/report.html"), "6.0 % now"));
}

TEST_CASE("2026-11-27: with coats map, sections and report say which surface they count to") {
  const Folder folder;
  folder.write("r.csv", sheet("", "1.6"));
  const std::string job = R"({"job": "Curlew, invented", "reading_error": 0.2, "readings_file": "r.csv",
    "stations": [{"name": "A", "down": 0, "chord": 400}, {"name": "B", "down": 300, "chord": 400}, {"name": "C", "down": 600, "chord": 400}],
    "target": {"trailing_edge_thickness": "4mm"}, "coats": [{"name": "cloth", "thickness": 0.6, "stage": "glass", "on": "filled"}, {"name": "paint", "thickness": 0.1, "stage": "paint"}]})";
  const Result result = run({"plan", folder.write("job.json", job), "-o", folder.at("out")});
  INFO(result.out << result.err);
  for (const char* file : {"highs-and-lows.svg", "report.html", "sections/A.svg"}) {
    std::string text = bytes_of(folder.at("out") + "/" + file);
    CAPTURE(file);
    CHECK(has(text, "0.7 mm"));  // under the coats, where there is filler
    CHECK(has(text, "finished surface"));
  }
}
