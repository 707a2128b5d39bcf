// The whole of `plan`, every file written: each demo rudder, and a scanned blade.
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <thread>

#include "bench/bench.hpp"
#include "cli/cli.hpp"

namespace bench {
namespace {

double plan(const std::string& job, const std::string& folder) {
  std::ostringstream out, err;
  const int status =
      fairblade::cli::run({"plan", job, "-o", scratch() + "/" + folder, "--trailing-edge-thickness", "4mm"}, out, err);
  if (status != 0) throw std::runtime_error(err.str());
  return static_cast<double>(out.str().size());
}

/// FAIRBLADE_BENCH_ROWS: of the scanned blade; 200 stations, 20,000 rows unless told.
std::size_t dense_rows() {
  const char* told = std::getenv("FAIRBLADE_BENCH_ROWS");
  return told == nullptr ? 20000 : static_cast<std::size_t>(std::strtoul(told, nullptr, 10));
}

/// Numbers that a row of readings has in one of plan's two tables, printed by std::to_chars and written, a piece at a time.
double print_bare(const std::vector<double>& numbers, const std::string& path, const std::array<const char*, 6>& words) {
  constexpr std::size_t piece = 1 << 20;
  std::ofstream file(path, std::ios::binary);
  std::string out;
  double bytes = 0;
  const auto number = [&out](double value) {
    char digits[32];
    out.append(digits, std::to_chars(digits, digits + sizeof digits, value).ptr);
  };
  const auto written = [&] {
    file.write(out.data(), static_cast<std::streamsize>(out.size()));
    bytes += static_cast<double>(out.size());
    out.clear();
  };
  const auto millionth = [](double value) { return std::trunc(value * 1e6) / 1e6; };
  for (std::size_t k = 0; k + 2 < numbers.size(); k += 3) {
    for (const std::size_t side : {1, 2}) {
      const double measured = numbers[k + side], target = millionth(0.97 * measured + 0.123456);
      out += words[0];
      number(numbers[k]);
      out.append(words[1]).append(side == 1 ? "port" : "starboard").append(words[2]);
      number(measured);
      out += words[3];
      number(target);
      out += words[4];
      number(millionth(target - measured));
      out += words[5];
    }
    if (out.size() > piece) written();
  }
  written();
  return bytes;
}

/// What nothing that writes plan.json's offsets and offsets.csv can do without: reading and printing, and nothing worked out.
double print_tables(const std::string& csv) {
  const auto numbers = bare_numbers(csv);
  double json = 0, table = 0;
  std::thread other([&] { table = print_bare(numbers, scratch() + "/bare.csv", {"S100,2000.000,", ",", ",", ",", ",", "\n"}); });
  json = print_bare(numbers, scratch() + "/bare.json",
                    {",\n  {\"x\": ", ", \"side\": \"", "\", \"measured\": ", ", \"target\": ", ", \"change\": ", "}"});
  other.join();
  return json + table;
}

}  // namespace

std::vector<Kernel> whole_kernels() {
  std::vector<Kernel> out;
  for (const std::string name : {"whimbrel", "turnstone", "dunlin"}) {
    const std::string job = PROFILES_DIR "/" + name + "/" + name + ".json";
    Goal goal;
    if (name == "whimbrel") goal.milliseconds = 50;
    out.push_back({"plan-" + name, "fairblade plan, all files written", [=] { return plan(job, name); }, "", {}, goal, ""});
  }
  const std::size_t rows = dense_rows();
  const std::string csv = scratch() + "/dense.csv";
  std::ofstream(csv, std::ios::binary) << dense_csv(200, rows / 200);
  out.push_back({"plan-dense",
                 "the same of 200 stations and " + std::to_string(rows) + " rows",
                 [=] { return plan(csv, "dense"); },
                 "a bare from_chars loop",
                 [=] { return bare_loop(csv); },
                 {5.0, {}},
                 ""});
  out.push_back({"tables-dense",
                 "its numbers read bare, and two tables of as many as plan's are printed bare and written: nothing worked out",
                 [=] { return print_tables(csv); },
                 "a bare from_chars loop",
                 [=] { return bare_loop(csv); },
                 {},
                 ""});
  return out;
}

}  // namespace bench
