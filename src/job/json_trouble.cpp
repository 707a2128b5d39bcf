#include "job/json_trouble.hpp"

#include <algorithm>
#include <string>

#include "base/text.hpp"
#include "job/numbers.hpp"
#include "job/tree.hpp"

namespace fairblade::job {
namespace {

bool is_word(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == '.' || c == '+' || c == '-';
}
bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

/// The last non-blank byte before `end`, or 0.
char last_before(std::string_view text, std::size_t end) {
  while (end > 0 && is_blank(text[end - 1])) --end;
  return end > 0 ? text[end - 1] : '\0';
}
char first_from(std::string_view text, std::size_t from) {
  while (from < text.size() && is_blank(text[from])) ++from;
  return from < text.size() ? text[from] : '\0';
}

/// Nothing but blanks, and comments of either kind.
bool only_comments(std::string_view text) {
  while (true) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    if (text.empty()) return true;
    const bool line = text.starts_with("//"), block = text.starts_with("/*");
    if (!line && !block) return false;
    const std::string_view end = line ? "\n" : "*/";
    const std::size_t at = text.find(end, 2);
    if (at == std::string_view::npos) return true;
    text.remove_prefix(at + end.size());
  }
}

struct Word {
  std::size_t begin, end;
};
Word word_around(std::string_view text, std::size_t at) {
  if (!is_word(text[at]) && at > 0 && is_word(text[at - 1])) --at;
  Word word{at, at};
  while (word.begin > 0 && is_word(text[word.begin - 1])) --word.begin;
  while (word.end < text.size() && is_word(text[word.end])) ++word.end;
  return word;
}

constexpr const char* fraction_in_quotes = "put it in quotes with its unit, as in \"1/2in\"";

/// "3/4", "1/2" of "16 1/2", "2-3/4": digits, a slash, a digit. Two slashes are a comment.
bool begins_a_fraction(std::string_view text, Word place) {
  return place.end > place.begin && is_digit(text[place.begin]) && is_digit(text[place.end - 1]) && place.end + 1 < text.size() &&
         text[place.end] == '/' && is_digit(text[place.end + 1]);
}

/// A word that is no JSON value: which mistake is it?
JsonTrouble word_trouble(std::string_view text, Word place) {
  const std::string word(text.substr(place.begin, place.end - place.begin));
  const std::string small = lower_case(word);
  if (small == "nan" || small == "-nan" || small.find("inf") != std::string::npos) {
    return {word + " is not a number", "write a number, or null for a side that was not read"};
  }
  if (has_letter_for_digit(word)) {
    return {word + " has a letter where a digit belongs", "write the digit 0 for a letter O, 1 for a letter l"};
  }
  if (first_from(text, place.end) == ':') return {"the key " + word + " has no quotes", "write \"" + word + "\""};
  if (word != small && (small == "true" || small == "false" || small == "null")) {
    return {word + " is spelled with capitals", "write " + small};
  }
  if (small == "none" || small == "n" || small == "na" || small == "-" || small == "--") {
    return {word + " is not a value", "write null for a side that was not read"};
  }
  if (place.begin > 1 && is_digit(word[0]) && is_digit(text[place.begin - 2])) {
    if (text[place.begin - 1] == ',') return {"a comma within a number", "write a decimal point, as in 0.5"};
    if (text[place.begin - 1] == '/') return {"a fraction", fraction_in_quotes};
  }
  const auto digits = [](const std::string& w) { return is_digit(w[0]) || w[0] == '.' || w[0] == '+' || w[0] == '-'; };
  if (!word.empty() && digits(word)) {
    if (const auto value = decimal(word)) return {word + " is not how JSON writes a number", "write " + shortest(*value)};
    return {word + " is not a number", "put a length with its unit in quotes, as in \"45mm\""};
  }
  if (is_digit(last_before(text, place.begin)) && (small == "mm" || small == "cm" || small == "in")) {
    return {"a number is followed by " + word, "put a length with its unit in quotes, as in \"45mm\""};
  }
  return {word + " has no quotes", "write texts in double quotes"};
}

/// Where the token that ends at `bad` begins.
std::size_t token_begin(std::string_view text, std::size_t bad) {
  if (text[bad] == '"' && bad > 0) {
    const std::size_t open = text.rfind('"', bad - 1);
    return open == std::string_view::npos ? bad : open;
  }
  return is_word(text[bad]) ? word_around(text, bad).begin : bad;
}

}  // namespace

