// Private to the job room. Product: rows of cells out of CSV text, in place, with their lines.
// Verbs: CsvRows::next, find_header, likely_header.
#pragma once
#include <algorithm>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fairblade::job {

/// What is wrong with the quotes of a row.
enum class QuoteTrouble { none, left_open, text_after };

/// Walks over the text; the cells point into it, so the text must outlive them.
class CsvRows {
 public:
  CsvRows(std::string_view text, char delimiter)
      : rest_(text), whole_(text.size()), newline_(std::min(text.find('\n'), text.size())), delimiter_(delimiter) {}
  /// The next row that is not blank; false at the end. Ends of line: LF, CRLF or CR. A quoted cell may run over a few
  /// lines where its end is plain to see.
  bool next(std::vector<std::string_view>& cells);
  int line() const { return line_; }  ///< where the row begins
  QuoteTrouble quotes() const { return quotes_; }

 private:
  std::size_t line_end();
  void split(std::string_view row, std::vector<std::string_view>& cells);
  std::string_view quoted_cell(std::string_view row, std::size_t& at);
  void read_on(std::string_view row, std::vector<std::string_view>& cells);

  std::string_view rest_;
  std::size_t whole_, newline_;  ///< bytes of the text; of them before the next "\n"
  char delimiter_;
  int line_ = 0;
  int lines_taken_ = 0;  ///< of the row before
  QuoteTrouble quotes_ = QuoteTrouble::none;
  std::deque<std::string> unescaped_;  ///< cells in which "" stood for "
};

struct KeyRow {
  std::string key;
  std::vector<std::string> values;  ///< without empty ones
  int line = 0;
  bool gap = false;  ///< an empty cell stood between two values
};

/// "\"units\" stands twice (first on line 3)".
std::string stands_twice(const KeyRow& first);

/// What stands above the readings.
struct CsvHeader {
  char delimiter = ',';
  int line = 0;
  std::size_t cells = 0;             ///< of the header row, empty ones at its end among them
  std::vector<std::string> columns;  ///< as title_of names them; no empty ones at the end
  std::vector<std::string> units;    ///< beside each column: the unit that its title gives, or empty
  std::vector<KeyRow> keys;
};

/// The first row that holds both "station" and "x", however it is delimited.
std::optional<CsvHeader> find_header(std::string_view text);
/// Where there is none: the row that looks most like it, with two columns of ours at least.
std::optional<CsvHeader> likely_header(std::string_view text);

}  // namespace fairblade::job
