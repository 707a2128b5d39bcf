#include "job/file_text.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "base/text.hpp"

namespace fairblade::job {
namespace {

namespace fs = std::filesystem;

/// Is there a plain file to open? Says so when there is not.
bool plain_file(const std::string& path, std::uintmax_t largest, std::uintmax_t& size, Faults& faults) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (path.empty() || status.type() == fs::file_type::not_found) {
    faults.add({path, 0}, "there is no such file", "check its name and folder");
    return false;
  }
  if (status.type() == fs::file_type::directory) {
    faults.add({path, 0}, "this is a folder, not a file", "give the job file or CSV inside it");
    return false;
  }
  if (error || status.type() == fs::file_type::none) {
    faults.add({path, 0}, "the file cannot be reached", "check its folder and your permissions");
    return false;
  }
  if (status.type() != fs::file_type::regular) {
    faults.add({path, 0}, "this is not an ordinary file", "save the data to a file and give that");
    return false;
  }
  size = fs::file_size(path, error);
  if (error) {
    faults.add({path, 0}, "the file cannot be read", "check its permissions");
    return false;
  }
  if (size > largest) {
    faults.add({path, 0}, "the file is larger than " + std::to_string(largest >> 20) + " MB",
               "check that it is the right one, or thin its readings");
    return false;
  }
  return true;
}

}  // namespace

std::optional<std::string> read_text(const std::string& path, std::uintmax_t largest, Faults& faults) {
  std::uintmax_t size = 0;
  if (!plain_file(path, largest, size, faults)) return std::nullopt;
  std::ifstream in(path, std::ios::binary);
  std::string text(in ? static_cast<std::size_t>(size) : 0, '\0');
  if (in) in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!in) {
    faults.add({path, 0}, "the file cannot be read", "check its permissions");
    return std::nullopt;
  }
  if (text.starts_with("\xef\xbb\xbf")) text.erase(0, 3);
  if (text.find_first_not_of(" \t\r\n") == std::string::npos) {
    faults.add({path, 0}, "the file is empty", "put the job in it, or give another file");
    return std::nullopt;
  }
  std::size_t bad = 0;
  if (!valid_utf8(text, bad)) {
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(bad), '\n');
    faults.add({path, static_cast<int>(line)}, "a character here is not UTF-8", "save the file again as UTF-8 text");
    return std::nullopt;
  }
  return text;
}

}  // namespace fairblade::job
