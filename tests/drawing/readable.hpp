// What every sheet must be: no text on another, nothing off the sheet, no name twice.
#pragma once
#include <set>
#include <string>
#include <vector>

#include "catch.hpp"
#include "drawing/sheet.hpp"

namespace readable {

using namespace fairblade;
using namespace fairblade::drawing;

inline std::string overlap(const std::vector<Text>& texts) {
  for (std::size_t a = 0; a < texts.size(); ++a) {
    for (std::size_t b = a + 1; b < texts.size(); ++b) {
      const Box p = box_of(texts[a]), q = box_of(texts[b]);
      const bool apart = p.max_corner().x() <= q.min_corner().x() || q.max_corner().x() <= p.min_corner().x() ||
                         p.max_corner().y() <= q.min_corner().y() || q.max_corner().y() <= p.min_corner().y();
      if (!apart) return "'" + texts[a].words + "' on '" + texts[b].words + "'";
    }
  }
  return {};
}

inline void check(const Sheet& sheet) {
  std::vector<Text> texts;
  bool inside = true;
  const auto on_sheet = [&](const Point& p) {
    // A NaN fails too.
    inside = inside && p.x() >= 0 && p.x() <= sheet.width && p.y() >= 0 && p.y() <= sheet.height;
  };
  std::set<std::string> ids;
  for (const Item& item : sheet.items) {
    if (const Text* text = std::get_if<Text>(&item)) {
      texts.push_back(*text);
      const Box box = box_of(*text);
      INFO(text->words);
      inside = true;
      on_sheet(box.min_corner());
      on_sheet(box.max_corner());
      CHECK(inside);
      CHECK(text->size >= 2.2);
      continue;
    }
    const Path& path = std::get<Path>(item);
    INFO(path.id);
    inside = true;
    for (const auto& run : path.runs) {
      for (const Point& p : run) on_sheet(p);
    }
    CHECK(inside);
    if (!path.id.empty()) CHECK(ids.insert(path.id).second);
  }
  CHECK(overlap(texts) == "");
}

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
