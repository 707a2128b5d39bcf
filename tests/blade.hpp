// Blades made for the tests: readings of forms by the published equation, written here on its own.
#pragma once
#include <cmath>
#include <fstream>
#include <functional>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "job/job.hpp"
#include "section/section.hpp"

namespace blade {

/// NACA Report 460 (1933), half-breadth of the 4-digit form; x, y in chords.
inline double naca(double t, double x) {
  return 5 * t * (0.2969 * std::sqrt(x) - 0.1260 * x - 0.3516 * x * x + 0.2843 * x * x * x - 0.1015 * x * x * x * x);
}

/// Fourteen places a side, crowded to the nose, as a yard would: fractions of the chord.
inline const std::vector<double>& places14() {
  static const std::vector<double> x{0, 0.0125, 0.025, 0.05, 0.075, 0.1, 0.15, 0.2, 0.3, 0.4, 0.55, 0.7, 0.85, 1.0};
  return x;
}

using Shape = std::function<double(double)>;  ///< x in chords -> half-breadth in chords

inline fairblade::job::Station station(const std::string& name, double down, double chord, const Shape& port,
                                       const Shape& starboard, const std::vector<double>& places = places14()) {
  fairblade::job::Station out;
  out.name = name;
  out.down = down;
  out.chord = chord;
  out.ahead = 0.17 * chord;
  out.readings_from = "test.json";
  int line = 1;
  for (const double x : places) {
    fairblade::job::Reading reading;
    reading.x = x * chord;
    reading.port = chord * port(x);
    reading.starboard = chord * starboard(x);
    reading.line = line++;
    out.readings.push_back(reading);
  }
  out.target.thickness.kind = fairblade::job::Thickness::Kind::closest;
  out.target.spanwise = fairblade::job::Spanwise::as_measured;
  return out;
}

inline fairblade::job::Station exact(const std::string& name, double down, double chord, double t,
                                     const std::vector<double>& places = places14()) {
  const Shape shape = [t](double x) { return naca(t, x); };
  return station(name, down, chord, shape, shape, places);
}

inline void add_noise(fairblade::job::Station& station, double sd, std::mt19937& random) {
  std::normal_distribution<double> noise;  // sd may be 0, which the distribution itself forbids
  for (auto& reading : station.readings) {
    if (reading.port) *reading.port += sd * noise(random);
    if (reading.starboard) *reading.starboard += sd * noise(random);
  }
}

inline fairblade::job::Job job_of(std::vector<fairblade::job::Station> stations) {
  fairblade::job::Job out;
  out.name = "Test blade";
  out.file = "test.json";
  out.stations = std::move(stations);
  return out;
}

inline fairblade::section::MeasuredSection measured(const fairblade::job::Job& job, std::size_t k = 0) {
  auto out = fairblade::section::measure_section(job, job.stations[k]);
  if (!out) throw std::runtime_error(fairblade::one_line(out.faults().front()));
  return *out;
}

/// Rows of a truth table, as cells.
inline std::vector<std::vector<std::string>> truth(const std::string& name) {
  std::ifstream file(std::string(TESTS_DIR) + "/truth/" + name);
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(file, line);) {
    std::vector<std::string> cells;
    std::stringstream parts(line);
    for (std::string cell; std::getline(parts, cell, ',');) cells.push_back(cell);
    rows.push_back(cells);
  }
  if (rows.size() < 2) throw std::runtime_error("no truth in " + name);
  return rows;
}

/// A coat of paint so thick, mm.
inline fairblade::job::Coat coat_of(double thickness) {
  fairblade::job::Coat coat;
  coat.name = "barrier coat";
  coat.stage = "paint";
  coat.thickness = thickness;
  return coat;
}

}  // namespace blade
