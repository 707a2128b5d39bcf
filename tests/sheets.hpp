// What makes a sheet unreadable: for the tests of every drawing.
#pragma once
#include <set>
#include <string>
#include <vector>

#include "drawing/sheet.hpp"

namespace sheets {

/// Nothing, or the first trouble: a text on another or too small, anything off the sheet (a NaN is), two of one name.
inline std::string trouble(const fairblade::drawing::Sheet& sheet, double least_type = 2.0) {
  using namespace fairblade::drawing;
  const auto off = [&](const fairblade::Point& p) {
    constexpr double hair = 1e-6;
    return !(p.x() >= -hair && p.x() <= sheet.width + hair && p.y() >= -hair && p.y() <= sheet.height + hair);
  };
  std::vector<const Text*> texts;
  std::set<std::string> names;
  for (const Item& item : sheet.items) {
    if (const Text* text = std::get_if<Text>(&item)) {
      const Box box = box_of(*text);
      if (off(box.min_corner()) || off(box.max_corner())) return "off the sheet: '" + text->words + "'";
      if (text->size < least_type) return "too small: '" + text->words + "'";
      texts.push_back(text);
      continue;
    }
    const Path& path = std::get<Path>(item);
    for (const auto& run : path.runs) {
      for (const auto& p : run) {
        if (off(p)) return "off the sheet: path '" + path.id + "'";
      }
    }
    if (!path.id.empty() && !names.insert(path.id).second) return "twice: '" + path.id + "'";
  }
  for (std::size_t a = 0; a < texts.size(); ++a) {
    for (std::size_t b = a + 1; b < texts.size(); ++b) {
      if (!stand_apart(box_of(*texts[a]), box_of(*texts[b]))) return "'" + texts[a]->words + "' on '" + texts[b]->words + "'";
    }
  }
  return {};
}

}  // namespace sheets
