// Private to the job room. Product: one cell of a CSV as a length in mm, or what is wrong with it.
// Verbs: CellReader::length, explained.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "base/units.hpp"
#include "job/faults.hpp"

namespace fairblade::job {

/// What is wrong with a cell that should hold a length, and what to do.
struct CellTrouble {
  std::string what, remedy;
};
CellTrouble explained(std::string_view column, std::string_view cell);

class CellReader {
 public:
  CellReader(std::string file, Faults& faults) : file_(std::move(file)), faults_(faults) {}
  LengthUnit unit = LengthUnit::mm;
  int line = 0;
  bool whole = true;  ///< nothing was refused

  /// The cell in mm, nothing where it is empty or a dash; not ok where it is no length.
  std::optional<double> length(std::string_view cell, std::string_view column, bool& ok);
  /// 1,234 beside 9.8 could be a thousand or one and a bit: refuse rather than guess.
  bool one_decimal_mark(std::string_view cell);
  void fault(std::string what, std::string remedy);

 private:
  double within_reach(double mm, std::string_view cell, std::string_view column, bool& ok);
  std::string file_;
  Faults& faults_;
  char mark_ = '\0';
  int mark_line_ = 0;
  bool mixed_told_ = false;
};

}  // namespace fairblade::job
