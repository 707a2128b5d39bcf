// hostile [--jobs N] [--mutants N] [--seed S]: random jobs, and the demo rudders with something in them broken, through the whole
// program: each a plan or a refusal, never a crash, a number that is none, or results of a refused job.
// hostile --replay FILE...: files through all of the fuzzers' targets; what once broke the program lies in tests/fuzz/broke.
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <random>
#include <sstream>

#include "blade.hpp"
#include "cli/cli.hpp"
#include "fuzz/targets.hpp"

namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using Random = std::mt19937;

double between(Random& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
}
bool one_in(Random& random, unsigned n) { return random() % n == 0; }
template <typename T, std::size_t n>
T one_of(Random& random, const std::array<T, n>& from) {
  return from[random() % n];
}
double to(double value, double step) { return std::round(value / step) * step; }

std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Some stations of some blade, in mm: most of them sensible, some absurd.
Json random_station(Random& random, std::size_t k, double down, double chord, double ratio, const std::string& way) {
  Json out{{"name", std::string(1, static_cast<char>('A' + k))}, {"down", down}, {"chord", to(chord, 0.5)}};
  if (!one_in(random, 4)) out["ahead"] = to(between(random, -0.1, 0.3) * chord, 0.5);
  if (one_in(random, 8)) out["trailing_edge_off_centre"] = to(between(random, -8, 8), 0.5);
  if (one_in(random, 12)) out["skeg"] = to(between(random, 20, 200), 1);
  if (way != "half-breadths") out["measured_by"] = way;
  if (way == "gaps") out["board"] = to(chord * ratio, 1);
  const std::size_t count = 3 + random() % 16;
  const double noise = one_in(random, 5) ? between(random, 0, 6) : 0.5;
  Json readings = Json::array();
  for (std::size_t r = 0; r < count; ++r) {
    const double u = static_cast<double>(r) / static_cast<double>(count - 1), x = to(u * u * chord, 0.5);
    const auto half = [&] {
      return std::max(0.0, to(blade::naca(ratio, x / chord) * chord + between(random, -noise, noise), 0.1));
    };
    if (way == "thickness") readings.push_back({x, half() + half()});
    else if (way == "gaps")
      readings.push_back({x, std::max(0.0, to(chord * ratio, 1) - half()), std::max(0.0, to(chord * ratio, 1) - half())});
    else if (one_in(random, 15)) readings.push_back({x, half(), nullptr});
    else readings.push_back({x, half(), half()});
  }
  out["readings"] = readings;
  return out;
}

Json random_target(Random& random, double chord) {
  Json out = Json::object();
  if (one_in(random, 3)) out["approach"] = "edges-only";
  if (one_in(random, 2))
    out["thickness"] = one_of<std::string>(random, std::array<std::string, 5>{"closest", "least-fill", "12%", "50mm", "9%"});
  if (one_in(random, 4))
    out["max_thickness_at"] = one_in(random, 2) ? Json("closest") : Json(to(between(random, 0.2, 0.6), 0.01));
  if (one_in(random, 3)) out["leading_edge_radius"] = to(between(random, 0, 0.04) * chord, 0.5);
  if (one_in(random, 2)) out["trailing_edge_thickness"] = to(between(random, 0, 8), 0.5);
  if (one_in(random, 5))
    out["extend_leading_edge"] = one_in(random, 2) ? Json(to(between(random, 0, 30), 1)) : Json{{"up_to", 15}};
  if (one_in(random, 5))
    out["extend_trailing_edge"] = one_in(random, 2) ? Json(to(between(random, -10, 30), 1)) : Json{{"up_to", 20}};
  if (one_in(random, 6)) out["keep"] = {to(between(random, 0.05, 0.5), 0.01), to(between(random, 0.4, 0.95), 0.01)};
  if (one_in(random, 6)) out["leading_edge"] = "leave";
  if (one_in(random, 6)) out["max_removal"] = to(between(random, 0, 4), 0.5);
  if (one_in(random, 6)) out["no_cut"] = {Json{{"down", {0, 200}}, {"x", {0, to(chord / 3, 1)}}}};
  if (one_in(random, 3))
    out["spanwise"] = one_of<std::string>(random, std::array<std::string, 3>{"fair", "straight", "as-measured"});
  return out;
}

