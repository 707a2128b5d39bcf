// Product: all that was asked of a job, whether in a job file, a CSV or options, as one tree; and the job file that asks
// the same. Verbs: read_asked, ask_too, job_file_text.
#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "job/job.hpp"

namespace fairblade::job {

struct Node;

struct Asked {
  Job job;
  /// Of a job file: options under "target", readings in their stations. Only where it is to be written: of a scanned blade it
  /// would be most of the memory.
  std::shared_ptr<Node> tree;
};

/// As read_job.
Outcome<Asked> read_asked(const std::string& path, const std::vector<Override>& overrides, bool to_be_written);
/// A key such as "print.gauge_spacing" that an option set; the value in the job's unit. Nothing where there is no tree.
void ask_too(Asked& asked, std::string_view path, std::string_view value);

/// A job file that reads back to the same job. Each of `job`'s defaults stands in it as a comment, marked, with the value that
/// was used: without its slashes it is told. `remarks` go above it, a line each.
std::string job_file_text(const Node& tree, const Job& job, const std::vector<std::string>& remarks);

}  // namespace fairblade::job
