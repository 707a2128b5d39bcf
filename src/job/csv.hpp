// Private to the job room. Product: rows of cells out of CSV text, in place, with their lines.
// Verbs: CsvRows::next, find_header.
#pragma once
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fairblade::job {

/// Walks over the text; the cells point into it, so the text must outlive them.
class CsvRows {
 public:
  CsvRows(std::string_view text, char delimiter) : rest_(text), delimiter_(delimiter) {}
  /// The next row that is not blank; false at the end. Ends of line: LF, CRLF or CR.
  bool next(std::vector<std::string_view>& cells);
  int line() const { return line_; }
  /// A quoted cell that does not end on its line.
  bool quote_left_open() const { return quote_left_open_; }

 private:
  void split(std::string_view row, std::vector<std::string_view>& cells);
  std::string_view quoted_cell(std::string_view row, std::size_t& at);

  std::string_view rest_;
  char delimiter_;
  int line_ = 0;
  bool quote_left_open_ = false;
  std::deque<std::string> unescaped_;  ///< cells in which "" stood for "
};

struct KeyRow {
  std::string key;
  std::vector<std::string> values;
  int line = 0;
};

/// What stands above the readings.
struct CsvHeader {
  char delimiter = ',';
  int line = 0;
  std::vector<std::string> columns;  ///< lower case, blanks and hyphens as underscores
  std::vector<KeyRow> keys;
};

/// The first row that holds both "station" and "x", however it is delimited.
std::optional<CsvHeader> find_header(std::string_view text);

}  // namespace fairblade::job
