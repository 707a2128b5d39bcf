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
  std::shared_ptr<Node> tree;  ///< of a job file: options under "target", readings in their stations
};

/// As read_job.
Outcome<Asked> read_asked(const std::string& path, const std::vector<Override>& overrides);
/// A key such as "print.gauge_spacing" that an option set; the value in the job's unit.
void ask_too(Asked& asked, std::string_view path, std::string_view value);

/// A job file that reads back to the same job. Each of `defaults` stands in it as a comment, marked, with the value that
/// was used: without its slashes it is told. `remarks` go above it, a line each.
std::string job_file_text(const Asked& asked, const std::vector<DefaultUsed>& defaults, const std::vector<std::string>& remarks);

}  // namespace fairblade::job
