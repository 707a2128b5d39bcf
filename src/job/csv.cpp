#include "job/csv.hpp"

#include <algorithm>

#include "job/csv_columns.hpp"
#include "job/numbers.hpp"
#include "job/tree.hpp"

namespace fairblade::job {
namespace {

constexpr int deepest_header = 1000;  // rows
constexpr int longest_cell = 20;      // lines that a quoted cell may run over: a note, or a title broken in two

/// "sep=;" on the first line, as spreadsheets write and read it: the delimiter.
std::optional<char> told_delimiter(std::string_view text) {
  const std::string_view row = without_blanks(text.substr(0, text.find_first_of("\r\n")));
  if (row == "sep=") return '\t';  // the tab went with the blanks
  if (row.size() != 5 || !(row.starts_with("sep=") || row.starts_with("SEP=") || row.starts_with("Sep="))) return std::nullopt;
  return row[4];
}

std::vector<char> delimiters_to_try(std::string_view text) {
  std::vector<char> out{',', ';', '\t'};
  if (const auto told = told_delimiter(text)) {
    std::erase(out, *told);
    out.insert(out.begin(), *told);
  }
  return out;
}

void take_titles(const std::vector<std::string_view>& cells, CsvHeader& header) {
  header.cells = cells.size();
  header.columns.clear();
  header.units.clear();
  for (const std::string_view cell : cells) {
    ColumnTitle title = title_of(cell);
    header.columns.push_back(std::move(title.name));
    header.units.push_back(std::move(title.unit));
  }
  while (header.columns.size() > 1 && header.columns.back().empty()) {
    header.columns.pop_back();
    header.units.pop_back();
  }
}

KeyRow key_row(const CsvHeader& header, const std::vector<std::string_view>& cells, int line) {
  KeyRow out{{}, {}, line, false};
  std::size_t i = 0;
  while (i + 1 < header.columns.size() && header.columns[i].empty()) ++i;  // a table may begin in the second column
  out.key = header.columns[i];
  bool empty = false;
  for (++i; i < cells.size(); ++i) {
    if (!cells[i].empty()) {
      out.gap = out.gap || (empty && !out.values.empty());
      out.values.emplace_back(cells[i]);
    }
    empty = cells[i].empty();
  }
  return out;
}

}  // namespace

/// Where the next line ends, by "\n", "\r\n" or "\r"; where the next "\n" stands is kept, for a file may have none.
std::size_t CsvRows::line_end() {
  const auto gone = whole_ - rest_.size();
  if (newline_ < gone) newline_ = gone + std::min(rest_.find('\n'), rest_.size());
  const std::size_t end = newline_ - gone;
  return std::min(rest_.substr(0, end).find('\r'), end);
}

bool CsvRows::next(std::vector<std::string_view>& cells) {
  while (!rest_.empty()) {
    const std::size_t end = line_end();
    const std::string_view row = rest_.substr(0, end);
    const bool crlf = rest_.substr(end).starts_with("\r\n");
    const std::string_view from_here = rest_;
    rest_.remove_prefix(std::min(end + (crlf ? 2 : 1), rest_.size()));
    line_ += 1 + lines_taken_;
    lines_taken_ = 0;
    split(row, cells);
    if (quotes_ == QuoteTrouble::left_open) read_on(from_here, cells);
    if (std::any_of(cells.begin(), cells.end(), [](std::string_view cell) { return !cell.empty(); })) return true;
  }
  return false;
}

/// A quote was left open: does the cell end on one of the next lines? If not, the row stays as it was.
void CsvRows::read_on(std::string_view from_here, std::vector<std::string_view>& cells) {
  const auto first = cells;
  std::string_view after = rest_;
  for (int more = 1; more <= longest_cell && !after.empty(); ++more) {
    const std::size_t end = std::min(after.find_first_of("\r\n"), after.size());
    const std::string_view row = from_here.substr(0, from_here.size() - after.size() + end);
    const bool crlf = after.substr(end).starts_with("\r\n");
    after.remove_prefix(std::min(end + (crlf ? 2 : 1), after.size()));
    split(row, cells);
    if (quotes_ == QuoteTrouble::left_open) continue;
    if (quotes_ != QuoteTrouble::none) break;
    rest_ = after;
    lines_taken_ = more;
    return;
  }
  cells = first;
  quotes_ = QuoteTrouble::left_open;
}

void CsvRows::split(std::string_view row, std::vector<std::string_view>& cells) {
  cells.clear();
  quotes_ = QuoteTrouble::none;
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
      quotes_ = QuoteTrouble::left_open;
      at = row.size();
      return without_blanks(row.substr(begin));
    }
    if (end + 1 >= row.size() || row[end + 1] != '"') break;
    doubled = true;
    end += 2;
  }
  std::string_view cell = row.substr(begin, end - begin);
  at = std::min(row.find(delimiter_, end), row.size());
  if (!without_blanks(row.substr(end + 1, at - end - 1)).empty()) quotes_ = QuoteTrouble::text_after;
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
  const bool told = told_delimiter(text).has_value();
  for (const char delimiter : delimiters_to_try(text)) {
    CsvHeader header;
    header.delimiter = delimiter;
    CsvRows rows(text, delimiter);
    std::vector<std::string_view> cells;
    for (int row = 0; row < deepest_header && rows.next(cells); ++row) {
      if (told && rows.line() == 1) continue;
      take_titles(cells, header);
      if (column_of(header.columns, "station") && column_of(header.columns, "x")) {
        header.line = rows.line();
        return header;
      }
      header.keys.push_back(key_row(header, cells, rows.line()));
    }
  }
  return std::nullopt;
}

std::string stands_twice(const KeyRow& first) {
  return in_quotes(first.key) + " stands twice (first on line " + std::to_string(first.line) + ")";
}

std::optional<CsvHeader> likely_header(std::string_view text) {
  std::optional<CsvHeader> out;
  std::size_t most = 1;
  for (const char delimiter : delimiters_to_try(text)) {
    CsvRows rows(text, delimiter);
    std::vector<std::string_view> cells;
    for (int row = 0; row < deepest_header && rows.next(cells); ++row) {
      CsvHeader header;
      header.delimiter = delimiter;
      header.line = rows.line();
      take_titles(cells, header);
      const auto ours = static_cast<std::size_t>(std::count_if(header.columns.begin(), header.columns.end(), is_column));
      if (ours <= most) continue;
      most = ours;
      out = std::move(header);
    }
  }
  return out;
}

}  // namespace fairblade::job
