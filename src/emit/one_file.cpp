#include "emit/one_file.hpp"

#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "emit/beside.hpp"
#include "emit/svg.hpp"

namespace fairblade::emit {
namespace {

namespace fs = std::filesystem;

Fault failed(const std::string& path, const std::string& why) {
  return {{path, 0}, "cannot be written: " + why, "see its folder, its permissions and the room on the disk"};
}
Fault failed(const std::string& path, int error) { return failed(path, std::string(std::strerror(error))); }
Fault taken(const std::string& path, const char* what) { return {{path, 0}, what, "give another name, or move it away first"}; }
constexpr const char* there_already = "is there already, and would be lost";

/// A whole, synced file beside `path`, hidden; it is gone at the end unless it was renamed.
class Draft {
 public:
  ~Draft() {
    if (!name_.empty()) ::unlink(name_.c_str());
  }
  std::optional<Fault> write(const std::string& path, const std::string& bytes) {
    const fs::path parent = fs::path(path).has_parent_path() ? fs::path(path).parent_path() : fs::path(".");
    Handle turn;
    Trouble trouble = lock_parent(parent, turn);
    if (!trouble) {
      clear_leftovers(parent);
      trouble = new_file_beside(parent, name_, alive_);
      if (trouble) name_.clear();
      turn.close();
    }
    if (!trouble) trouble = write_all(alive_.number(), bytes, path);
    if (trouble) return failed(path, *trouble);
    return {};
  }
  const char* name() const { return name_.c_str(); }

 private:
  fs::path name_;
  Handle alive_;
};

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
  // A drawing of ours too, but not one to lose.
  const fs::path parent = fs::absolute(path, error).lexically_normal().parent_path();
  for (const fs::path& folder : {parent, parent.parent_path()}) {
    if (there == fs::file_type::regular && fs::exists(folder / "plan.json", error)) {
      return Fault{{path, 0}, "this is a drawing of the plan in " + folder.filename().string(), "give another name"};
    }
  }
  if (there != fs::file_type::regular && there != fs::file_type::not_found)
    return Fault{{path, 0}, "this is not an ordinary file", "give another name"};
  Draft draft;
  if (auto fault = draft.write(path, bytes)) return fault;
  if (::rename(draft.name(), path.c_str()) != 0) return failed(path, errno);
  return std::nullopt;
}

std::optional<Fault> judge_new_file(const std::string& path) {
  if (path.empty() || path.back() == '/' || path.find('\0') != std::string::npos) {
    return Fault{{path, 0}, "is not a name for a file", "name one that is not there yet"};
  }
  std::error_code error;
  const fs::file_type there = fs::symlink_status(path, error).type();
  if (there == fs::file_type::not_found || there == fs::file_type::none) return std::nullopt;
  return taken(path, there == fs::file_type::directory ? "is a folder" : there_already);
}

NewFile::~NewFile() {
  if (!path_.empty()) ::unlink(path_.c_str());
}

std::optional<Fault> NewFile::write(const std::string& path, const std::string& bytes) {
  if (auto fault = judge_new_file(path)) return fault;
  Draft draft;
  if (auto fault = draft.write(path, bytes)) return fault;
  // A second name takes no other's place. Where the file system gives none, judge_new_file has just looked.
  if (::link(draft.name(), path.c_str()) != 0) {
    const int error = errno;
    if (error == EEXIST) return taken(path, there_already);
    const bool no_links = error == EPERM || error == ENOSYS || error == EOPNOTSUPP || error == EMLINK;
    if (!no_links || ::rename(draft.name(), path.c_str()) != 0) return failed(path, error);
  }
  path_ = path;
  return std::nullopt;
}

}  // namespace fairblade::emit
