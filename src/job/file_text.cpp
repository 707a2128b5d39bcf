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

void not_readable(const std::string& path, Faults& faults) {
  faults.add({path, 0}, "the file cannot be read", "check its permissions");
}
void is_empty(const std::string& path, Faults& faults) {
  faults.add({path, 0}, "the file is empty", "put the job in it, or give another file");
}
void not_utf8(const std::string& path, int line, Faults& faults) {
  faults.add({path, line}, "a character here is not UTF-8", "save the file again as UTF-8 text");
}
/// JSON's reader takes one for the end of the text, and no sheet holds one.
void has_zero_byte(const std::string& path, int line, Faults& faults) {
  faults.add({path, line}, "a byte of value zero stands here, which no text holds", "save the file again as UTF-8 text");
}
int lines_in(std::string_view text) { return static_cast<int>(std::count(text.begin(), text.end(), '\n')); }
bool blank(std::string_view text) { return text.find_first_not_of(" \t\r\n") == std::string_view::npos; }

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
constexpr std::size_t piece_size = 1u << 20;
constexpr std::size_t longest_character = 4;  // bytes in UTF-8

}  // namespace

std::optional<std::string> read_text(const std::string& path, std::uintmax_t largest, Faults& faults) {
  std::uintmax_t size = 0;
  if (!plain_file(path, largest, size, faults)) return std::nullopt;
  std::ifstream in(path, std::ios::binary);
  std::string text(in ? static_cast<std::size_t>(size) : 0, '\0');
  if (in) in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!in) {
    not_readable(path, faults);
    return std::nullopt;
  }
  if (text.starts_with(byte_order_mark)) text.erase(0, byte_order_mark.size());
  if (blank(text)) {
    is_empty(path, faults);
    return std::nullopt;
  }
  const auto line_at = [&](std::size_t byte) { return 1 + lines_in(std::string_view(text).substr(0, byte)); };
  std::size_t bad = 0;
  if (!valid_utf8(text, bad)) {
    not_utf8(path, line_at(bad), faults);
    return std::nullopt;
  }
  if (const std::size_t zero = text.find('\0'); zero != std::string::npos) {
    has_zero_byte(path, line_at(zero), faults);
    return std::nullopt;
  }
  return text;
}

std::optional<TextInPieces> TextInPieces::open(const std::string& path, std::uintmax_t largest, Faults& faults) {
  std::uintmax_t size = 0;
  if (!plain_file(path, largest, size, faults)) return std::nullopt;
  TextInPieces out(path);
  if (!out.judge(path, faults)) return std::nullopt;
  return out;
}

bool TextInPieces::judge(const std::string& path, Faults& faults) {
  std::string held;  // from the first character that is not whole yet
  int line = 1;
  bool nothing = true;
  for (std::string_view more = next(); !more.empty(); more = next()) {
    held += more;
    nothing = nothing && blank(more);
    if (const std::size_t zero = held.find('\0'); zero != std::string::npos) {
      has_zero_byte(path, line + lines_in(std::string_view(held).substr(0, zero)), faults);
      break;
    }
    std::size_t sound = 0;
    if (valid_utf8(held, sound)) sound = held.size();
    else if (held.size() - sound >= longest_character) break;
    line += lines_in(std::string_view(held).substr(0, sound));
    held.erase(0, sound);
  }
  if (in_.bad() || !in_.is_open()) not_readable(path, faults);
  else if (nothing) is_empty(path, faults);
  else if (faults.none() && !held.empty()) {
    std::size_t bad = 0;
    valid_utf8(held, bad);
    not_utf8(path, line + lines_in(std::string_view(held).substr(0, bad)), faults);
  }
  again();
  return faults.none();
}

std::string_view TextInPieces::next() {
  piece_.resize(piece_size);
  in_.read(piece_.data(), static_cast<std::streamsize>(piece_.size()));
  piece_.resize(static_cast<std::size_t>(in_.gcount()));
  std::string_view out = piece_;
  if (!begun_ && out.starts_with(byte_order_mark)) out.remove_prefix(byte_order_mark.size());
  begun_ = true;
  return out;
}

std::string TextInPieces::whole() {
  again();
  std::string out;
  for (std::string_view more = next(); !more.empty(); more = next()) out += more;
  return out;
}

void TextInPieces::again() {
  in_.clear();
  in_.seekg(0);
  begun_ = false;
}

}  // namespace fairblade::job
