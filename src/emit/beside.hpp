// Private to the emit room. Product: hidden names beside a result, where it is made before it takes its place. Each is
// locked (flock) while its run lives, so that what a killed run left behind can be told and cleared by the next.
// Verbs: lock_parent, clear_leftovers, new_folder_beside, new_file_beside.
#pragma once
#include <filesystem>
#include <optional>
#include <string>

namespace fairblade::emit {

/// What went wrong with one file or folder, in words; or nothing.
using Trouble = std::optional<std::string>;
Trouble trouble(const std::string& doing, const std::filesystem::path& path, int error);

/// An open handle, closed at the end and with it its lock.
class Handle {
 public:
  explicit Handle(int number = -1) : number_(number) {}
  Handle(Handle&& other) noexcept : number_(other.number_) { other.number_ = -1; }
  Handle& operator=(Handle&& other) noexcept;
  ~Handle() { close(); }
  int number() const { return number_; }
  int close();

 private:
  int number_;
};

/// Runs that make, swap and clear things in one folder take turns. Waits ten seconds at most; a file system that knows
/// no locks lets everybody pass.
Trouble lock_parent(const std::filesystem::path& parent, Handle& lock);
/// Removes what dead runs left in the folder; call it under lock_parent.
void clear_leftovers(const std::filesystem::path& parent);
/// Call these under lock_parent. `made` and its handle are set when there is no trouble.
Trouble new_folder_beside(const std::filesystem::path& parent, std::filesystem::path& made, Handle& handle);
Trouble new_file_beside(const std::filesystem::path& parent, std::filesystem::path& made, Handle& handle);

/// Writes and syncs; the handle stays open.
Trouble write_all(int handle, std::string_view bytes, const std::filesystem::path& path);
/// Not yet synced: more may follow.
Trouble write_some(int handle, std::string_view bytes, const std::filesystem::path& path);
/// Sets the disk to work on what was written, where the system can be told so, and does not wait.
void begin_sync(int handle);
/// Waits until it is on the disk.
Trouble sync_file(int handle, const std::filesystem::path& path);
/// Makes renames in it last. Some file systems cannot; that is no trouble.
Trouble sync_folder(const std::filesystem::path& folder);

}  // namespace fairblade::emit
