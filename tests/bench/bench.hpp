// Benchmarks: what a kernel takes, beside a general-purpose reference that does the same work in the same run.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace bench {

/// A goal for ours/reference, or for ours alone in milliseconds; at most that.
struct Goal {
  std::optional<double> ratio, milliseconds;
};

struct Kernel {
  std::string name;              ///< "fit"
  std::string work;              ///< "both forms to 28 readings"
  std::function<double()> ours;  ///< returns something of the result, so that none of it can be left out
  std::string reference_name;    ///< empty: there is none
  std::function<double()> reference;
  Goal goal;
  std::string agreement;  ///< in words: how near the two results are
};

std::vector<Kernel> reading_kernels();
std::vector<Kernel> fit_kernels();
std::vector<Kernel> area_kernels();
std::vector<Kernel> flow_kernels();
std::vector<Kernel> drawing_kernels();
std::vector<Kernel> whole_kernels();

/// Every number in the file by std::from_chars; whatever is none is stepped over.
std::vector<double> bare_numbers(const std::string& path);
/// The same, added up.
double bare_loop(const std::string& path);

/// A folder for what the benchmarks write, empty at the start and gone at the end.
std::string scratch();

/// A scanned blade as a CSV that is a job: `stations` of `readings` places each, both sides. The same bytes every time.
std::string dense_csv(std::size_t stations, std::size_t readings);

}  // namespace bench