std::string random_job(Random& random) {
  const std::size_t stations = 1 + random() % 4;
  const double chord = std::exp(between(random, std::log(60.0), std::log(1500.0))), taper = between(random, 0.4, 1.2),
               span = between(random, 50, 2000);
  const double ratio = between(random, 0.03, 0.25);
  const auto way = one_of<std::string>(
      random, std::array<std::string, 5>{"half-breadths", "half-breadths", "half-breadths", "thickness", "gaps"});
  Json job{{"job", "Invented wader <&> \"nr\" " + std::to_string(random() % 1000)}, {"stations", Json::array()}};
  for (std::size_t k = 0; k < stations; ++k) {
    const double part = stations == 1 ? 0 : static_cast<double>(k) / static_cast<double>(stations - 1);
    job["stations"].push_back(random_station(random, k, to(part * span, 1), chord * (1 + (taper - 1) * part), ratio, way));
  }
  if (one_in(random, 2)) job["target"] = random_target(random, chord);
  if (one_in(random, 3)) job["reading_error"] = to(between(random, 0.1, 3), 0.1);
  if (one_in(random, 3)) job["bottom"] = to(span * between(random, 0.9, 1.3), 1);
  if (one_in(random, 4)) job["speed"] = to(between(random, 1, 12), 0.5);
  if (one_in(random, 4)) job["coating_to_strip"] = to(between(random, 0, 1.5), 0.1);
  if (one_in(random, 3)) {
    job["coats"] = {
        Json{{"name", "cloth"},
             {"thickness", to(between(random, 0.1, 1), 0.05)},
             {"layers", 1 + random() % 3},
             {"stage", "glass"}},
        Json{{"name", "barrier"}, {"dry_film_um", 60}, {"layers", 4}, {"volume_solids_percent", 60}, {"stage", "paint"}}};
  }
  if (one_in(random, 3)) {
    job["print"] = {
        {"paper", one_of<std::string>(random, std::array<std::string, 6>{"A4", "Letter", "A3", "both", "roll-610", "roll-914"})},
        {"margin", to(between(random, 0, 25), 1)},
        {"overlap", to(between(random, 5, 50), 1)}};
  }
  return job.dump(1);
}

/// Something broken: a number, a byte, a line.
std::string broken_once(Random& random, std::string text) {
  static const std::array<std::string, 16> numbers{"0",      "-1", "1e308", "-1e308", "1e-308", "nan",    "inf",  "99999",
                                                   "0.0001", "-0", "1e",    "0x10",   "1,5",    "\"12\"", "null", "4294967296"};
  static const std::array<std::string, 10> pieces{"\"", "{", "}", "[", "]", ",", ":", "\xef\xbb\xbf", "\xff", "// "};
  if (text.empty()) return text;
  const std::size_t at = random() % text.size();
  switch (random() % 6) {
    case 0:
    case 1: {
      std::size_t from = text.find_first_of("0123456789", at);
      if (from == std::string::npos) return text;
      return text.replace(from, std::min(text.find_first_not_of("0123456789.", from), text.size()) - from,
                          one_of(random, numbers));
    }
    case 2: text[at] = static_cast<char>(random() % 256); return text;
    case 3: return text.insert(at, one_of(random, pieces));
    case 4: return text.erase(at, 1 + random() % 30);
    default: {
      const std::size_t end = std::min(text.find('\n', at), text.size() - 1),
                        start = end == 0 ? 0 : text.rfind('\n', end - 1) + 1;
      return text.insert(start, text.substr(start, end + 1 - start));
    }
  }
}

class Trial {
 public:
  Trial() : folder_(fs::temp_directory_path() / ("fairblade-hostile-" + std::to_string(::getpid()))) {
    fs::create_directories(folder_);
  }
  ~Trial() { fs::remove_all(folder_); }
  const fs::path& folder() const { return folder_; }

