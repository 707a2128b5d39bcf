// Numbers and names as text, the same under every locale. Verbs: fixed, fixed_range, append_fixed, shortest, trimmed,
// append_trimmed, nearest_name, xml_escaped, joined, is_digit, lower_case, upper_case, file_name_of, valid_utf8.
#pragma once
#include <span>
#include <string>
#include <string_view>

namespace fairblade {

/// A number with a fixed count of decimals, by std::to_chars; "-0.00" is written "0.00".
std::string fixed(double value, int decimals);
/// The same at the end of `out`.
void append_fixed(std::string& out, double value, int decimals);
/// The shortest text that reads back as the same number.
std::string shortest(double value);
/// As `fixed`, with trailing zeros and a trailing point dropped: 12.50 -> "12.5", 3.00 -> "3".
std::string trimmed(double value, int decimals);
/// The same at the end of `out`.
void append_trimmed(std::string& out, double value, int decimals);
/// "12.1 to 12.4", each as `fixed`; one number where both print alike, or differ by less than a hundredth of the last figure.
std::string fixed_range(double low, double high, int decimals);
/// The name among `known` that `word` begins, or that is nearest to it by edit distance; empty when none is near.
std::string nearest_name(std::string_view word, std::span<const std::string_view> known);
/// Text with &, <, >, " and ' replaced for XML and HTML; characters XML forbids are dropped.
std::string xml_escaped(std::string_view text);
/// "a, b, c", each between `quote` marks.
std::string joined(std::span<const std::string> names, std::string_view quote = {});
/// Of ASCII, in every locale.
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
/// ASCII letters only; the rest stays.
std::string lower_case(std::string_view text);
std::string upper_case(std::string_view text);
/// A name that every file system takes: letters, digits, '.', '_' and '-' stay, the rest become '-';
/// never empty, never starting with '.', at most 60 bytes. The same name may come from two texts.
std::string file_name_of(std::string_view text);
/// Is this valid UTF-8? When not, `bad_offset` is set to the first bad byte.
bool valid_utf8(std::string_view text, std::size_t& bad_offset);

}  // namespace fairblade
