#include "report/layout.hpp"

#include <algorithm>
#include <cassert>

namespace fairblade::report {

std::size_t columns_of(std::string_view text) {
  const auto begins_character = [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; };
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_character));
}

std::string on_one_line(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f) c = ' ';
  }
  return out;
}

std::string wrapped(std::string_view text, std::size_t indent, std::size_t columns) {
  std::string out;
  std::size_t column = 0;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = text.find(' ', at + 1);
    if (end == std::string_view::npos) end = text.size();
    const std::string_view word = text.substr(at, end - at);  // with the space before it
    const std::size_t width = columns_of(word);
    if (column > indent && column + width > columns && word.front() == ' ') {
      out += '\n' + std::string(indent, ' ') + std::string(word.substr(1));
      column = indent + width - 1;
    } else {
      out += word;
      column += width;
    }
    at = end;
  }
  return out + '\n';
}

void Table::row(std::vector<std::string> cells) {
  assert(cells.size() == columns_.size());
  rows_.push_back(std::move(cells));
}

std::string Table::text() const {
  std::vector<std::size_t> widths(columns_.size(), 0);
  for (const auto& row : rows_) {
    for (std::size_t k = 0; k < row.size(); ++k) widths[k] = std::max(widths[k], columns_of(row[k]));
  }
  std::string out;
  for (const auto& row : rows_) {
    std::string line;
    for (std::size_t k = 0; k < row.size(); ++k) {
      if (k > 0) line += "  ";
      const std::string gap(widths[k] - columns_of(row[k]), ' ');
      line += columns_[k] == Align::left ? row[k] + gap : gap + row[k];
    }
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + '\n';
  }
  return out;
}

}  // namespace fairblade::report
