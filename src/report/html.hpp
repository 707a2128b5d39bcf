// Product: pieces of a page as text, HTML that is well-formed XML too. Verbs: one a piece.
// What takes `words` takes plain text and escapes it; what takes `html` takes pieces made here.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"

namespace fairblade::report::html {

std::string text(std::string_view words);
std::string paragraph(std::string_view words);
/// A paragraph of a class of the page's style.
std::string paragraph(std::string_view words, std::string_view style);
std::string list(const std::vector<std::string>& words);
/// A part of the page under its heading; `id` is ours, letters and '-'. On paper `new_page` begins a sheet.
std::string part(std::string_view id, std::string_view heading, std::string_view html, bool new_page = false);
std::string subheading(std::string_view words);

struct Cell {
  std::string html;
  bool number = false;
};
Cell words(std::string_view words);
/// A number, with its unit or without; it does not break across lines.
Cell number(std::string_view words);
/// mm to a tenth, the column's heading naming them; for a job in another unit that unit in a line beneath.
Cell length(double mm, LengthUnit unit);

/// A table with a caption and a heading to each column; the first cell of a row heads it. On a narrow screen a wide
/// table becomes a block a row, each cell behind its column's name.
class Table {
 public:
  enum class Kind { wide, narrow };
  Table(std::string_view caption, std::vector<std::string> columns, Kind kind = Kind::wide);
  void row(std::vector<Cell> cells);
  bool empty() const { return rows_.empty(); }
  std::string html() const;

 private:
  std::string caption_;
  std::vector<std::string> columns_;
  std::vector<std::vector<Cell>> rows_;
  Kind kind_;
};

/// A drawing of ours to stand in a page: no XML declaration, as wide as there is room, every id and what refers to it
/// begun with `prefix`, so that many drawings can share a page.
std::string inline_svg(std::string_view svg, std::string_view prefix);
std::string figure(std::string_view svg, std::string_view prefix, std::string_view caption);
/// A drawing of the whole blade, and the same drawn for a telephone's width, which stands in its place there; without
/// the second the first stands everywhere.
std::string whole_blade(std::string_view svg, std::string_view narrow_svg, std::string_view prefix, std::string_view caption);

}  // namespace fairblade::report::html
