// What every sheet must be, and how to find what is on it.
#pragma once
#include <string>

#include "catch.hpp"
#include "drawing/sheet.hpp"
#include "sheets.hpp"

namespace readable {

using namespace fairblade;
using namespace fairblade::drawing;

inline void check(const Sheet& sheet) { CHECK(sheets::trouble(sheet, 2.2) == ""); }

inline const Path& path_named(const Sheet& sheet, const std::string& id) {
  for (const Item& item : sheet.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path != nullptr && path->id == id) return *path;
  }
  throw std::runtime_error("no path " + id);
}

/// All words, a line each.
inline std::string words_of(const Sheet& sheet) {
  std::string out;
  for (const Item& item : sheet.items) {
    if (const Text* text = std::get_if<Text>(&item)) out += text->words + "\n";
  }
  return out;
}

}  // namespace readable
