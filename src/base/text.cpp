#include "base/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <vector>

namespace fairblade {

namespace {

using Digits = std::array<char, 24>;

/// value * 10^decimals as a whole number, its sign aside.
struct Scaled {
  std::uint32_t whole = 0;
  int decimals = 0;
  bool known = false;  ///< false: too large, or so near a half that the product's rounding might settle which way
};
Scaled scaled_up(double value, int decimals) {
  constexpr std::array<double, 7> power{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
  if (decimals < 0 || decimals >= static_cast<int>(power.size())) return {};
  // A half more, so that cutting off rounds: asking which way would go wrong every other time.
  const double scaled = std::abs(value) * power[static_cast<std::size_t>(decimals)] + 0.5;
  if (!(scaled < 4e9)) return {};
  const auto whole = static_cast<std::uint32_t>(scaled);
  const double rest = scaled - whole;
  if (rest < 1e-4 || rest > 1 - 1e-4) return {};  // the sum is off by 4e9 * 2^-52 at most
  return {whole, decimals, true};
}

/// Put down with their point at the end of `digits`.
std::string_view put_down(const Scaled& scaled, bool negative, Digits& digits) {
  char* const end = digits.data() + digits.size();
  char* at = end;
  std::uint32_t left = scaled.whole;
  for (int k = 0; k < scaled.decimals; ++k) {
    *--at = static_cast<char>('0' + left % 10);
    left /= 10;
  }
  if (scaled.decimals > 0) *--at = '.';
  do {
    *--at = static_cast<char>('0' + left % 10);
    left /= 10;
  } while (left > 0);
  if (negative && scaled.whole > 0) *--at = '-';
  return {at, static_cast<std::size_t>(end - at)};
}

Scaled without_trailing(Scaled scaled) {
  for (; scaled.decimals > 0 && scaled.whole % 10 == 0; --scaled.decimals) scaled.whole /= 10;
  return scaled;
}

std::string_view without_trailing(std::string_view text) {
  if (text.find('.') == std::string_view::npos) return text;
  text.remove_suffix(text.size() - text.find_last_not_of('0') - 1);
  if (text.back() == '.') text.remove_suffix(1);
  return text;
}

}  // namespace

std::string fixed(double value, int decimals) {
  Digits digits;
  if (const Scaled quick = scaled_up(value, decimals); quick.known) return std::string(put_down(quick, value < 0, digits));
  std::array<char, 400> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  std::string out(buffer.data(), end.ptr);
  if (!out.empty() && out.front() == '-' && out.find_first_not_of("-0.") == std::string::npos) out.erase(0, 1);
  return out;
}

std::string fixed_range(double low, double high, int decimals) {
  const std::string a = fixed(low, decimals), b = fixed(high, decimals);
  return a == b || (high - low) * std::pow(10.0, decimals) < 0.01 ? b : a + " to " + b;
}

std::string shortest(double value) {
  std::array<char, 40> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return {buffer.data(), end.ptr};
}

std::string trimmed(double value, int decimals) {
  std::string out;
  append_trimmed(out, value, decimals);
  return out;
}

void append_fixed(std::string& out, double value, int decimals) {
  Digits digits;
  if (const Scaled quick = scaled_up(value, decimals); quick.known) out += put_down(quick, value < 0, digits);
  else out += fixed(value, decimals);
}

void append_trimmed(std::string& out, double value, int decimals) {
  Digits digits;
  if (const Scaled quick = scaled_up(value, decimals); quick.known) out += put_down(without_trailing(quick), value < 0, digits);
  else out += without_trailing(fixed(value, decimals));
}

namespace {

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, change});
    }
  }
  return row[b.size()];
}

}  // namespace

std::string nearest_name(std::string_view word, std::span<const std::string_view> known) {
  if (word.size() > 60) return {};
  std::string_view best;
  for (const std::string_view name : known) {  // a name begun and not finished
    if (word.size() >= 4 && name.substr(0, word.size()) == word && (best.empty() || name.size() < best.size())) best = name;
  }
  if (!best.empty()) return std::string(best);
  std::size_t best_distance = word.size() / 2 + 1;
  for (const std::string_view name : known) {
    const std::size_t distance = edit_distance(word, name);
    if (distance < best_distance) {
      best_distance = distance;
      best = name;
    }
  }
  return std::string(best);
}

std::string joined(std::span<const std::string> names, std::string_view quote) {
  std::string out;
  for (const std::string& name : names) out.append(out.empty() ? "" : ", ").append(quote).append(name).append(quote);
  return out;
}

std::string xml_escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      case '\'': out += "&#39;"; break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t') out += c;
    }
  }
  return out;
}

std::string lower_case(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

std::string upper_case(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return out;
}

std::string file_name_of(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool plain =
        (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' || c == '_' || c == '-';
    if (plain) {
      out += c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
    if (out.size() >= 60) break;
  }
  while (!out.empty() && (out.back() == '-' || out.back() == '.')) out.pop_back();
  while (!out.empty() && (out.front() == '.' || out.front() == '-')) out.erase(0, 1);
  return out.empty() ? "unnamed" : out;
}

bool valid_utf8(std::string_view text, std::size_t& bad_offset) {
  for (std::size_t i = 0; i < text.size();) {
    const auto lead = static_cast<unsigned char>(text[i]);
    const std::size_t length = lead < 0x80                   ? 1
                               : lead >= 0xc2 && lead < 0xe0 ? 2
                               : (lead & 0xf0) == 0xe0       ? 3
                               : lead >= 0xf0 && lead < 0xf5 ? 4
                                                             : 0;
    bad_offset = i;
    if (length == 0 || i + length > text.size()) return false;
    for (std::size_t k = 1; k < length; ++k) {
      if ((static_cast<unsigned char>(text[i + k]) & 0xc0) != 0x80) return false;
    }
    if (length > 2) {
      const auto second = static_cast<unsigned char>(text[i + 1]);
      const bool overlong = (lead == 0xe0 && second < 0xa0) || (lead == 0xf0 && second < 0x90);
      const bool surrogate_or_beyond = (lead == 0xed && second >= 0xa0) || (lead == 0xf4 && second >= 0x90);
      if (overlong || surrogate_or_beyond) return false;
    }
    i += length;
  }
  return true;
}

}  // namespace fairblade
