// Private to the report room. Values that may be missing, and JSON text in parts. Verbs: maybe, number, dumped, left_open.
#pragma once
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

namespace fairblade::report {

using Json = nlohmann::ordered_json;

/// null where there is none.
template <class T>
Json maybe(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

/// As the library writes it: the shortest digits that read back the same, null for what is not a number.
std::string number(double value);
/// Text that anyone may read, a key to a line.
std::string dumped(const Json& json);
/// An object's text left open, for another key.
std::string left_open(const Json& object);

}  // namespace fairblade::report
