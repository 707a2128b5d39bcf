// bench [--json] [--list] [--only WORD] [--run NAME]: every kernel and its reference by turns, medians of what they took.
//       --scan ROWS FILE writes a scanned blade as a CSV, 200 stations of ROWS / 200 places read on both sides.
// --run NAME runs one kernel's own side once, for counting: valgrind --tool=callgrind bench --run fit
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "bench/bench.hpp"

namespace bench {
namespace {

using Clock = std::chrono::steady_clock;

volatile double kept = 0;

double milliseconds_of(const std::function<double()>& work) {
  const auto start = Clock::now();
  kept = kept + work();
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2), values.end());
  return values[values.size() / 2];
}

struct Took {
  double ours = 0, reference = 0, ratio = 0;
  std::size_t turns = 0;
};

/// By turns, so that what disturbs one disturbs the other: the ratio is the median of the pairs' ratios.
Took timed(const Kernel& kernel) {
  constexpr double enough = 600;  // ms
  std::vector<double> ours, reference, ratio;
  double sum = 0;
  milliseconds_of(kernel.ours);  // warm
  while ((sum < enough && ours.size() < 2001) || ours.size() < 5) {
    ours.push_back(milliseconds_of(kernel.ours));
    sum += ours.back();
    if (!kernel.reference) continue;
    reference.push_back(milliseconds_of(kernel.reference));
    sum += reference.back();
    ratio.push_back(ours.back() / reference.back());
  }
  Took out{median(ours), 0, 0, ours.size()};
  if (kernel.reference) out.reference = median(reference), out.ratio = median(ratio);
  return out;
}

std::string verdict(const Kernel& kernel, const Took& took) {
  const bool by_ratio = kernel.goal.ratio.has_value();
  if (!by_ratio && !kernel.goal.milliseconds) return "";
  const double limit = by_ratio ? *kernel.goal.ratio : *kernel.goal.milliseconds;
  char text[64];
  std::snprintf(text, sizeof text, "goal %s %.3g%s: %s", "at most", limit, by_ratio ? "" : " ms",
                (by_ratio ? took.ratio : took.ours) <= limit ? "met" : "NOT MET");
  return text;
}

void print(const Kernel& kernel, const Took& took) {
  std::printf("%-18s %10.3f ms", kernel.name.c_str(), took.ours);
  if (kernel.reference) {
    std::printf("  %10.3f ms %-34s ratio %7.3f", took.reference, kernel.reference_name.c_str(), took.ratio);
  } else {
    std::printf("  %-62s", "");
  }
  std::printf("  %s\n", verdict(kernel, took).c_str());
  std::printf("%-18s %s%s%s\n", "", kernel.work.c_str(), kernel.agreement.empty() ? "" : "; ", kernel.agreement.c_str());
  std::fflush(stdout);
}

nlohmann::ordered_json as_json(const Kernel& kernel, const Took& took) {
  nlohmann::ordered_json out{{"name", kernel.name}, {"work", kernel.work}, {"ms", took.ours}, {"turns", took.turns}};
  if (kernel.reference) {
    out["reference"] = kernel.reference_name;
    out["reference_ms"] = took.reference;
    out["ratio"] = took.ratio;
  }
  if (const auto words = verdict(kernel, took); !words.empty()) out["goal"] = words;
  return out;
}

std::vector<Kernel> all() {
  std::vector<Kernel> out;
  for (const auto& some : {reading_kernels, fit_kernels, area_kernels, flow_kernels, drawing_kernels, whole_kernels}) {
    for (Kernel& kernel : some()) out.push_back(std::move(kernel));
  }
  return out;
}

int usage() {
  std::fputs("bench [--json] [--list] [--only WORD] [--run NAME]\nbench --scan ROWS FILE\n", stderr);
  return 2;
}

int write_scan(const char* rows, const char* path) {
  constexpr std::size_t stations = 200, fewest = 2, most = 100'000;  // places at a station
  const std::size_t places = std::strtoul(rows, nullptr, 10) / stations;
  if (places < fewest || places > most) return usage();
  std::ofstream file(path, std::ios::binary);
  file << dense_csv(stations, places);
  return file.flush() ? 0 : 1;
}

int run(int count, char** words) {
  bool json = false, list = false;
  std::string only, one;
  if (count == 4 && std::strcmp(words[1], "--scan") == 0) return write_scan(words[2], words[3]);
  for (int k = 1; k < count; ++k) {
    const bool more = k + 1 < count;
    if (std::strcmp(words[k], "--json") == 0) json = true;
    else if (std::strcmp(words[k], "--list") == 0) list = true;
    else if (std::strcmp(words[k], "--only") == 0 && more) only = words[++k];
    else if (std::strcmp(words[k], "--run") == 0 && more) one = words[++k];
    else return usage();
  }
  nlohmann::ordered_json results = nlohmann::ordered_json::array();
  for (const Kernel& kernel : all()) {
    if (!one.empty() && kernel.name != one) continue;
    if (kernel.name.find(only) == std::string::npos) continue;
    if (list) {
      std::printf("%s: %s\n", kernel.name.c_str(), kernel.work.c_str());
    } else if (!one.empty()) {
      std::printf("%.9g\n", kernel.ours());
    } else {
      const Took took = timed(kernel);
      if (json) results.push_back(as_json(kernel, took));
      else print(kernel, took);
    }
  }
  if (json) std::printf("%s\n", results.dump(2).c_str());
  return 0;
}

}  // namespace

std::string scratch() {
  struct Folder {
    Folder() : path(std::filesystem::temp_directory_path() / ("fairblade-bench-" + std::to_string(::getpid()))) {
      std::filesystem::create_directories(path);
    }
    ~Folder() {
      std::error_code ignored;
      std::filesystem::remove_all(path, ignored);
    }
    std::filesystem::path path;
  };
  static const Folder folder;
  return folder.path.string();
}

}  // namespace bench

int main(int count, char** words) { return bench::run(count, words); }
