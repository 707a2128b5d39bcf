#include "emit/folder.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cassert>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <numeric>
#include <set>
#include <span>
#include <string_view>
#include <utility>

#include "base/side_by_side.hpp"
#include "emit/beside.hpp"
#include "emit/disk.hpp"
#include "emit/svg.hpp"

namespace fs = std::filesystem;

namespace fairblade::emit {
namespace {

/// A new file; an existing one is never overwritten. What is written is on its way to the disk; the handle stays open.
Trouble write_file(const fs::path& path, const File& file, Handle& handle) {
  handle = Handle(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
  if (handle.number() < 0) return trouble("cannot create", path, errno);
  Trouble result = write_some(handle.number(), file.bytes, path);
  for (std::size_t k = 0; k < file.pieces && !result; ++k) result = write_some(handle.number(), file.piece(k), path);
  if (!result) begin_sync(handle.number());
  return result;
}

/// Waits until it is there.
Trouble finish_file(const fs::path& path, Handle& handle) {
  Trouble result = sync_file(handle.number(), path);
  if (handle.close() != 0 && !result) result = trouble("cannot write", path, errno);
  return result;
}

/// The first bytes of a file, or nothing when it cannot be read.
std::string head_of(const fs::path& path, std::size_t count) {
  std::string out(count, '\0');
  const int handle = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (handle < 0) return {};
  const ssize_t got = ::read(handle, out.data(), count);
  ::close(handle);
  out.resize(got > 0 ? static_cast<std::size_t>(got) : 0);
  return out;
}

bool safe(const std::string& relative) {
  const fs::path path(relative);
  if (relative.empty() || path.is_absolute() || relative.back() == '/') return false;
  for (const fs::path& part : path) {
    if (part == "." || part == ".." || part.empty()) return false;
  }
  return true;
}

/// A drawing of an earlier run that this one does not make again, such as one of a station since renamed: left lying,
/// it would be cut out as if it were current.
bool stale_drawing(const fs::path& relative, const fs::path& path) {
  const std::string first = relative.begin() == relative.end() ? "" : relative.begin()->string();
  if (first != "sections" && first != "templates" && first != "pages") return false;
  return relative.extension() == ".svg" && head_of(path, 200).find(drawing_signature) != std::string::npos;
}

/// Removes what it was given unless told that all went well.
class Rollback {
 public:
  Rollback() = default;
  Rollback(const Rollback&) = delete;
  Rollback& operator=(const Rollback&) = delete;
  ~Rollback() {
    std::error_code ignored;
    if (!tree_.empty()) fs::remove_all(tree_, ignored);
    for (auto made = made_.rbegin(); made != made_.rend(); ++made) ::rmdir(made->c_str());
  }
  void tree(const fs::path& path) { tree_ = path; }
  void made(const fs::path& folder) { made_.push_back(folder); }
  void keep() {
    tree_.clear();
    made_.clear();
  }

 private:
  fs::path tree_;
  std::vector<fs::path> made_;
};

/// The folders above `folder`, made where they are missing.
Trouble make_parents(const fs::path& folder, Rollback& rollback) {
  const fs::path parent = folder.parent_path();
  if (parent.empty() || parent == folder) return {};
  struct stat info {};
  if (::stat(parent.c_str(), &info) == 0) {
    if (!S_ISDIR(info.st_mode)) return parent.string() + " is not a folder";
    return {};
  }
  if (errno != ENOENT) return trouble("cannot reach", parent, errno);
  if (Trouble above = make_parents(parent, rollback)) return above;
  if (::mkdir(parent.c_str(), 0777) != 0) {
    const int error = errno;
    if (error == EEXIST && fs::is_directory(parent)) return {};  // another run was quicker
    return trouble("cannot create", parent, error);
  }
  rollback.made(parent);
  return {};
}

/// Every one written, or the trouble of the first that was not.
Trouble write_some_files(const fs::path& into, std::span<const File> files) {
  std::vector<Handle> handles(files.size());
  std::vector<Trouble> troubles(files.size());
  std::atomic<bool> stop = false;
  // Those of many pieces first: nobody is to be left with one when the others have done.
  std::vector<std::size_t> turn(files.size());
  std::iota(turn.begin(), turn.end(), std::size_t{0});
  std::stable_sort(turn.begin(), turn.end(), [&](std::size_t a, std::size_t b) { return files[a].pieces > files[b].pieces; });
  side_by_side(files.size(), [&](std::size_t place) {
    if (stop) return;
    const std::size_t k = turn[place];
    try {
      troubles[k] = write_file(into / files[k].path, files[k], handles[k]);
    } catch (...) {  // a piece that cannot be made
      stop = true;
      throw;
    }
    if (troubles[k]) stop = true;
  });
  waiting_together(files.size(), [&](std::size_t k) {
    if (stop) return;
    troubles[k] = finish_file(into / files[k].path, handles[k]);
    if (troubles[k]) stop = true;
  });
  for (Trouble& failed : troubles) {
    if (failed) return std::move(failed);
  }
  return {};
}

Trouble write_files(const fs::path& into, const std::vector<File>& files) {
  std::set<fs::path> folders{into};
  for (const File& file : files) {
    assert(safe(file.path));
    if (!safe(file.path)) return "not a name for an output file: " + file.path;
    const fs::path path = into / file.path;
    std::error_code error;
    fs::create_directories(path.parent_path(), error);
    if (error) return trouble("cannot create", path.parent_path(), error.value());
    for (fs::path up = path.parent_path(); up != into; up = up.parent_path()) folders.insert(up);
  }
  // All are written before any is waited for, so that the disk works on them together: as many as may stand open.
  constexpr std::size_t open_at_once = 200;
  for (std::size_t from = 0; from < files.size(); from += open_at_once) {
    if (Trouble failed = write_some_files(into, std::span(files).subspan(from, std::min(open_at_once, files.size() - from)))) {
      return failed;
    }
  }
  for (const fs::path& folder : folders) {
    if (Trouble failed = sync_folder(folder)) return failed;
  }
  return {};
}

/// Puts one thing of the old folder into the new one, sharing its bytes where the file system can.
Trouble carry_one(const fs::path& from, const fs::path& to, fs::file_type type) {
  if (type == fs::file_type::regular || type == fs::file_type::symlink) {
    if (::linkat(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), 0) == 0) return {};
    std::error_code error;
    fs::copy(from, to, fs::copy_options::copy_symlinks, error);
    if (error) return trouble("cannot carry over", from, error.value());
    return {};
  }
  return from.string() + " is neither a file nor a folder, and cannot be carried over";
}

Trouble carry_over(const fs::path& old_folder, const fs::path& new_folder, const fs::path& relative) {
  std::error_code error;
  fs::directory_iterator entry(old_folder / relative, error);
  if (error) return trouble("cannot read", old_folder / relative, error.value());
  while (entry != fs::directory_iterator()) {
    const fs::path name = relative / entry->path().filename();
    const fs::path to = new_folder / name;
    const fs::file_type type = entry->symlink_status(error).type();
    const fs::file_type there = fs::symlink_status(to, error).type();
    if (type == fs::file_type::directory) {
      if (there == fs::file_type::not_found) {
        fs::create_directory(to, entry->path(), error);
        if (error) return trouble("cannot create", to, error.value());
      } else if (there != fs::file_type::directory) {
        return entry->path().string() + " is a folder where a result is to stand";
      }
      if (Trouble failed = carry_over(old_folder, new_folder, name)) return failed;
      if (there == fs::file_type::not_found && fs::is_empty(to, error) && !fs::is_empty(entry->path(), error)) {
        ::rmdir(to.c_str());  // held stale drawings only
      }
    } else if (there == fs::file_type::not_found && !stale_drawing(name, entry->path())) {
      if (Trouble failed = carry_one(entry->path(), to, type)) return failed;
    } else if (there == fs::file_type::directory) {
      return entry->path().string() + " is a file where a folder of results is to stand";
    }
    entry.increment(error);
    if (error) return trouble("cannot read", old_folder / relative, error.value());
  }
  return {};
}

/// Where the earlier results stand for a moment, where two folders cannot be swapped in one step.
fs::path aside_of(const fs::path& folder) { return folder.parent_path() / (".fairblade-old-" + folder.filename().string()); }

bool is_there(const fs::path& path) {
  struct stat info {};
  return ::lstat(path.c_str(), &info) == 0;
}

bool holds_earlier(const fs::path& folder, const ResultsKind& kind) {
  return head_of(folder / kind.file, 4096).find(kind.sign) != std::string::npos;
}

/// The new folder in the old one's place; `old_tree`: where the old one stands now.
Trouble swap_in(const fs::path& fresh, const fs::path& folder, fs::path& old_tree) {
  if (exchange(fresh, folder) == 0) {
    old_tree = fresh;
    return {};
  }
  if (errno != ENOSYS && errno != EINVAL) return trouble("cannot replace", folder, errno);
  const fs::path aside = aside_of(folder);
  if (::rename(folder.c_str(), aside.c_str()) != 0) return trouble("cannot replace", folder, errno);
  if (::rename(fresh.c_str(), folder.c_str()) != 0) {
    const int error = errno;
    ::rename(aside.c_str(), folder.c_str());
    return trouble("cannot replace", folder, error);
  }
  old_tree = aside;
  return {};
}

/// A run that was killed between the two renames left the earlier results aside: they are put back.
Trouble put_back(const fs::path& folder, const ResultsKind& kind, std::string& note) {
  const fs::path aside = aside_of(folder);
  if (!is_there(aside)) return {};
  if (!is_there(folder)) {
    if (::rename(aside.c_str(), folder.c_str()) != 0) return trouble("cannot put back", aside, errno);
    note = "an earlier run was cut off while it replaced this folder: what stood in it was put back";
  } else if (holds_earlier(folder, kind)) {  // the swap was done, the clearing was not
    std::error_code ignored;
    fs::remove_all(aside, ignored);
  }
  return {};
}

bool runs_inside(const fs::path& folder) {
  std::error_code error;
  fs::path here = fs::canonical(fs::current_path(error), error);
  for (; !error && !here.empty(); here = here.parent_path()) {
    if (here == folder) return true;
    if (here == here.parent_path()) break;
  }
  return false;
}

/// Why the folder that is there may not be replaced.
std::optional<Fault> refusal(const std::string& given, const fs::path& folder, const ResultsKind& kind) {
  const Place place{given, 0};
  std::error_code error;
  if (!fs::is_directory(folder, error)) {
    return Fault{place, "stands where the output folder should go, and is not a folder", "give another folder with -o"};
  }
  if (runs_inside(folder)) {
    return Fault{place, "is the folder that this command runs in, and would be swapped away from under it",
                 "run it from outside, or give another folder with -o"};
  }
  const bool empty = fs::is_empty(folder, error);
  if (error) return Fault{place, "cannot be read: " + error.message(), "give another folder with -o"};
  if (!empty && !holds_earlier(folder, kind)) {
    return Fault{place, "is not empty and holds no earlier " + std::string(kind.name), "give a new or an empty folder with -o"};
  }
  return {};
}

/// A link to a folder stays; what it points to is replaced. Nothing where the link leads nowhere.
std::optional<fs::path> real_folder(const fs::path& folder) {
  std::error_code error;
  if (!fs::is_symlink(fs::symlink_status(folder, error))) return is_there(folder) ? fs::canonical(folder, error) : folder;
  if (const fs::path real = fs::canonical(folder, error); !error) return real;
  const fs::path next = folder.parent_path() / fs::read_symlink(folder, error);
  if (!error && is_there(aside_of(next))) return next;  // it did, before a run was cut off
  return std::nullopt;
}

struct Swap {
  const std::string& given;
  const fs::path& folder;
  const ResultsKind& kind;
  fs::path fresh, old_tree;

