#include "job/reader.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "job/key_words.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

std::string choices(std::span<const std::string_view> words) {
  std::string out;
  for (const std::string_view word : words) {
    if (!out.empty()) out.append(", ");
    out.append(in_quotes(word));
  }
  return out;
}

/// "did you mean ...", or the whole choice where nothing is near.
std::string suggestion(std::string_view found, std::span<const std::string_view> words) {
  std::string small(found);
  std::transform(small.begin(), small.end(), small.begin(), lower);
  const std::string near = nearest_name(small, words);
  if (!near.empty()) return "did you mean " + in_quotes(near) + "?";
  return (words.size() == 1 ? "use " : "use one of ") + choices(words);
}

std::string with_space(std::string_view unit_name) {
  std::string out;
  if (!unit_name.empty()) out.append(1, ' ').append(unit_name);
  return out;
}

std::string plain(double value) { return trimmed(value, 3); }

/// Of a text that is a number: how it stands without quotes, where a comma would be none of its own.
std::string without_quotes(std::string_view text) {
  if (text.find(',') == std::string_view::npos) return "take the quotes off the number";
  return "write " + shortest(*decimal(text)) + " without quotes";
}

}  // namespace

bool same_word(std::string_view word, std::string_view name) {
  return std::equal(word.begin(), word.end(), name.begin(), name.end(), [](char a, char b) { return lower(a) == lower(b); });
}

void Reader::refuse(const Node& node, std::string_view key, std::string remedy) const {
  if (node.kind == NodeKind::list && node.by_commas) {
    remedy += "; for a decimal comma write a point, or part the columns by semicolons";
  }
  faults.add(at(node), named(key) + " is " + described(node), std::move(remedy));
}

void Reader::missing(const Node& object, std::string_view key, std::string remedy) const {
  faults.add(at(object), named(key) + " is missing", std::move(remedy));
}

std::string Reader::range_of(Range range) const {
  const double mm = millimetres_in(unit);
  return plain(range.low / mm) + " to " + plain(range.high / mm) + " " + std::string(name_of(unit));
}

std::string Reader::range_words(Range range) const {
  const double mm = millimetres_in(unit);
  if (range.low > 0 && plain(range.low / mm) == "0") {
    return "of more than 0, up to " + plain(range.high / mm) + " " + std::string(name_of(unit));
  }
  return "from " + range_of(range);
}

std::optional<double> Reader::number(const Node& node, std::string_view key, Range range, std::string_view unit_name) const {
  if (node.kind == NodeKind::number && node.number >= range.low && node.number <= range.high) return node.number;
  if (node.kind == NodeKind::text && decimal(node.text)) {
    refuse(node, key, without_quotes(node.text));
    return std::nullopt;
  }
  refuse(node, key, "give a number from " + plain(range.low) + " to " + plain(range.high) + with_space(unit_name));
  return std::nullopt;
}

std::optional<int> Reader::whole(const Node& node, std::string_view key, int low, int high) const {
  if (node.kind == NodeKind::number && node.number >= low && node.number <= high && node.number == std::floor(node.number)) {
    return static_cast<int>(node.number);
  }
  refuse(node, key, "give a whole number from " + std::to_string(low) + " to " + std::to_string(high));
  return std::nullopt;
}

std::optional<double> Reader::length(const Node& node, std::string_view key, Range range, std::string_view sign) const {
  std::optional<double> mm;
  if (node.kind == NodeKind::number) {
    mm = node.number * millimetres_in(unit);
  } else if (node.kind == NodeKind::text) {
    const LengthOfText read = length_of_text(node.text, unit);
    using Kind = LengthOfText::Kind;
    if (read.kind == Kind::length) mm = read.mm;
    if (read.kind == Kind::no_unit) {
      refuse(node, key,
             without_quotes(node.text) + ", or write its unit, as in " +
                 in_quotes(std::string(without_blanks(node.text)) + std::string(name_of(unit))));
      return std::nullopt;
    }
    if (read.kind == Kind::fraction_outside_inches) {
      refuse(node, key, "fractions are for inches: write " + in_quotes(std::string(without_blanks(node.text)) + "in"));
      return std::nullopt;
    }
    if (!mm && has_letter_for_digit(node.text)) {
      refuse(node, key, "write the digit 0 for a letter O, 1 for a letter l");
      return std::nullopt;
    }
  }
  if (mm && *mm >= range.low && *mm <= range.high) return mm;
  refuse(node, key, "give a length " + range_words(range) + (sign.empty() ? "" : ", " + std::string(sign)));
  return std::nullopt;
}

