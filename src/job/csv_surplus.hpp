// Private to the job room. Product: rows of a comma-separated table that have more cells than the headings, the surplus empty,
// and where a decimal comma may have parted a number: "45,5,," has as many cells as "45,5" and one empty cell more.
// Verbs: Surplus::take, Surplus::suspect.
//
// Spreadsheets pad all rows alike, the headings too. Where the headings are not padded and every row is, the owner ends rows by
// commas, unless in some column every number would have the same few decimals, as a program writes them.
#pragma once
#include <cstddef>
#include <string_view>
#include <vector>

namespace fairblade::job {

class Surplus {
 public:
  struct Row {
    int line = 0;
    std::size_t cells = 0;
  };
  /// Of every row, so it looks no further where there is no surplus.
  void take(int line, const std::vector<std::string_view>& cells, std::size_t headings) {
    ++rows_;
    if (cells.size() > headings) take_surplus(line, cells, cells.size() - headings);
  }
  /// The first of them; none where the surplus cannot be of decimal commas.
  std::vector<Row> suspect() const;

 private:
  void take_surplus(int line, const std::vector<std::string_view>& cells, std::size_t surplus);

  std::size_t rows_ = 0, padded_ = 0, parted_ = 0;  ///< of those with surplus cells, and that a decimal comma may have parted
  std::size_t surplus_ = 0;                         ///< of the first
  bool alike_ = true;
  std::vector<std::size_t> decimals_;  ///< by column: how many each row would have there; 0 where they differ or cannot be
  std::vector<Row> first_;
};

}  // namespace fairblade::job
