// Writing one file all or nothing. Verbs: write_drawing, judge_new_file, NewFile's own.
#pragma once
#include <optional>
#include <string>

#include "base/fault.hpp"

namespace fairblade::emit {

/// The bytes of a drawing under that name: written beside it and renamed, so that an earlier one stays whole if it fails.
/// Refused: a folder, or a file that is no drawing of ours.
std::optional<Fault> write_drawing(const std::string& path, const std::string& bytes);

/// Why no new file can have that name: there is something under it already, or it is none.
std::optional<Fault> judge_new_file(const std::string& path);

/// A file that was not there before, whole or not at all, and gone again unless it is kept.
class NewFile {
 public:
  NewFile() = default;
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;
  ~NewFile();
  /// Nothing that stands under the name is ever replaced.
  std::optional<Fault> write(const std::string& path, const std::string& bytes);
  void keep() { path_.clear(); }

 private:
  std::string path_;
};

}  // namespace fairblade::emit
