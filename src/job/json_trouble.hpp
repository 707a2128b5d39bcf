// Private to the job room. Product: plain words for what stops a JSON file from being read.
// Verbs: json_trouble.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace fairblade::job {

/// What had been read when the reading stopped.
enum class JsonState { nothing, after_key, after_value, finished };

struct JsonTrouble {
  std::string what, remedy;
};

/// `bad` is the last byte that was taken in; text.size() when the file ended too early.
JsonTrouble json_trouble(std::string_view text, std::size_t bad, JsonState state);

}  // namespace fairblade::job
