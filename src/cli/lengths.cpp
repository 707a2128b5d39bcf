#include "cli/lengths.hpp"

#include <string>

#include "job/numbers.hpp"

namespace fairblade::cli {

std::optional<double> length_of(std::string_view text, LengthUnit unit) {
  const auto length = job::length_of_text(text, unit);
  using Kind = job::LengthOfText::Kind;
  return length.kind == Kind::length || length.kind == Kind::no_unit ? std::optional(length.mm) : std::nullopt;
}

LengthUnit unit_of_first(std::initializer_list<std::string_view> texts) {
  for (const std::string_view text : texts) {
    if (const auto own = job::length_of_text(text, LengthUnit::mm).own) return *own;
  }
  return LengthUnit::mm;
}

std::optional<double> Lengths::read(const char* option, std::string_view text, double least, double most) {
  const auto length = job::length_of_text(text, unit_);
  using Kind = job::LengthOfText::Kind;
  if (length.kind == Kind::fraction_outside_inches) {
    faults_.push_back({{option, 0}, "\"" + std::string(text) + "\" is a fraction", "fractions are for inches: add --units in"});
    return std::nullopt;
  }
  if (length.kind == Kind::not_a_length || length.mm < least || length.mm > most) {
    const double inches = length.mm * mm_per_inch;
    const bool meant = unit_ == LengthUnit::mm && length.kind == Kind::no_unit && inches >= least && inches <= most;
    faults_.push_back({{option, 0},
                       "\"" + std::string(text) + "\" is no length for this",
                       "give " + in_unit(least, unit_) + " to " + in_unit(most, unit_) +
                           (meant ? "; if these are inches, add --units in" : "")});
    return std::nullopt;
  }
  return length.mm;
}

}  // namespace fairblade::cli
