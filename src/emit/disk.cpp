#include "emit/disk.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <cstdio>
#include <system_error>
#include <thread>
#include <vector>

#ifdef __linux__
#include <linux/fs.h>
#include <sys/syscall.h>
#endif

namespace fs = std::filesystem;

namespace fairblade::emit {

void waiting_together(std::size_t count, const std::function<void(std::size_t)>& work) {
  constexpr std::size_t most = 8, enough = 8;  // threads; pieces that are worth one
  std::atomic<std::size_t> next = 0;
  const auto serve = [&] {
    for (std::size_t k = next++; k < count; k = next++) work(k);
  };
  std::vector<std::thread> others;
  try {
    while (others.size() + 1 < std::min(most, count / enough)) others.emplace_back(serve);
  } catch (const std::system_error&) {
    // No more threads to be had: those that there are do the work.
  }
  serve();
  for (std::thread& one : others) one.join();
}

void remove_tree(const fs::path& tree) {
  std::error_code error;
  std::vector<fs::path> files;
  fs::recursive_directory_iterator entry(tree, error);
  for (; !error && entry != fs::recursive_directory_iterator(); entry.increment(error)) {
    if (entry->symlink_status(error).type() != fs::file_type::directory) files.push_back(entry->path());
  }
  waiting_together(files.size(), [&](std::size_t k) { ::unlink(files[k].c_str()); });
  fs::remove_all(tree, error);
}

int exchange(const fs::path& a, const fs::path& b) {
#if defined(__linux__) && defined(SYS_renameat2) && defined(RENAME_EXCHANGE)
  return static_cast<int>(::syscall(SYS_renameat2, AT_FDCWD, a.c_str(), AT_FDCWD, b.c_str(), RENAME_EXCHANGE));
#else
  (void)a, (void)b;
  errno = ENOSYS;
  return -1;
#endif
}

}  // namespace fairblade::emit
