#include "base/fault.hpp"

namespace fairblade {
namespace {

void append_escaped(std::string& out, const std::string& text) {
  static const char* const digits = "0123456789abcdef";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte != 0x7f) {
      out += c;
    } else {
      out += "\\x";
      out += digits[byte >> 4];
      out += digits[byte & 15];
    }
  }
}

}  // namespace

std::string one_line(const Fault& fault) {
  std::string out;
  append_escaped(out, fault.place.file);
  if (fault.place.line > 0) {
    out += ':';
    out += std::to_string(fault.place.line);
  }
  out += ": ";
  append_escaped(out, fault.what);
  out += ": ";
  append_escaped(out, fault.remedy);
  return out;
}

}  // namespace fairblade
