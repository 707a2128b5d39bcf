// The edges' drawings in a plan's folder.
#include <algorithm>
#include <cmath>
#include <sstream>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;

namespace {

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++out;
  return out;
}

/// Two stations 300 mm apart, 0012 as read to a tenth, and more keys.
std::string job(const std::string& keys, double chord = 400) {
  std::string readings;
  for (const double x : {0.0, 0.0125, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1.0}) {
    const double y = 0.6 * (0.2969 * std::sqrt(x) - 0.1260 * x - 0.3516 * x * x + 0.2843 * x * x * x - 0.1015 * x * x * x * x);
    readings += (readings.empty() ? "[" : ", [") + std::to_string(chord * x) + ", " + std::to_string(chord * y) + ", " +
                std::to_string(chord * y) + "]";
  }
  const auto station = [&](const std::string& name, const std::string& down) {
    return "{ \"name\": \"" + name + "\", \"down\": " + down + ", \"ahead\": 60, \"chord\": " + std::to_string(chord) +
           ", \"readings\": [" + readings + "] }";
  };
  return "{ \"job\": \"Plover, invented\", " + keys + " \"target\": { \"trailing_edge_thickness\": 4 }, \"stations\": [" +
         station("A", "0") + ", " + station("B", "300") + "] }";
}

}  // namespace

TEST_CASE("gauges and cards stand in the folder, each stage in its name") {
  const Folder folder;
  const auto plan = [&](const std::string& name, const std::string& text, const std::vector<std::string>& more = {}) {
    std::vector<std::string> args{"plan", folder.write(name + ".json", text), "-o", folder.at(name), "--quiet"};
    args.insert(args.end(), more.begin(), more.end());
    const Result result = run(args);
    INFO(result.err);
    REQUIRE(result.status == 0);
    return files_in(folder.at(name));
  };
  const auto plain = plan("plain", job(""));
  for (const char* file : {"templates/A-nose-final.svg", "templates/B-nose-final.svg", "templates/leading-edge-table-final.svg",
                           "templates/trailing-edge-card.svg"}) {
    INFO(file);
    CHECK(plain.count(file) == 1);
  }
  CHECK(plain.count("templates/A-nose-bare.svg") == 0);
  const std::string& table = plain.at("templates/leading-edge-table-final.svg");
  CHECK(has(table, ">at 100<"));
  CHECK(has(table, ">at 200<"));
  const auto coated = plan("coated", job("\"coats\": [ { \"name\": \"barrier\", \"thickness\": 0.3, \"stage\": \"paint\" } ],"));
  for (const char* file : {"templates/A-nose-bare.svg", "templates/A-nose-final.svg", "templates/leading-edge-table-bare.svg"}) {
    INFO(file);
    CHECK(coated.count(file) == 1);
  }
  CHECK(has(coated.at("templates/A-nose-bare.svg"), "STARBOARD BARE"));
  CHECK(has(coated.at("templates/A-nose-bare.svg"), "for the blade filled, before paint"));
  // The spacing, from the job and from the option, which wins.
  CHECK(
      has(plan("wide", job("\"print\": { \"gauge_spacing\": 150 },")).at("templates/leading-edge-table-final.svg"), ">at 150<"));
  const auto won = plan("won", job("\"print\": { \"gauge_spacing\": 150 },"), {"--gauge-spacing", "75"});
  CHECK(count(won.at("templates/leading-edge-table-final.svg"), ">at 75<") == 2);  // in both tables
  CHECK(has(plain.at("plan.json"), "\"print.gauge_spacing\": \"100 mm\""));
  CHECK_FALSE(has(won.at("plan.json"), "print.gauge_spacing"));
}

TEST_CASE("every half of every height is on some page") {
  const Folder folder;
  REQUIRE(run({"plan", folder.write("job.json", job("")), "-o", folder.at("out"), "--quiet"}).status == 0);
  std::string pages;
  for (const auto& [path, bytes] : files_in(folder.at("out"))) {
    if (path.rfind("pages/", 0) == 0) pages += bytes;
  }
  for (const char* height : {"0.0 mm", "100.0 mm", "200.0 mm", "300.0 mm"}) {
    INFO(height);
    CHECK(count(pages, ">" + std::string(height) + "<") >= 2);
  }
  CHECK(has(pages, "Down the blade, lengths in millimetres"));
  CHECK(has(pages, "Flats to plane before rounding"));
}

TEST_CASE("maps, tables and cards are never cut up, whatever the margins leave of the paper") {
  // 2026-11-25: on Letter with 20 mm of margin the map was cut in two, and its words lay over the joint.
  const Folder folder;
  for (const char* print : {"\"paper\": \"Letter\", \"margin\": 20, \"overlap\": 20",
                            "\"paper\": \"A4\", \"margin\": 25, \"ruler_reads\": [104, 97]"}) {
    INFO(print);
    const auto name = "job" + std::to_string(std::string(print).size());
    REQUIRE(run({"plan", folder.write(name + ".json", job("\"print\": { " + std::string(print) + " },")), "-o", folder.at(name),
                 "--quiet"})
                .status == 0);
    std::size_t seen = 0;
    for (const auto& [path, bytes] : files_in(folder.at(name))) {
      if (path.rfind("pages/", 0) != 0) continue;
      for (const char* whole : {"highs-and-lows", "leading-edge-table", "trailing-edge-card"}) {
        if (!has(path, whole)) continue;
        ++seen;
        INFO(path);
        CHECK_FALSE(has(path, "-r1c"));
        CHECK_FALSE(has(path, "-r2c"));
      }
    }
    CHECK(seen >= 3);
  }
}

