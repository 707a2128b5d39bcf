// The whole of `plan`, every file written: each demo rudder, and a scanned blade.
#include <cstdlib>
#include <fstream>
#include <sstream>

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
  return out;
}

}  // namespace bench
