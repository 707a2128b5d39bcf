#include "job/numbers.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace fairblade::job {
namespace {

/// from_chars over the whole text.
std::optional<double> whole(std::string_view text) {
  double value = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
  if (end.ec != std::errc{} || end.ptr != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// 1 to 6 digits.
std::optional<double> count(std::string_view text) {
  if (text.empty() || text.size() > 6 || !std::all_of(text.begin(), text.end(), is_digit)) return std::nullopt;
  return whole(text);
}

}  // namespace

std::string_view without_blanks(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

std::optional<double> decimal(std::string_view text) {
  text = without_blanks(text);
  if (text.empty() || text.size() > 60) return std::nullopt;
  bool negative = false;
  constexpr std::string_view minus_sign = "\xe2\x88\x92";  // U+2212, as phones and spreadsheets write it
  if (text.starts_with(minus_sign)) {
    negative = true;
    text.remove_prefix(minus_sign.size());
  } else if (text.front() == '+') {
    text.remove_prefix(1);
  } else if (text.front() == '-') {
    negative = true;
    text.remove_prefix(1);
  }
  if (text.empty() || !(is_digit(text.front()) || text.front() == '.' || text.front() == ',')) return std::nullopt;
  std::optional<double> value;
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos) {
    value = whole(text);
  } else {
    if (text.find('.') != std::string_view::npos) return std::nullopt;
    std::array<char, 64> buffer{};
    std::copy(text.begin(), text.end(), buffer.begin());
    buffer[comma] = '.';
    value = whole({buffer.data(), text.size()});
  }
  if (value && negative) *value = -*value;
  return value;
}

std::optional<double> fraction(std::string_view text) {
  text = without_blanks(text);
  double sign = 1;
  if (text.starts_with('-')) {
    sign = -1;
    text.remove_prefix(1);
  }
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  std::string_view top = without_blanks(text.substr(0, slash));
  double units = 0;
  if (const std::size_t gap = top.find_first_of(" -"); gap != std::string_view::npos) {
    const auto before = count(top.substr(0, gap));
    if (!before) return std::nullopt;
    units = *before;
    top = without_blanks(top.substr(gap + 1));
  }
  const auto over = count(top), under = count(without_blanks(text.substr(slash + 1)));
  if (!over || !under || *under == 0) return std::nullopt;
  return sign * (units + *over / *under);
}

std::optional<double> percent_of_text(std::string_view text) {
  text = without_blanks(text);
  if (!text.ends_with('%')) return std::nullopt;
  return decimal(text.substr(0, text.size() - 1));
}

LengthOfText length_of_text(std::string_view text, LengthUnit unit) {
  text = without_blanks(text);
  using Kind = LengthOfText::Kind;
  static constexpr std::array<std::pair<std::string_view, LengthUnit>, 4> suffixes{
      {{"mm", LengthUnit::mm}, {"cm", LengthUnit::cm}, {"in", LengthUnit::inch}, {"\"", LengthUnit::inch}}};
  bool with_unit = false;
  for (const auto& [suffix, its_unit] : suffixes) {
    if (!text.ends_with(suffix)) continue;
    text = without_blanks(text.substr(0, text.size() - suffix.size()));
    unit = its_unit;
    with_unit = true;
    break;
  }
  if (const auto value = decimal(text)) {
    const double mm = *value * millimetres_in(unit);
    if (!std::isfinite(mm)) return {};
    return {with_unit ? Kind::length : Kind::no_unit, mm};
  }
  if (const auto value = fraction(text)) {
    if (unit != LengthUnit::inch) return {Kind::fraction_outside_inches, 0};
    return {Kind::length, *value * millimetres_in(unit)};
  }
  return {};
}

bool has_letter_for_digit(std::string_view text) {
  text = without_blanks(text);
  if (text.empty() || text.size() > 20) return false;
  bool letter = false;
  for (const char c : text) {
    const bool mistaken = c == 'O' || c == 'o' || c == 'l' || c == 'I';
    if (!mistaken && !is_digit(c) && c != '.' && c != ',' && c != '-') return false;
    letter = letter || mistaken;
  }
  return letter;
}

}  // namespace fairblade::job