std::optional<bool> Reader::truth(const Node& node, std::string_view key) const {
  if (node.kind == NodeKind::boolean) return node.number != 0;
  refuse(node, key, "write true or false");
  return std::nullopt;
}

std::optional<std::string> Reader::text(const Node& node, std::string_view key) const {
  if (node.kind != NodeKind::text && !(node.loose && !node.text.empty())) {
    refuse(node, key, node.kind == NodeKind::number ? "put it in quotes: \"" + described(node) + "\"" : "give a text in quotes");
    return std::nullopt;
  }
  const std::string found(without_blanks(node.text));
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
  if (found.empty()) {
    faults.add(at(node), named(key) + " is empty", "give it a few letters");
  } else if (found.size() > 80) {
    refuse(node, key, "keep it within 80 letters");
  } else if (std::any_of(found.begin(), found.end(), control)) {
    refuse(node, key, "take out the control characters");
  } else {
    return found;
  }
  return std::nullopt;
}

std::optional<std::size_t> Reader::word(const Node& node, std::string_view key, std::span<const std::string_view> words) const {
  if (node.kind != NodeKind::text) {
    refuse(node, key, "use one of " + choices(words));
    return std::nullopt;
  }
  const auto found = std::find_if(words.begin(), words.end(), [&](std::string_view w) { return same_word(node.text, w); });
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  faults.add(at(node), named(key) + " is " + in_quotes(node.text), suggestion(node.text, words));
  return std::nullopt;
}

bool Reader::object(const Node& node, std::string_view key, std::span<const std::string_view> known,
                    std::span<const std::string_view> in_target) const {
  if (node.kind != NodeKind::object) {
    faults.add(at(node), std::string(key) + " is " + described(node),
               "give an object, as in { " + in_quotes(known.front()) + ": ... }");
    return false;
  }
  for (std::size_t i = 0; i < node.keys.size(); ++i) {
    if (std::find(known.begin(), known.end(), node.keys[i]) != known.end()) continue;
    std::string remedy = suggestion(node.keys[i], known);
    const std::string near = nearest_name(node.keys[i], in_target);
    if (near == node.keys[i]) {
      remedy = "put it into \"target\"";
    } else if (const auto path = path_of(node.keys[i]); !in_target.empty() && !path.empty()) {
      const bool row = node.items[i].loose;  // of a CSV
      remedy = row ? "did you mean " + in_quotes(path) + "?" : "put it into " + in_quotes(path.substr(0, path.find('.')));
    } else if (!near.empty() && nearest_name(node.keys[i], known).empty()) {
      remedy = "did you mean " + in_quotes(near) + ", a key of \"target\"?";
    }
    faults.add(at(node.items[i]), in_quotes(node.keys[i]) + " is not a key of " + std::string(key), std::move(remedy));
  }
  return true;
}

bool Reader::list(const Node& node, std::string_view key, std::string_view example) const {
  if (node.kind == NodeKind::list) return true;
  refuse(node, key, "give a list, as in " + std::string(example));
  return false;
}

void Reader::used_default(std::string key, std::string value) const {
  if (defaults) defaults->push_back({std::move(key), std::move(value)});
}

void Reader::setting(const Node* from, std::string_view prefix, std::string_view key, double& value, Range range,
                     std::string_view unit_name) const {
  const Node* node = from ? from->find(key) : nullptr;
  const std::string full = std::string(prefix) + std::string(key);
  if (!node) return used_default(full, shortest(value) + with_space(unit_name));
  if (const auto read = number(*node, full, range, unit_name)) value = *read;
}

void Reader::length_setting(const Node* from, std::string_view prefix, std::string_view key, double& value, Range range) const {
  const Node* node = from ? from->find(key) : nullptr;
  const std::string full = std::string(prefix) + std::string(key);
  if (!node) return used_default(full, shortest(value) + " mm");
  if (const auto read = length(*node, full, range)) value = *read;
}

}  // namespace fairblade::job
