// A folder of its own for one test, gone afterwards, and the command line run in this process.
#pragma once
#include <unistd.h>

#include <atomic>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "cli/cli.hpp"
#include "has.hpp"

namespace sandbox {

namespace fs = std::filesystem;

class Folder {
 public:
  Folder() {
    static std::atomic<int> count{0};
    path_ = fs::temp_directory_path() / ("fairblade-" + std::to_string(::getpid()) + "-" + std::to_string(count++));
    fs::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  std::string at(const std::string& name) const { return (path_ / name).string(); }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return at(name);
  }

 private:
  fs::path path_;
};

inline std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Every file below a folder, by its path there.
inline std::map<std::string, std::string> files_in(const std::string& folder) {
  std::map<std::string, std::string> out;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) out[fs::relative(entry.path(), folder).generic_string()] = bytes_of(entry.path());
  }
  return out;
}

struct Result {
  int status = 0;
  std::string out, err;
};

inline Result run(const std::vector<std::string>& args) {
  std::ostringstream out, err;
  Result result;
  result.status = fairblade::cli::run(args, out, err);
  result.out = out.str();
  result.err = err.str();
  return result;
}

inline std::string profile(const std::string& name) { return std::string(PROFILES_DIR) + "/" + name + "/" + name + ".json"; }

}  // namespace sandbox
