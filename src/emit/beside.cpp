#include "emit/beside.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <string_view>
#include <thread>

namespace fs = std::filesystem;

namespace fairblade::emit {
namespace {

constexpr std::string_view prefix = ".fairblade-";
constexpr int most_names = 1000;

fs::path hidden_name(const fs::path& parent, int count) {
  return parent / (std::string(prefix) + std::to_string(::getpid()) + "-" + std::to_string(count));
}

/// .fairblade-PID-COUNT, as made here and by nobody else.
bool is_hidden_name(std::string_view name) {
  if (!name.starts_with(prefix)) return false;
  name.remove_prefix(prefix.size());
  const std::size_t dash = name.find('-');
  const auto digits = [](std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
  };
  return dash != std::string_view::npos && digits(name.substr(0, dash)) && digits(name.substr(dash + 1));
}

}  // namespace

Trouble trouble(const std::string& doing, const fs::path& path, int error) {
  return doing + " " + path.string() + ": " + std::strerror(error);
}

Handle& Handle::operator=(Handle&& other) noexcept {
  if (this != &other) {
    close();
    number_ = other.number_;
    other.number_ = -1;
  }
  return *this;
}

int Handle::close() {
  const int result = number_ < 0 ? 0 : ::close(number_);
  number_ = -1;
  return result;
}

Trouble lock_parent(const fs::path& parent, Handle& lock) {
  using namespace std::chrono;
  lock = Handle(::open(parent.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (lock.number() < 0) return errno == EACCES ? Trouble() : trouble("cannot open", parent, errno);  // may still be writable
  const auto end = steady_clock::now() + seconds(10);
  while (::flock(lock.number(), LOCK_EX | LOCK_NB) != 0) {
    if (errno != EWOULDBLOCK && errno != EINTR) return {};
    if (steady_clock::now() > end) return "another run is writing in " + parent.string() + " and does not end";
    std::this_thread::sleep_for(milliseconds(20));
  }
  return {};
}

void clear_leftovers(const fs::path& parent) {
  std::error_code error;
  for (fs::directory_iterator entry(parent, error); !error && entry != fs::directory_iterator(); entry.increment(error)) {
    if (!is_hidden_name(entry->path().filename().string())) continue;
    const Handle handle(::open(entry->path().c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
    if (handle.number() < 0 || ::flock(handle.number(), LOCK_EX | LOCK_NB) != 0) continue;  // its run lives
    std::error_code ignored;
    fs::remove_all(entry->path(), ignored);
  }
}

Trouble new_folder_beside(const fs::path& parent, fs::path& made, Handle& handle) {
  for (int count = 0; count < most_names; ++count) {
    made = hidden_name(parent, count);
    if (::mkdir(made.c_str(), 0777) == 0) {
      handle = Handle(::open(made.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
      if (handle.number() >= 0) ::flock(handle.number(), LOCK_EX | LOCK_NB);
      return {};
    }
    if (errno != EEXIST) return trouble("cannot create a folder in", parent, errno);
  }
  return trouble("cannot create a folder in", parent, EEXIST);
}

Trouble new_file_beside(const fs::path& parent, fs::path& made, Handle& handle) {
  for (int count = 0; count < most_names; ++count) {
    made = hidden_name(parent, count);
    handle = Handle(::open(made.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
    if (handle.number() >= 0) {
      ::flock(handle.number(), LOCK_EX | LOCK_NB);
      return {};
    }
    if (errno != EEXIST) return trouble("cannot create a file in", parent, errno);
  }
  return trouble("cannot create a file in", parent, EEXIST);
}

Trouble write_some(int handle, std::string_view bytes, const fs::path& path) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(handle, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return trouble("cannot write", path, errno);
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return {};
}

Trouble write_all(int handle, std::string_view bytes, const fs::path& path) {
  if (Trouble failed = write_some(handle, bytes, path)) return failed;
  return sync_file(handle, path);
}

void begin_sync(int handle) {
#ifdef SYNC_FILE_RANGE_WRITE
  ::sync_file_range(handle, 0, 0, SYNC_FILE_RANGE_WRITE);
#else
  (void)handle;
#endif
}

Trouble sync_file(int handle, const fs::path& path) {
  if (::fsync(handle) != 0) return trouble("cannot write", path, errno);
  return {};
}

Trouble sync_folder(const fs::path& folder) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return trouble("cannot open", folder, errno);
  const int result = ::fsync(handle);
  const int error = errno;
  ::close(handle);
  // Some file systems cannot sync a folder; the files themselves are synced.
  if (result != 0 && error != EINVAL && error != EROFS) return trouble("cannot sync", folder, error);
  return {};
}

}  // namespace fairblade::emit
