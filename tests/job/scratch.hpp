// A folder that lasts as long as one test, to write jobs into.
#pragma once
#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include "job/job.hpp"

struct Scratch {
  std::filesystem::path folder;
  Scratch() {
    static int count = 0;
    const auto now = std::chrono::steady_clock::now().time_since_epoch().count();
    folder = std::filesystem::temp_directory_path() / ("fairblade-job-" + std::to_string(now) + "-" + std::to_string(++count));
    std::filesystem::create_directories(folder);
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  std::string write(const std::string& name, std::string_view text) const {
    const std::string path = (folder / name).string();
    std::ofstream(path, std::ios::binary) << text;
    return path;
  }
  fairblade::Outcome<fairblade::job::Job> read(const std::string& name, std::string_view text,
                                               const std::vector<fairblade::job::Override>& overrides = {}) const {
    return fairblade::job::read_job(write(name, text), overrides);
  }
};

/// The faults, one a line, with the scratch folder taken out; empty when the job was taken.
inline std::string faults_of(const fairblade::Outcome<fairblade::job::Job>& outcome, const std::string& folder = "") {
  std::string out;
  for (const fairblade::Fault& fault : outcome.faults()) {
    std::string line = fairblade::one_line(fault);
    for (std::size_t at; !folder.empty() && (at = line.find(folder + "/")) != std::string::npos;)
      line.erase(at, folder.size() + 1);
    out += (out.empty() ? "" : "\n") + line;
  }
  return out;
}