  void run(const fs::path& job) {
    const fs::path results = folder_ / "out";
    fs::remove_all(results);
    std::ostringstream out, err;
    const int status = fairblade::cli::run({"plan", job.string(), "-o", results.string()}, out, err);
    if (status == 2) {
      ++refused_;
      fuzz::judge_refusal(err.str());
      if (err.str().empty()) fuzz::broken("refused without a word");
      if (fs::exists(results)) fuzz::broken("refused, and results written");
      return;
    }
    if (status != 0) fuzz::broken("exit status " + std::to_string(status) + ": " + err.str());
    ++planned_;
    const std::string given = bytes_of(job);
    fuzz::judge_file("screen", out.str(), given);
    for (const auto& one : fs::recursive_directory_iterator(results)) {
      if (one.is_regular_file()) fuzz::judge_file(one.path().string(), bytes_of(one.path()), given);
    }
  }
  void tell(const char* what) const { std::cout << what << ": " << planned_ << " planned, " << refused_ << " refused\n"; }

 private:
  fs::path folder_;
  std::size_t planned_ = 0, refused_ = 0;
};

void random_jobs(std::size_t count, unsigned seed) {
  Trial trial;
  for (std::size_t k = 0; k < count; ++k) {
    Random random(seed + static_cast<unsigned>(k));
    const fs::path job = trial.folder() / "job.json";
    std::ofstream(job, std::ios::binary) << random_job(random);
    std::cerr << "job of seed " << seed + k << '\r' << std::flush;  // the last that is seen is the one that broke
    trial.run(job);
  }
  trial.tell("random jobs");
}

void mutants(std::size_t count, unsigned seed) {
  Trial trial;
  for (std::size_t k = 0; k < count; ++k) {
    Random random(seed + static_cast<unsigned>(k));
    const std::string name = one_of<std::string>(random, std::array<std::string, 3>{"whimbrel", "turnstone", "dunlin"});
    const fs::path copy = trial.folder() / "profile";
    fs::remove_all(copy);
    fs::copy(fs::path(PROFILES_DIR) / name, copy);
    std::vector<fs::path> files;
    for (const auto& one : fs::directory_iterator(copy)) {
      if (one.path().extension() == ".json" || one.path().extension() == ".csv") files.push_back(one.path());
    }
    std::sort(files.begin(), files.end());
    const fs::path chosen = files[random() % files.size()];
    std::string text = bytes_of(chosen);
    for (std::size_t times = 1 + random() % 3; times > 0; --times) text = broken_once(random, std::move(text));
    std::ofstream(chosen, std::ios::binary | std::ios::trunc) << text;
    std::cerr << "mutant of seed " << seed + k << '\r' << std::flush;
    trial.run(copy / (name + ".json"));
  }
  trial.tell("mutants");
}

void replay(const fs::path& path) {
  const std::string bytes = bytes_of(path);
  fuzz::job_reader(bytes);
  fuzz::csv_reader(bytes);
  fuzz::whole_plan(bytes);
  fuzz::frozen_plan(bytes);
}

}  // namespace

int main(int argc, char** argv) {
  std::size_t jobs = 0, changed = 0, replayed = 0;
  unsigned seed = 1;
  for (int k = 1; k < argc; ++k) {
    const bool more = k + 1 < argc;
    if (more && std::strcmp(argv[k], "--jobs") == 0) jobs = std::strtoul(argv[++k], nullptr, 10);
    else if (more && std::strcmp(argv[k], "--mutants") == 0) changed = std::strtoul(argv[++k], nullptr, 10);
    else if (more && std::strcmp(argv[k], "--seed") == 0) seed = static_cast<unsigned>(std::strtoul(argv[++k], nullptr, 10));
    else if (std::strcmp(argv[k], "--replay") == 0) {
      while (++k < argc) {
        if (!fs::is_directory(argv[k])) replay(argv[k]), ++replayed;
        else
          for (const auto& one : fs::recursive_directory_iterator(argv[k]))
            if (one.is_regular_file()) replay(one.path()), ++replayed;
      }
      std::cout << replayed << " files replayed\n";
    } else {
      std::cerr << "hostile [--jobs N] [--mutants N] [--seed S] | --replay FILE...\n";
      return 2;
    }
  }
  if (jobs > 0) random_jobs(jobs, seed);
  if (changed > 0) mutants(changed, seed);
  return 0;
}
