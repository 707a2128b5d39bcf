// Private to the report room. A text as one cell of a CSV. Verbs: csv_cell.
#pragma once
#include <string>

namespace fairblade::report {

/// RFC 4180: a cell with a comma, a quote or a line end stands in quotes, its own quotes doubled.
inline std::string csv_cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

}  // namespace fairblade::report
