#include "job/numbers.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <utility>

#include "base/text.hpp"

namespace fairblade::job {
namespace {

constexpr std::size_t longest = 60;  // bytes of a number

/// from_chars over the whole text.
std::optional<double> whole(std::string_view text) {
  double value = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
  if (end.ec != std::errc{} || end.ptr != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

/// 1 to 6 digits.
std::optional<double> count(std::string_view text) {
  if (text.empty() || text.size() > 6 || !std::all_of(text.begin(), text.end(), is_digit)) return std::nullopt;
  return whole(text);
}

bool plain_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
bool beyond_ascii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

/// Blanks that spreadsheets and phones write: no-break, figure, thin, narrow and zero-width spaces, a stray byte-order mark.
/// How many bytes of one stand at the front; 0: none does.
std::size_t wide_blank(std::string_view text) {
  if (text.starts_with("\xc2\xa0")) return 2;
  if (text.starts_with("\xe2\x80") && text.size() > 2 && (static_cast<unsigned char>(text[2]) <= 0x8b || text[2] == '\xaf'))
    return 3;
  for (const std::string_view one : {"\xe2\x81\x9f", "\xe3\x80\x80", "\xef\xbb\xbf"}) {
    if (text.starts_with(one)) return 3;
  }
  return 0;
}

/// Minus signs that are no hyphen: U+2212, U+2013 (what "- 3" is corrected to), U+2011.
std::size_t wide_minus(std::string_view text) {
  for (const std::string_view one : {"\xe2\x88\x92", "\xe2\x80\x93", "\xe2\x80\x91"}) {
    if (text.starts_with(one)) return 3;
  }
  return 0;
}

/// The fraction of one character, as it would be typed, and its bytes.
std::pair<std::string_view, std::size_t> one_character_fraction(std::string_view text) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 9> table{{{"\xc2\xbc", "1/4"},
                                                                                       {"\xc2\xbd", "1/2"},
                                                                                       {"\xc2\xbe", "3/4"},
                                                                                       {"\xe2\x85\x9b", "1/8"},
                                                                                       {"\xe2\x85\x9c", "3/8"},
                                                                                       {"\xe2\x85\x9d", "5/8"},
                                                                                       {"\xe2\x85\x9e", "7/8"},
                                                                                       {"\xe2\x85\x93", "1/3"},
                                                                                       {"\xe2\x85\x94", "2/3"}}};
  for (const auto& [character, typed] : table) {
    if (text.starts_with(character)) return {typed, character.size()};
  }
  return {{}, 0};
}

bool all_ascii(std::string_view text) { return std::none_of(text.begin(), text.end(), beyond_ascii); }

/// The text as it would be typed: plain minus, plain blanks, "1 1/2" for "1\xc2\xbd". Other characters stay.
std::string as_typed(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    std::size_t bytes = 0;
    if (const auto [typed, its_bytes] = one_character_fraction(text); its_bytes > 0) {
      if (!out.empty() && is_digit(out.back())) out += ' ';
      out += typed;
      bytes = its_bytes;
    } else if ((bytes = wide_minus(text)) > 0) {
      out += '-';
    } else if ((bytes = wide_blank(text)) > 0) {
      out += ' ';
    } else if (text.starts_with("\xe2\x81\x84") || text.starts_with("\xe2\x88\x95")) {  // fraction slash, division slash
      out += '/';
      bytes = 3;
    } else {
      out += text.front();
      bytes = 1;
    }
    text.remove_prefix(bytes);
  }
  return out;
}

/// Thousands set off by wide blanks, which nobody types by chance: "1\xc2\xa0200,5" -> "1200,5". Only groups of three.
std::optional<std::string> without_groups(std::string_view text) {
  std::string out;
  int since = -1;  // digits since the last blank; -1: no blank yet
  bool marked = false;
  while (!text.empty()) {
    if (const std::size_t bytes = wide_blank(text); bytes > 0) {
      if (marked || out.empty() || !is_digit(out.back()) || (since >= 0 && since != 3)) return std::nullopt;
      since = 0;
      text.remove_prefix(bytes);
      continue;
    }
    const std::size_t minus = wide_minus(text);
    const char c = minus > 0 ? '-' : text.front();
    text.remove_prefix(std::max<std::size_t>(minus, 1));
    if (!is_digit(c)) {
      if (since >= 0 && since != 3 && !marked) return std::nullopt;
      marked = marked || c == '.' || c == ',';
    } else if (since >= 0 && !marked) {
      ++since;
    }
    out += c;
  }
  if (since >= 0 && !marked && since != 3) return std::nullopt;
  return out;
}

std::optional<double> typed_decimal(std::string_view text);

}  // namespace

std::string_view without_blanks(std::string_view text) {
  while (!text.empty()) {
    const std::size_t bytes = plain_blank(text.front()) ? 1 : beyond_ascii(text.front()) ? wide_blank(text) : 0;
    if (bytes == 0) break;
    text.remove_prefix(bytes);
  }
  while (!text.empty()) {
    std::size_t bytes = plain_blank(text.back()) ? 1 : 0;
    if (bytes == 0 && beyond_ascii(text.back())) {
      for (const std::size_t size : {2u, 3u}) {
        if (text.size() >= size && wide_blank(text.substr(text.size() - size)) == size) bytes = size;
      }
    }
    if (bytes == 0) break;
    text.remove_suffix(bytes);
  }
  return text;
}

bool is_dash(std::string_view text) {
  text = without_blanks(text);
  return text == "-" || text == "--" || text == "\xe2\x80\x94" || (!text.empty() && wide_minus(text) == text.size());
}

std::optional<double> decimal(std::string_view text) {
  text = without_blanks(text);
  if (text.empty() || text.size() > longest) return std::nullopt;
  const std::size_t sign = text.front() == '-' ? 1 : 0;
  if (text.size() > sign && is_digit(text[sign])) {  // nearly always that is all there is to it
    if (const auto value = whole(text)) return value;
  }
  if (all_ascii(text)) return typed_decimal(text);
  const auto typed = without_groups(text);
  return typed ? typed_decimal(*typed) : std::nullopt;
}

namespace {

std::optional<double> typed_decimal(std::string_view text) {
  bool negative = false;
  if (text.front() == '+') {
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

}  // namespace

std::optional<double> fraction(std::string_view text) {
  text = without_blanks(text);
  if (text.size() > longest) return std::nullopt;
  std::string typed;
  if (!all_ascii(text)) {
    typed = as_typed(text);
    text = typed;
  }
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

bool begins_with_fraction_character(std::string_view text) { return one_character_fraction(text).second > 0; }

std::optional<double> percent_of_text(std::string_view text) {
  text = without_blanks(text);
  if (!text.ends_with('%')) return std::nullopt;
  return decimal(text.substr(0, text.size() - 1));
}

LengthOfText length_of_text(std::string_view text, LengthUnit unit) {
  text = without_blanks(text);
  using Kind = LengthOfText::Kind;
  static constexpr std::array<std::pair<std::string_view, LengthUnit>, 11> suffixes{
      {{"mm", LengthUnit::mm},
       {"cm", LengthUnit::cm},
       {"in", LengthUnit::inch},
       {"in.", LengthUnit::inch},
       {"\"", LengthUnit::inch},
       {"\xe2\x80\xb3", LengthUnit::inch},  // a double prime
       {"\xe2\x80\x9d", LengthUnit::inch},  // what a phone makes of a double quote
       {"\xe2\x80\x9c", LengthUnit::inch},  // the same, where it takes it for an opening one
       {"''", LengthUnit::inch},            // two single ones, plain, as primes, as a phone makes them
       {"\xe2\x80\xb2\xe2\x80\xb2", LengthUnit::inch},
       {"\xe2\x80\x99\xe2\x80\x99", LengthUnit::inch}}};
  std::optional<LengthUnit> own;
  for (const auto& [suffix, its_unit] : suffixes) {
    if (!text.ends_with(suffix)) continue;
    text = without_blanks(text.substr(0, text.size() - suffix.size()));
    own = unit = its_unit;
    break;
  }
  if (const auto value = decimal(text)) {
    const double mm = *value * millimetres_in(unit);
    if (!std::isfinite(mm)) return {};
    return {own ? Kind::length : Kind::no_unit, mm, own};
  }
  if (const auto value = fraction(text)) {
    if (unit != LengthUnit::inch) return {Kind::fraction_outside_inches, 0};
    return {Kind::length, *value * millimetres_in(unit), own};
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
