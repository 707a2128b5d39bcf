// Private to the job room. Product: one value at a time, judged: its type, its unit, its range.
// Verbs: Reader's own. What is wrong goes to the faults with the line it stands on.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"
#include "job/faults.hpp"
#include "job/tree.hpp"

namespace fairblade::job {

struct Range {
  double low, high;
};

struct Reader {
  Faults& faults;
  std::string file;
  LengthUnit unit = LengthUnit::mm;
  std::string of;  ///< " of station A": appended to the key in messages
  std::vector<DefaultUsed>* defaults = nullptr;

  Place at(const Node& node) const { return {file, node.line}; }
  std::string named(std::string_view key) const { return in_quotes(key) + of; }
  /// "KEY is FOUND: REMEDY".
  void refuse(const Node& node, std::string_view key, std::string remedy) const;
  void missing(const Node& object, std::string_view key, std::string remedy) const;

  std::optional<double> number(const Node& node, std::string_view key, Range range, std::string_view unit_name = "") const;
  std::optional<int> whole(const Node& node, std::string_view key, int low, int high) const;
  /// A length in mm; `range` in mm. `sign`: which way is positive, told with the range where it must be known.
  std::optional<double> length(const Node& node, std::string_view key, Range range, std::string_view sign = {}) const;
  std::optional<bool> truth(const Node& node, std::string_view key) const;
  /// A short text for people: not empty, at most 80 bytes, no control characters.
  std::optional<std::string> text(const Node& node, std::string_view key) const;
  /// Which of the words, capitals or not.
  std::optional<std::size_t> word(const Node& node, std::string_view key, std::span<const std::string_view> words) const;
  /// Is it an object, and are all its keys known? Unknown keys are faults, the rest can still be read.
  /// `in_target`: keys that are looked for as well when telling what was meant.
  bool object(const Node& node, std::string_view key, std::span<const std::string_view> known,
              std::span<const std::string_view> in_target = {}) const;
  bool list(const Node& node, std::string_view key, std::string_view example) const;

  /// The keys of one object that have defaults: `value` is set from the file, or stays and is listed under prefix + key.
  void setting(const Node* from, std::string_view prefix, std::string_view key, double& value, Range range,
               std::string_view unit_name) const;
  void length_setting(const Node* from, std::string_view prefix, std::string_view key, double& value, Range range) const;
  void used_default(std::string key, std::string value) const;

  std::string range_of(Range range) const;     ///< of lengths: "1 to 5000 mm", in the job's unit
  std::string range_words(Range range) const;  ///< "from 1 to 5000 mm", "of more than 0, up to 2 in"
};

/// Is `word` (capitals or not) the same as `name`?
bool same_word(std::string_view word, std::string_view name);

}  // namespace fairblade::job
