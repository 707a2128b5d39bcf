// Private to the job room. Product: a file's text, known to be UTF-8, without its byte-order mark.
// Verbs: read_text, TextInPieces' own.
#pragma once
#include <cstdint>
#include <fstream>
#include <optional>
#include <string>
#include <string_view>

#include "job/faults.hpp"

namespace fairblade::job {

/// The text of the file, or nothing and one fault. `largest` in bytes.
std::optional<std::string> read_text(const std::string& path, std::uintmax_t largest, Faults& faults);

/// A text too long to be held, such as the plan of a scanned blade: judged whole, then read from its beginning in pieces.
class TextInPieces {
 public:
  /// Or nothing and one fault, as for read_text.
  static std::optional<TextInPieces> open(const std::string& path, std::uintmax_t largest, Faults& faults);
  /// The next piece, as long as no other is asked for; empty at the end.
  std::string_view next();
  /// All of it, for words about a place in it.
  std::string whole();

 private:
  explicit TextInPieces(const std::string& path) : in_(path, std::ios::binary) {}
  void again();
  bool judge(const std::string& path, Faults& faults);

  std::ifstream in_;
  std::string piece_;
  bool begun_ = false;
};

}  // namespace fairblade::job