  Fault failed(std::string what) const {
    return {{given, 0}, std::move(what), "nothing was changed; make room or give another folder with -o"};
  }
  /// Under lock_parent: what is there now may not have been there before.
  std::optional<Fault> into_place(Rollback& rollback) {
    if (!is_there(folder)) {
      if (::rename(fresh.c_str(), folder.c_str()) != 0) return failed(*trouble("cannot create", folder, errno));
      rollback.keep();
      return {};
    }
    if (auto refused = refusal(given, folder, kind)) return refused;
    if (Trouble trouble = carry_over(folder, fresh, {})) return failed(*trouble);
    struct stat info {};
    if (::stat(folder.c_str(), &info) == 0) ::chmod(fresh.c_str(), info.st_mode & 07777);
    if (Trouble trouble = swap_in(fresh, folder, old_tree)) return failed(*trouble);
    rollback.keep();
    return {};
  }
};

}  // namespace

File drawn(std::string path, drawing::Sheet sheet) {
  return drawn(std::move(path), std::make_shared<const drawing::Sheet>(std::move(sheet)));
}
File drawn(std::string path, std::shared_ptr<const drawing::Sheet> sheet) {
  return {std::move(path), {}, 1, [sheet = std::move(sheet)](std::size_t) { return to_svg(*sheet); }};
}
File drawn(std::string path, std::function<drawing::Sheet()> draw) {
  return {std::move(path), {}, 1, [draw = std::move(draw)](std::size_t) { return to_svg(draw()); }};
}

std::string whole(const File& file) {
  std::string out = file.bytes;
  for (std::size_t k = 0; k < file.pieces; ++k) out += file.piece(k);
  return out;
}

std::string whole(const std::vector<File>& files, std::string_view path) {
  const auto found = std::find_if(files.begin(), files.end(), [&](const File& one) { return one.path == path; });
  assert(found != files.end());
  return found == files.end() ? std::string() : whole(*found);
}

std::optional<Fault> write_folder(const std::string& given, const std::vector<File>& files, std::string* note,
                                  const ResultsKind& kind) {
  const Place place{given, 0};
  const Fault unnamed{place, "is not a name for an output folder", "give a folder with -o"};
  if (given.empty() || given.find('\0') != std::string::npos) return unnamed;
  std::error_code error;
  fs::path folder = fs::absolute(given, error).lexically_normal();
  if (error) return Fault{place, "cannot be reached: " + error.message(), "give another folder with -o"};
  if (!folder.has_filename()) folder = folder.parent_path();
  const auto real = real_folder(folder);
  if (!real) return Fault{place, "cannot be reached: it is a link that leads nowhere", "give another folder with -o"};
  folder = *real;
  if (folder == folder.parent_path()) return unnamed;

  Swap swap{given, folder, kind, {}, {}};
  const fs::path parent = folder.parent_path();
  std::string said;
  Handle turn, alive;  // alive: held on the fresh folder as long as this run lasts
  Rollback rollback;
  if (Trouble trouble = make_parents(folder, rollback)) return swap.failed(*trouble);
  if (Trouble trouble = lock_parent(parent, turn)) return swap.failed(*trouble);
  if (Trouble trouble = put_back(folder, kind, said)) return swap.failed(*trouble);
  if (note) *note = said;
  clear_leftovers(parent);
  if (is_there(folder)) {
    if (auto refused = refusal(given, folder, kind)) return refused;
  }
  if (Trouble trouble = new_folder_beside(parent, swap.fresh, alive)) return swap.failed(*trouble);
  rollback.tree(swap.fresh);
  turn.close();
  if (Trouble trouble = write_files(swap.fresh, files)) return swap.failed(*trouble);
  if (Trouble trouble = lock_parent(parent, turn)) return swap.failed(*trouble);
  if (auto fault = swap.into_place(rollback)) return fault;
  sync_folder(parent);
  turn.close();
  if (!swap.old_tree.empty()) remove_tree(swap.old_tree);
  return {};
}

}  // namespace fairblade::emit
