#include "emit/one_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "emit/svg.hpp"

namespace fairblade::emit {
namespace {

namespace fs = std::filesystem;

Fault failed(const std::string& path, int error) {
  return {{path, 0}, std::string("cannot be written: ") + std::strerror(error), "see its folder, its permissions and the room on the disk"};
}

/// Writes and syncs; 0, or errno.
int write_new(const std::string& path, const std::string& bytes) {
  const int handle = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (handle < 0) return errno;
  int error = 0;
  for (std::size_t at = 0; at < bytes.size() && error == 0;) {
    const ssize_t written = ::write(handle, bytes.data() + at, bytes.size() - at);
    if (written >= 0) at += static_cast<std::size_t>(written);
    else if (errno != EINTR) error = errno;
  }
  if (error == 0 && ::fsync(handle) != 0) error = errno;
  if (::close(handle) != 0 && error == 0) error = errno;
  return error;
}

bool ours(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::string head(200, '\0');
  in.read(head.data(), static_cast<std::streamsize>(head.size()));
  return head.find(drawing_signature) != std::string::npos;
}

}  // namespace

std::optional<Fault> write_drawing(const std::string& path, const std::string& bytes) {
  std::error_code error;
  const fs::file_type there = fs::symlink_status(path, error).type();
  if (there == fs::file_type::directory) return Fault{{path, 0}, "this is a folder", "name a file"};
  if (there == fs::file_type::regular && !ours(path)) {
    return Fault{{path, 0}, "there is a file of another kind under this name", "give another name, or move that file"};
  }
  if (there != fs::file_type::regular && there != fs::file_type::not_found) return Fault{{path, 0}, "this is not an ordinary file", "give another name"};
  const std::string fresh = (fs::path(path).parent_path() / (".fairblade-" + std::to_string(::getpid()) + ".svg")).string();
  int failure = write_new(fresh, bytes);
  if (failure == 0 && ::rename(fresh.c_str(), path.c_str()) != 0) failure = errno;
  if (failure == 0) return std::nullopt;
  if (failure != EEXIST) ::unlink(fresh.c_str());
  return failed(path, failure);
}

}  // namespace fairblade::emit
