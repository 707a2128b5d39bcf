// A rudder planned on disk, and rounds read of it, for the tests of recheck. Expected values: NACA Report 460's equation
// (tests/blade.hpp).
#pragma once
#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <vector>

#include "base/text.hpp"
#include "blade.hpp"
#include "catch.hpp"
#include "cli/sandbox.hpp"

namespace knot {

using namespace sandbox;
using Json = nlohmann::json;

inline std::string number(double value) { return fairblade::fixed(value, 6); }

inline const std::vector<std::pair<std::string, double>> stations{{"A", 0}, {"B", 300}, {"C", 600}};
inline double chord_at(double down) { return 420 - 0.1 * down; }

/// A 0010 that is to become a 0012, in `unit` ("mm" or "in"); `more` stands among the job's keys.
inline std::string job_text(const std::string& unit = "mm", const std::string& more = "") {
  const double mm = unit == "in" ? 25.4 : 1;
  std::string out = "{ \"job\": \"Knot, a test\", \"units\": \"" + unit + "\", \"reading_error\": " + number(0.3 / mm) + more +
                    ",\n  \"target\": { \"thickness\": 0.12, \"spanwise\": \"as-measured\" },\n  \"stations\": [\n";
  for (const auto& [name, down] : stations) {
    const double c = chord_at(down);
    out += "   { \"name\": \"" + name + "\", \"down\": " + number(down / mm) + ", \"ahead\": " + number(60 / mm) +
           ", \"chord\": " + number(c / mm) + ", \"readings\": [";
    for (const double f : blade::places14()) {
      const std::string y = number(c * blade::naca(0.10, f) / mm);
      out += std::string(f > 0 ? ", " : "") + "[" + number(f * c / mm) + ", " + y + ", " + y + "]";
    }
    out += name == "C" ? "] }\n" : "] },\n";
  }
  return out + "] }\n";
}

/// Readings of the 0012 itself, port higher by `more` mm from 150 to 250 mm aft; heights as `at` has them.
inline std::string round_text(double more = 0, double mm = 1, const std::vector<std::pair<std::string, double>>& at = stations) {
  std::string out = "station,down,x,port,starboard\n";
  for (const auto& [name, down] : at) {
    const double c = chord_at(down);
    for (const double f : blade::places14()) {
      const double x = f * c, y = c * blade::naca(0.12, f);
      out += name + "," + number(down / mm) + "," + number(x / mm) + "," + number((y + (x > 150 && x < 250 ? more : 0)) / mm) +
             "," + number(y / mm) + "\n";
    }
  }
  return out;
}

inline std::string with_error(std::string text, double mm) {
  const std::string told = "\"reading_error\": ";
  const auto at = text.find(told) + told.size();
  return text.replace(at, text.find(',', at) - at, number(mm));
}

struct Planned {
  Folder folder;
  std::string job, plan = folder.at("knot");
  explicit Planned(const std::string& text = job_text()) : job(folder.write("knot.json", text)) {
    const Result result = run({"plan", job, "-o", plan, "--quiet"});
    INFO(result.err);
    REQUIRE(result.status == 0);
  }
  Result recheck(const std::vector<std::string>& readings, std::vector<std::string> more = {}) const {
    std::vector<std::string> args{"recheck", plan};
    args.insert(args.end(), readings.begin(), readings.end());
    args.insert(args.end(), {"-o", folder.at("left")});
    args.insert(args.end(), more.begin(), more.end());
    return run(args);
  }
  Json json(const std::vector<std::string>& readings, std::vector<std::string> more = {}) const {
    more.push_back("--json");
    const Result result = recheck(readings, more);
    INFO(result.err);
    REQUIRE(result.status == 0);
    CHECK(result.out == bytes_of(folder.at("left/recheck.json")));
    return Json::parse(result.out);
  }
};

inline bool said(const Json& notes, const std::string& part) {
  return std::any_of(notes.begin(), notes.end(), [&](const Json& one) { return has(one.get<std::string>(), part); });
}

}  // namespace knot
