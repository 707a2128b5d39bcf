// Private to the pages room. What of a drawing falls into a window. Verbs: clipped, share_out. mm.
#pragma once
#include <vector>

#include "drawing/sheet.hpp"

namespace fairblade::pages {

/// The part of a path within the box; no runs where there is none.
drawing::Path clipped(const drawing::Path& path, const drawing::Box& box);

/// The texts of a drawing, given to windows that hold them whole: to each that does. A text that lies across all
/// windows is slid along until one holds it and it lies on no other text there.
std::vector<std::vector<drawing::Text>> share_out(const std::vector<drawing::Text>& texts,
                                                  const std::vector<drawing::Box>& windows);

}  // namespace fairblade::pages
