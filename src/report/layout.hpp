// Private to the report room. Product: plain text in columns, for screens of fixed-width type.
// Verbs: columns_of, wrapped, and Table's own.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace fairblade::report {

constexpr std::size_t screen_columns = 100;

/// Characters, not bytes: accents and signs in UTF-8 count once.
std::size_t columns_of(std::string_view text);
/// Broken at spaces to so many columns; every line but the first begins with `indent` spaces.
std::string wrapped(std::string_view text, std::size_t indent, std::size_t columns = screen_columns);
/// A text of the owner's on one line: control characters become spaces.
std::string on_one_line(std::string_view text);

/// Cells under headings, each column as wide as its widest cell, two spaces between.
class Table {
 public:
  enum class Align { left, right };
  explicit Table(std::vector<Align> columns) : columns_(std::move(columns)) {}
  void row(std::vector<std::string> cells);
  std::string text() const;

 private:
  std::vector<Align> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace fairblade::report
