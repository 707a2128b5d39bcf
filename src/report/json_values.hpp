// Private to the report room. Values of plan.json that may be missing. Verbs: maybe.
#pragma once
#include <nlohmann/json.hpp>
#include <optional>

namespace fairblade::report {

using Json = nlohmann::ordered_json;

/// null where there is none.
template <class T>
Json maybe(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

}  // namespace fairblade::report
