// Product: numbers and lengths out of text, the same under every locale; for files and for words of the command line.
// Verbs: decimal, fraction, length_of_text, percent_of_text. Lengths come out in mm.
#pragma once
#include <optional>
#include <string_view>

#include "base/units.hpp"

namespace fairblade::job {

/// Without the blanks at both ends, no-break and thin ones among them.
std::string_view without_blanks(std::string_view text);
/// A dash alone: how people write that nothing was read.
bool is_dash(std::string_view text);
/// A whole text as one finite number; the decimal mark may be a point or a comma, the minus a typographic one, and
/// no-break or thin spaces may set off thousands.
std::optional<double> decimal(std::string_view text);
/// "3/16", "1 1/8", "1-1/8", "-5/8", and the same written with the characters for 1/8 to 7/8.
std::optional<double> fraction(std::string_view text);
/// Does a fraction in one character stand at the front, "\u00bd"?
bool begins_with_fraction_character(std::string_view text);
/// "12%" or "12 %" -> 12.
std::optional<double> percent_of_text(std::string_view text);

struct LengthOfText {
  enum class Kind { length, no_unit, fraction_outside_inches, not_a_length } kind = Kind::not_a_length;
  double mm = 0;
  std::optional<LengthUnit> own = {};  ///< the unit written behind the number
};
/// "50mm", "5 cm", "2in", 2" with whatever a phone makes of the mark, and in an inch job "1 1/8". A number without a unit counts
/// in `unit` and is told apart.
LengthOfText length_of_text(std::string_view text, LengthUnit unit);
/// Does the text look like a number in which a letter O (or l) stands for a digit?
bool has_letter_for_digit(std::string_view text);

}  // namespace fairblade::job
