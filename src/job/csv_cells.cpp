#include "job/csv_cells.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "job/numbers.hpp"
#include "job/tree.hpp"

namespace fairblade::job {
namespace {

constexpr double furthest = 10000;  // mm; the chord gives the closer limits

/// "16-Mar", "2026-03-16", "3/16/2026", "05.03.2026": a fraction or a decimal that a spreadsheet took for a day.
bool looks_like_a_day(std::string_view cell) {
  static constexpr std::array<std::string_view, 14> months{"jan", "feb", "mar", "apr", "may", "jun", "jul",
                                                           "aug", "sep", "oct", "nov", "dec", "okt", "dez"};
  const std::string plain = lower_case(cell);
  if (plain.size() > 20 || std::none_of(plain.begin(), plain.end(), is_digit)) return false;
  for (const std::string_view month : months) {
    const std::size_t at = plain.find(month);
    if (at == std::string::npos) continue;
    const bool set_off = (at == 0 || !(plain[at - 1] >= 'a' && plain[at - 1] <= 'z'));
    if (set_off) return true;
  }
  int marks = 0, digits = 0;
  for (const char c : plain) {
    if (is_digit(c)) ++digits;
    else if (c == '-' || c == '/' || c == '.') ++marks;
    else return false;
  }
  return marks == 2 && digits >= 4 && is_digit(plain.front()) && is_digit(plain.back());
}

}  // namespace

CellTrouble explained(std::string_view column, std::string_view cell) {
  const std::string what = std::string(column) + " is " + in_quotes(cell) + ", not a number";
  if (has_letter_for_digit(cell)) return {what, "write the digit 0 for a letter O, 1 for a letter l"};
  if (cell.starts_with('#')) return {what, "the spreadsheet shows an error here: mend its formula, or write the number itself"};
  if (cell.starts_with('=')) return {what, "this is a formula: save the spreadsheet's values, not its formulas"};
  if (looks_like_a_day(cell))
    return {what, "the spreadsheet made a date of it: format the column as text and write the reading again"};
  if (length_of_text(cell, LengthUnit::mm).kind == LengthOfText::Kind::fraction_outside_inches) {
    return {what, "fractions are for inches: put a row units,in above the header row"};
  }
  return {what, "write a number, or leave the cell empty where nothing was read"};
}

void CellReader::fault(std::string what, std::string remedy) {
  whole = false;
  faults_.add({file_, line}, std::move(what), std::move(remedy));
}

std::optional<double> CellReader::length(std::string_view cell, std::string_view column, bool& ok) {
  if (const auto value = decimal(cell)) {  // as nearly all are
    if (!one_decimal_mark(cell)) ok = false;
    return within_reach(*value * millimetres_in(unit), cell, column, ok);
  }
  if (cell.empty() || is_dash(cell)) return std::nullopt;
  const LengthOfText read = length_of_text(cell, unit);
  if (read.kind == LengthOfText::Kind::length) return within_reach(read.mm, cell, column, ok);
  ok = false;
  CellTrouble trouble = explained(column, cell);
  fault(std::move(trouble.what), std::move(trouble.remedy));
  return std::nullopt;
}

double CellReader::within_reach(double mm, std::string_view cell, std::string_view column, bool& ok) {
  if (mm >= -furthest && mm <= furthest) return mm;
  ok = false;
  fault(std::string(column) + " is " + std::string(cell) + ", more than 10 m", "check it, and the units");
  return 0;
}

bool CellReader::one_decimal_mark(std::string_view cell) {
  const char usual = mark_ == '\0' ? '.' : mark_;  // one cell holds one of the two at most
  const char other = usual == '.' ? ',' : '.';
  const auto holds = [&](char c) { return std::find(cell.begin(), cell.end(), c) != cell.end(); };
  const char mark = holds(usual) ? usual : holds(other) ? other : '\0';
  if (mark == '\0' || mark == mark_) return true;
  if (mark_ == '\0') {
    mark_ = mark;
    mark_line_ = line;
    return true;
  }
  if (mixed_told_) return false;
  mixed_told_ = true;
  fault("decimal " + std::string(mark == ',' ? "comma" : "point") + " in " + in_quotes(cell) + " but decimal " +
            (mark == ',' ? "point" : "comma") + " on line " + std::to_string(mark_line_),
        "use one of them throughout");
  return false;
}

}  // namespace fairblade::job
