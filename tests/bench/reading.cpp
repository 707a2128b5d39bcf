// Reading: CSV and JSON from the file to a checked job, beside a bare std::from_chars loop over the same bytes.
#include <charconv>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <random>

#include "bench/bench.hpp"
#include "blade.hpp"
#include "job/job.hpp"

namespace bench {
namespace {

using namespace fairblade;

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::string json_job(std::size_t stations, std::size_t readings) {
  nlohmann::ordered_json job{{"job", "Bench blade, invented"}, {"stations", nlohmann::ordered_json::array()}};
  for (std::size_t s = 0; s < stations; ++s) {
    nlohmann::ordered_json rows = nlohmann::ordered_json::array();
    const double chord = 420 - 2.0 * static_cast<double>(s);
    for (std::size_t k = 0; k < readings; ++k) {
      const double u = static_cast<double>(k) / static_cast<double>(readings - 1);
      const double y = std::round(blade::naca(0.12, u * u) * chord * 1000) / 1000;
      rows.push_back({std::round(u * u * chord * 1000) / 1000, y, y});
    }
    job["stations"].push_back({{"name", "S" + std::to_string(s)}, {"down", 20 * s}, {"chord", chord}, {"readings", rows}});
  }
  return job.dump(1);
}

double read(const std::string& path) {
  const auto job = job::read_job(path);
  if (!job) throw std::runtime_error(one_line(job.faults().front()));
  double sum = 0;
  for (const job::Station& station : job->stations) sum += static_cast<double>(station.readings.size());
  return sum;
}

}  // namespace

std::vector<double> bare_numbers(const std::string& path) {
  const std::string text = bytes_of(path);
  std::vector<double> out;
  for (const char *at = text.data(), *end = at + text.size(); at < end;) {
    double value = 0;
    const auto read = std::from_chars(at, end, value);
    if (read.ec == std::errc()) out.push_back(value), at = read.ptr;
    else ++at;
  }
  return out;
}

double bare_loop(const std::string& path) {
  const std::string text = bytes_of(path);
  double sum = 0;
  for (const char *at = text.data(), *end = at + text.size(); at < end;) {
    double value = 0;
    const auto read = std::from_chars(at, end, value);
    if (read.ec == std::errc()) sum += value, at = read.ptr;
    else ++at;
  }
  return sum;
}

std::string dense_csv(std::size_t stations, std::size_t readings) {
  std::mt19937 random(20261125);
  std::string out = "station,down,ahead,chord,x,port,starboard\n";
  const auto number = [&out](double value, char after) {
    char digits[32];
    const auto end = std::to_chars(digits, digits + sizeof digits, value, std::chars_format::fixed, 3);
    out.append(digits, end.ptr);
    out += after;
  };
  const auto stray = [&random] { return 0.1 * (static_cast<double>(random()) / 2147483648.0 - 1); };
  for (std::size_t s = 0; s < stations; ++s) {
    const double down = 1000.0 * static_cast<double>(s) / static_cast<double>(std::max<std::size_t>(stations - 1, 1));
    const double chord = 420 - 0.115 * down;
    for (std::size_t k = 0; k < readings; ++k) {
      out += 'S' + std::to_string(s) + ',';
      if (k == 0) number(down, ','), number(62 - 0.017 * down, ','), number(chord, ',');
      else out += ",,,";
      const double u = static_cast<double>(k) / static_cast<double>(readings - 1);
      const double half = k == 0 ? 0 : blade::naca(0.115, u * u) * chord + 0.8;
      number(u * u * chord, ',');
      number(k == 0 ? 0 : half + stray(), ',');
      number(k == 0 ? 0 : half + stray(), '\n');
    }
  }
  return out;
}

std::vector<Kernel> reading_kernels() {
  const std::string csv = scratch() + "/readings.csv", json = scratch() + "/job.json";
  std::ofstream(csv, std::ios::binary) << dense_csv(40, 500);
  std::ofstream(json, std::ios::binary) << json_job(40, 500);
  return {{"csv",
           "20,000 rows of a CSV, from the file to a checked job",
           [=] { return read(csv); },
           "a bare from_chars loop",
           [=] { return bare_loop(csv); },
           {2.0, {}},
           ""},
          {"json",
           "20,000 readings of a JSON job, from the file to a checked job",
           [=] { return read(json); },
           "nlohmann::json::parse alone",
           [=] { return static_cast<double>(nlohmann::json::parse(bytes_of(json))["stations"].size()); },
           {},
           ""}};
}

}  // namespace bench
