#include "form/named.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::form {
namespace {

constexpr double thinnest = 0.01, thickest = 0.40;

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Fault no_form(std::string_view text, std::string what, std::string remedy) {
  return {{"FORM", 0}, "\"" + std::string(text.substr(0, 40)) + "\" " + std::move(what), std::move(remedy)};
}

const char* const ways = "write it as 0012, 0012-45, 12% or 0.12";

Outcome<Form> of_ratio(std::string_view text, double ratio) {
  if (ratio < thinnest || ratio > thickest) return no_form(text, "is no thickness for a section", "give 1% to 40% of the chord");
  Form out;
  out.thickness_ratio = ratio;
  return out;
}

/// The modified form that the two digits after the dash name.
Outcome<Form> of_suffix(std::string_view text, std::string_view suffix, Form out) {
  if (suffix.size() != 2 || !all_digits(suffix))
    return no_form(text, "ends in \"-" + std::string(suffix) + "\"", "write two digits there, as in 0012-45");
  const int index = suffix[0] - '0', tenths = suffix[1] - '0';
  if (index < 1) return no_form(text, "has a sharp leading edge (index 0)", "write an index from 1 to 9; the plain form's is 6");
  if (tenths < 2 || tenths > 6)
    return no_form(text, "has its greatest thickness at " + std::to_string(tenths) + " tenths of the chord",
                   "the published equations go from 2 to 6");
  out.leading_edge_index = index;
  out.max_thickness_at = tenths / 10.0;
  return out;
}

Outcome<Form> of_digits(std::string_view text, std::string_view digits, std::optional<std::string_view> suffix) {
  if (digits.substr(0, 2) != "00")
    return no_form(text, "is a cambered section", "a rudder's is symmetrical: the first two digits are 00");
  const double ratio = ((digits[2] - '0') * 10 + (digits[3] - '0')) / 100.0;
  auto out = of_ratio(text, ratio);
  if (!out || !suffix) return out;
  return of_suffix(text, *suffix, *out);
}

}  // namespace

Outcome<Form> form_named(std::string_view text) {
  std::string_view word = job::without_blanks(text);
  if (word.size() > 4 && (word.substr(0, 4) == "NACA" || word.substr(0, 4) == "naca")) word = job::without_blanks(word.substr(4));
  if (const auto percent = job::percent_of_text(word)) return of_ratio(text, *percent / 100);
  const std::size_t dash = word.find('-');
  const std::string_view digits = word.substr(0, dash);
  if (all_digits(digits) && digits.size() == 4) {
    return of_digits(text, digits, dash == std::string_view::npos ? std::nullopt : std::optional(word.substr(dash + 1)));
  }
  if (const auto number = job::decimal(word)) {
    if (*number > 0 && *number < 1) return of_ratio(text, *number);
    if (*number >= 1 && *number <= 40) {
      const std::string percent = trimmed(*number, 2);
      return no_form(text, "may be a percentage or a length",
                     "write " + percent + "% of the chord, or 00" + (std::lround(*number) < 10 ? "0" : "") + trimmed(*number, 0));
    }
  }
  return no_form(text, "is no form", ways);
}

}  // namespace fairblade::form
