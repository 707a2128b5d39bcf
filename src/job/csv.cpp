#include "job/csv.hpp"

#include <algorithm>

#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

constexpr int deepest_header = 1000;  // rows

std::string column_name(std::string_view cell) {
  std::string out(without_blanks(cell));
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
    if (c == ' ' || c == '-') c = '_';
  }
  return out;
}

}  // namespace

bool CsvRows::next(std::vector<std::string_view>& cells) {
  while (!rest_.empty()) {
    const std::size_t end = std::min(rest_.find_first_of("\r\n"), rest_.size());
    const std::string_view row = rest_.substr(0, end);
    const bool crlf = rest_.substr(end).starts_with("\r\n");
    rest_.remove_prefix(std::min(end + (crlf ? 2 : 1), rest_.size()));
    ++line_;
    split(row, cells);
    if (std::any_of(cells.begin(), cells.end(), [](std::string_view cell) { return !cell.empty(); })) return true;
  }
  return false;
}

void CsvRows::split(std::string_view row, std::vector<std::string_view>& cells) {
  cells.clear();
  quote_left_open_ = false;
  for (std::size_t at = 0;; ++at) {
    while (at < row.size() && row[at] == ' ') ++at;
    if (at < row.size() && row[at] == '"') {
      cells.push_back(quoted_cell(row, at));
    } else {
      const std::size_t end = std::min(row.find(delimiter_, at), row.size());
      cells.push_back(without_blanks(row.substr(at, end - at)));
      at = end;
    }
    if (at >= row.size()) return;
  }
}

/// `at` stands on the opening quote, and afterwards on the delimiter or the row's end.
std::string_view CsvRows::quoted_cell(std::string_view row, std::size_t& at) {
  const std::size_t begin = at + 1;
  bool doubled = false;
  std::size_t end = begin;
  while (true) {
    end = row.find('"', end);
    if (end == std::string_view::npos) {
      quote_left_open_ = true;
      at = row.size();
      return without_blanks(row.substr(begin));
    }
    if (end + 1 >= row.size() || row[end + 1] != '"') break;
    doubled = true;
    end += 2;
  }
  std::string_view cell = row.substr(begin, end - begin);
  at = std::min(row.find(delimiter_, end), row.size());
  if (doubled) {
    std::string plain;
    for (std::size_t i = 0; i < cell.size(); ++i) {
      plain += cell[i];
      if (cell[i] == '"') ++i;
    }
    cell = unescaped_.emplace_back(std::move(plain));
  }
  return without_blanks(cell);
}

std::optional<CsvHeader> find_header(std::string_view text) {
  for (const char delimiter : {',', ';', '\t'}) {
    CsvHeader header;
    header.delimiter = delimiter;
    CsvRows rows(text, delimiter);
    std::vector<std::string_view> cells;
    for (int row = 0; row < deepest_header && rows.next(cells); ++row) {
      header.columns.clear();
      for (const std::string_view cell : cells) header.columns.push_back(column_name(cell));
      const auto has = [&](const char* name) {
        return std::find(header.columns.begin(), header.columns.end(), name) != header.columns.end();
      };
      if (has("station") && has("x")) {
        header.line = rows.line();
        return header;
      }
      KeyRow key{header.columns.front(), {}, rows.line()};
      for (std::size_t i = 1; i < cells.size(); ++i) {
        if (!cells[i].empty()) key.values.emplace_back(cells[i]);
      }
      header.keys.push_back(std::move(key));
    }
  }
  return std::nullopt;
}

}  // namespace fairblade::job
