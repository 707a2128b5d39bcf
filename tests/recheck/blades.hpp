// Frozen plans and rounds made for the tests, by the published equation, written out in tests/blade.hpp on its own.
#pragma once
#include <cmath>
#include <cstdio>
#include <functional>
#include <string>
#include <vector>

#include "blade.hpp"
#include "job/scratch.hpp"
#include "recheck/recheck.hpp"

namespace blades {

using namespace fairblade;

constexpr double t = 0.12;
/// A tapering 0012: chords 420, 390 and 360 mm at 0, 300 and 600 mm down, the stock 60 mm aft of the leading edge.
inline double chord_at(double down) { return 420 - 0.1 * down; }
inline constexpr double ahead = 60;

/// Half-breadth of that target, mm.
inline double wanted(double down, double x) {
  const double c = chord_at(down);
  return c * blade::naca(t, std::max(0.0, x) / c);
}
inline double slope(double down, double x) {
  const double h = 1e-4;
  return (wanted(down, x + h) - wanted(down, x - h)) / (2 * h);
}

/// As plan.json holds it: 200 points a face, even in sqrt(x).
inline job::FrozenPlan plan(double to_come = 0) {
  job::FrozenPlan out;
  out.file = "plan.json";
  out.job = "Knot";
  out.reading_error = 0.3;
  if (to_come > 0) out.stages.push_back({"bare", to_come, "filled, before paint"});
  out.stages.push_back({"final", 0, to_come > 0 ? "painted" : ""});
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    job::FrozenStation station;
    station.name = name;
    station.down = down;
    station.target_chord = chord_at(down);
    station.target_ahead = ahead;
    for (int k = 0; k < 200; ++k) {
      const double u = k / 199.0, x = chord_at(down) * u * u;
      station.x.push_back(x);
      station.port.push_back(wanted(down, x));
      station.starboard.push_back(wanted(down, x));
    }
    for (const double f : blade::places14()) {  // it was 2 mm thinner on either side, and sharp-edged
      const double x = f * chord_at(down), y = std::max(0.0, wanted(down, x) - 2);
      station.readings.push_back({x, true, y});
      station.readings.push_back({x, false, y});
    }
    out.stations.push_back(std::move(station));
  }
  return out;
}

/// Half-breadths of one height; x aft of the leading edge.
using Off = std::function<double(double x, bool port)>;
inline std::string rows(const std::string& station, double down, const std::vector<double>& x, const Off& off) {
  std::string out;
  char line[200];
  for (const double one : x) {
    std::snprintf(line, sizeof line, "%s,%.6f,%.6f,%.6f\n", station.c_str(), one, wanted(down, one) + off(one, true),
                  wanted(down, one) + off(one, false));
    out += line;
  }
  return out;
}
inline std::vector<double> places(double down, const std::vector<double>& fractions = blade::places14()) {
  std::vector<double> out;
  for (const double f : fractions) out.push_back(f * chord_at(down));
  return out;
}
inline const Off none = [](double, bool) { return 0.0; };

/// A whole round at the three stations.
inline std::string round(const Off& off) {
  std::string out = "station,x,port,starboard\n";
  for (const auto& [name, down] : {std::pair<const char*, double>{"A", 0}, {"B", 300}, {"C", 600}}) {
    out += rows(name, down, places(down), off);
  }
  return out;
}

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

inline recheck::Recheck judged(const job::FrozenPlan& plan, const std::vector<std::string>& texts,
                               recheck::Options options = {}) {
  const Scratch folder;
  std::vector<std::string> files;
  for (const std::string& text : texts) files.push_back(folder.write("round-" + std::to_string(files.size() + 1) + ".csv", text));
  const auto out = recheck::recheck(plan, files, options);
  if (!out) throw std::runtime_error(one_line(out.faults().front()));
  return *out;
}

/// The refusals of one round, without the folder; "not refused" where there are none.
inline std::string told(const job::FrozenPlan& plan, const std::string& text) {
  const Scratch folder;
  const auto out = recheck::recheck(plan, {folder.write("r.csv", text)}, {});
  if (out) return "not refused";
  std::string all;
  for (const Fault& one : out.faults()) all += one_line(one).substr(folder.folder.string().size() + 1) + "\n";
  return all;
}

}  // namespace blades
