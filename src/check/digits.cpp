#include "check/digits.hpp"

#include <charconv>
#include <cmath>
#include <utility>

#include "base/text.hpp"

namespace fairblade::check {
namespace {

constexpr int decimals = 5;  // as many as a written length has

void add_number(std::vector<Meant>& out, const std::string& text, double mm_in_unit, const char* how) {
  double value = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
  if (end.ec == std::errc() && end.ptr == text.data() + text.size()) out.push_back({value * mm_in_unit, how});
}

}  // namespace

std::vector<Meant> other_numbers(double mm, LengthUnit unit) {
  const double in_unit = millimetres_in(unit);
  const std::string text = trimmed(mm / in_unit, decimals);
  std::vector<Meant> out;
  for (std::size_t k = 0; k < text.size(); ++k) {  // the next digit may lie beyond the point
    std::size_t next = k + 1;
    if (next < text.size() && text[next] == '.') ++next;
    if (next >= text.size() || !is_digit(text[k]) || !is_digit(text[next]) || text[k] == text[next]) continue;
    std::string other = text;
    std::swap(other[k], other[next]);
    add_number(out, other, in_unit, "two digits changed places");
  }
  for (const double factor : {10.0, 0.1, 100.0, 0.01}) out.push_back({mm * factor, "the decimal point slipped"});
  out.push_back({-mm, "a minus sign too many, or one that is lacking"});
  const double inches = unit == LengthUnit::inch ? 1 / mm_per_inch : mm_per_inch;
  out.push_back({mm * inches, unit == LengthUnit::inch ? "written in millimetres" : "written in inches"});
  for (std::size_t k = 0; k < text.size(); ++k) {
    if (!is_digit(text[k])) continue;
    for (char digit = '0'; digit <= '9'; ++digit) {
      if (digit == text[k]) continue;
      std::string other = text;
      other[k] = digit;
      add_number(out, other, in_unit, "one digit is wrong");
    }
  }
  for (char digit = '1'; digit <= '9'; ++digit) {
    add_number(out, text.front() == '-' ? "-" + std::string(1, digit) + text.substr(1) : digit + text, in_unit,
               "a digit is lacking in front");
  }
  out.push_back({mm / 2, "the whole thickness for a half"});
  out.push_back({mm * 2, "a half for the whole thickness"});
  return out;
}

std::optional<Meant> meant_by(double mm, LengthUnit unit, const std::function<bool(double)>& fits, std::optional<double> wanted) {
  constexpr double same = 1e-6;  // mm: of two as near, the likelier slip
  std::optional<Meant> best;
  for (Meant& one : other_numbers(mm, unit)) {
    if (!fits(one.mm)) continue;
    if (!wanted) return one;
    if (!best || std::abs(one.mm - *wanted) < std::abs(best->mm - *wanted) - same) best = one;
  }
  return best;
}

}  // namespace fairblade::check