JsonTrouble json_trouble(std::string_view text, std::size_t bad, JsonState state) {
  if (bad >= text.size()) {
    if (state == JsonState::nothing && only_comments(text))
      return {"there is nothing but comments here", "put the job in the file"};
    return {"the file breaks off here", "copy it again whole, or close its quotes and brackets"};
  }
  const char c = text[bad];
  if (state == JsonState::finished) return {"something stands after the job's closing bracket", "take it out"};
  if (c == '\n' || c == '\r') return {"a text is not closed on its line", "put the double quote at its end"};
  if (static_cast<unsigned char>(c) < 0x20) return {"there is a tab or control character in a text", "take it out"};
  if (c == '\'') return {"single quotes", "use double quotes"};
  for (const std::string_view curly : {"\xe2\x80\x9c", "\xe2\x80\x9d", "\xe2\x80\x98", "\xe2\x80\x99"}) {
    if (text.substr(bad).starts_with(curly)) return {"curly quotes", "use straight double quotes"};
  }
  std::size_t begin = bad;  // of the character
  while (begin > 0 && (static_cast<unsigned char>(text[begin]) & 0xc0) == 0x80) --begin;
  if (begins_with_fraction_character(text.substr(begin))) return {"a fraction", fraction_in_quotes};
  const std::string_view behind = text.substr(bad - std::min<std::size_t>(bad, 7), std::min<std::size_t>(bad, 7));
  if (const std::size_t escape = behind.rfind("\\u");
      escape != std::string_view::npos && behind.find('"', escape) == std::string_view::npos) {
    return {"a \\u that stands for no whole character", "write the character itself"};
  }
  if (bad > 0 && text[bad - 1] == '\\') return {"a backslash that means nothing", "write / or two backslashes"};
  if (bad > 1 && std::string_view("eE.+-").find(text[bad - 1]) != std::string_view::npos && !is_word(c)) {
    const Word word = word_around(text, bad - 1);
    const std::string broken(text.substr(word.begin, word.end - word.begin));
    if (is_digit(broken[0]) || (broken.size() > 1 && is_digit(broken[1])))
      return {broken + " breaks off", "write the whole number"};
  }
  const char before = last_before(text, token_begin(text, bad));
  if (c == ']' || c == '}') {
    if (before == ',') return {"there is a comma before the closing bracket", "take the comma out"};
    return {std::string("a ") + c + " that closes nothing", "check that brackets pair: [ with ], { with }"};
  }
  if (c == ',') return {"a comma with no value before it", "take it out, or write null for a side that was not read"};
  if (c == '=') return {"= between key and value", "write :"};
  if (state == JsonState::after_key && before == '"') return {"the colon after a key is missing", "write \"key\": value"};
  const bool value_begins = c == '"' || c == '{' || c == '[';
  const bool value_ended = before == '"' || before == ']' || before == '}' || is_digit(before);
  if (value_begins && value_ended) return {"a comma is missing before this", "put a comma after the value before it"};
  if (is_word(c) || (bad > 0 && is_word(text[bad - 1]))) {
    const Word word = word_around(text, bad);
    if (begins_a_fraction(text, word)) return {"a fraction", fraction_in_quotes};
    if (value_ended && decimal(text.substr(word.begin, word.end - word.begin))) {
      return {"a comma is missing before this", "put a comma after the value before it"};
    }
    return word_trouble(text, word);
  }
  std::size_t end = bad + 1;
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) ++end;
  return {"a stray " + in_quotes(text.substr(bad, end - bad)) + " here", "check commas, quotes and brackets around it"};
}

}  // namespace fairblade::job
