// Sheets of words, tables and pictures, filled one after another from the top: small enough to share a printed page. mm.
// Verbs: Flow's own.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "drawing/sheet.hpp"

namespace fairblade::drawing {

/// A ruled table. Columns side by side that name the same group stand under one heading.
struct Grid {
  struct Column {
    std::string group, heading;
    double width = 10;   ///< mm
    bool words = false;  ///< to the left; numbers stand to the right
  };
  std::vector<Column> columns;
  /// A row with fewer cells than there are columns spreads its last one over the rest.
  std::vector<std::vector<std::string>> rows;

  static constexpr double type = 2.5;  ///< mm
  double width() const;
};

class Flow {
 public:
  static constexpr double widest = 180;             ///< mm, of a sheet
  static constexpr double rim = 3;                  ///< mm of white round what is printed
  static constexpr double room = widest - 2 * rim;  ///< mm, across

  /// `head` is repeated on each sheet, its first line large. A sheet is at most `highest` mm high.
  Flow(std::string title, std::vector<std::string> head, double highest);

  void paragraph(std::string_view words, double size = 2.7);
  /// Under its heading; broken between rows where it must be, and then its columns' headings are repeated.
  void grid(std::string_view heading, const Grid& grid);
  /// Whole; on the next sheet where this one is too full. Names in it get `prefix` before them.
  void picture(const Sheet& picture, const std::string& prefix);
  void skip(double mm) { y_ += mm; }
  /// mm for a picture on a sheet that holds nothing else.
  double tallest_picture() const { return highest_ - rim - begin_; }
  /// The sheets, no higher than they need be, numbered where there are several.
  std::vector<Sheet> finish();

 private:
  void begin();
  /// A new sheet unless `mm` more fit on this one.
  void need(double mm);
  void grid_headings(const Grid& grid, double height);
  void grid_row(const Grid& grid, const std::vector<std::string>& cells);

  std::string title_;
  std::vector<std::string> head_;
  std::vector<Sheet> sheets_;
  double highest_, y_ = 0, begin_ = 0;
};

}  // namespace fairblade::drawing