TEST_CASE("a template in two has its nose, with clearance too, and none behind a skeg") {
  const Folder folder;
  REQUIRE(run({"plan", folder.write("job.json", job("\"print\": { \"split\": \"always\" },", 700)), "-o", folder.at("out"),
               "--quiet", "--at", "137.5"})
              .status == 0);
  const auto files = files_in(folder.at("out"));
  for (const char* file : {"templates/A-port-aft-final.svg", "templates/A-port-aft-final-clearance.svg",
                           "templates/A-nose-final.svg", "templates/A-nose-final-clearance.svg",
                           // 2026-11-27: the height between had its aft half alone.
                           "templates/at-137.5-port-aft-final.svg", "templates/at-137.5-nose-final.svg"}) {
    INFO(file);
    CHECK(files.count(file) == 1);
  }
  CHECK(has(files.at("templates/A-nose-final-clearance.svg"), "clearance 3 mm"));
  CHECK(has(files.at("print.html"), "at 137.5"));
  const Result skeg = run({"plan", profile("dunlin"), "-o", folder.at("dunlin"), "--quiet"});
  REQUIRE(skeg.status == 0);
  const auto dunlin = files_in(folder.at("dunlin"));
  CHECK(dunlin.count("templates/1-nose-final.svg") == 0);
  CHECK(has(dunlin.at("templates/leading-edge-table-final.svg"), "there is no nose"));
}

/// Width and height of the heavy line to cut along, mm.
std::pair<double, double> extent_of_edge(const std::string& svg) {
  const auto from = svg.find("id=\"working-edge\""), begin = svg.find(" d=\"", from) + 4;
  std::string d = svg.substr(begin, svg.find('"', begin) - begin);
  for (char& c : d) {
    if (c == ',' || c == 'M' || c == 'L' || c == 'Z') c = ' ';
  }
  std::istringstream numbers(d);
  double x = 0, y = 0, left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
  while (numbers >> x >> y) {
    left = std::min(left, x), right = std::max(right, x);
    top = std::min(top, y), bottom = std::max(bottom, y);
  }
  return {right - left, bottom - top};
}

TEST_CASE("the sections themselves are drawn where they are asked for, each stage as thick as it is then") {
  const Folder folder;
  const std::string coats = R"("coats": [ { "name": "barrier", "thickness": 0.3, "stage": "paint" } ], "print": { "positives": )";
  const auto plan = [&](const std::string& name, const std::string& wanted) {
    std::string text = job(coats + wanted + " },");
    text.replace(text.find("\"trailing_edge"), 0, "\"thickness\": 0.12, ");
    REQUIRE(run({"plan", folder.write(name + ".json", text), "-o", folder.at(name), "--quiet"}).status == 0);
    return files_in(folder.at(name));
  };
  const auto files = plan("asked", "true");
  const auto [final_long, final_high] = extent_of_edge(files.at("templates/A-section-final.svg"));
  const auto [bare_long, bare_high] = extent_of_edge(files.at("templates/A-section-bare.svg"));
  CHECK(final_high == Approx(0.12 * 400).margin(0.02));  // a 0012: both halves of it
  CHECK(bare_high == Approx(final_high - 2 * 0.3).margin(0.01));
  CHECK(final_long == Approx(400).margin(0.01));
  CHECK(bare_long < final_long - 0.25);
  CHECK(has(files.at("templates/A-section-bare.svg"), "THE SECTION ITSELF BARE<"));
  std::size_t on_pages = 0;
  for (const auto& [path, bytes] : files) on_pages += path.rfind("pages/", 0) == 0 && has(path, "-B-the-section-itself-bare");
  CHECK(on_pages >= 1);
  for (const auto& [path, bytes] : plan("plain", "false")) CHECK_FALSE(has(path, "section-"));
}

TEST_CASE("a spacing that is none is refused") {
  const Folder folder;
  const std::string good = folder.write("job.json", job(""));
  for (const char* text : {"", "5", "1001", "ten", "nan", "-100"}) {
    const Result result = run({"plan", good, "-o", folder.at("out"), "--gauge-spacing=" + std::string(text)});
    INFO(text << ": " << result.err);
    CHECK(result.status == 2);
    CHECK(count(result.err, "\n") == 1);
    CHECK(has(result.err, "--gauge-spacing"));
  }
  CHECK_FALSE(fs::exists(folder.at("out")));
  const Result file =
      run({"plan", folder.write("bad.json", job("\"print\": { \"gauge_spacing\": 5 },")), "-o", folder.at("out")});
  CHECK(file.status == 2);
  CHECK(has(file.err, "print.gauge_spacing"));
}
