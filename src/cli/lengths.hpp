// Private to the cli room. Lengths given as options. Verbs: length_of, unit_of_first, Lengths::read.
#pragma once
#include <initializer_list>
#include <optional>
#include <string_view>
#include <vector>

#include "base/fault.hpp"
#include "base/units.hpp"

namespace fairblade::cli {

/// mm; nothing where the text is no length. Without a unit of its own it counts in `unit`.
std::optional<double> length_of(std::string_view text, LengthUnit unit);

/// The unit that stands behind the first of these that has one of its own: 16.5in, 36"; else mm.
LengthUnit unit_of_first(std::initializer_list<std::string_view> texts);

/// Reads lengths in one unit, or with their own ("50mm"); what is none becomes a fault.
class Lengths {
 public:
  Lengths(LengthUnit unit, std::vector<Fault>& faults) : unit_(unit), faults_(faults) {}
  /// mm, from `least` to `most`.
  std::optional<double> read(const char* option, std::string_view text, double least, double most);

 private:
  LengthUnit unit_;
  std::vector<Fault>& faults_;
};

}  // namespace fairblade::cli
