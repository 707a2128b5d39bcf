// Private to the pages room. Contents with their frame: check bars, words, key map. Verbs: compose. mm.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "pages/pages.hpp"
#include "pages/paper.hpp"

namespace fairblade::pages {

/// A page before it is numbered: what stands in its window, and where it belongs.
struct Draft {
  bool lengthwise = false;
  drawing::Sheet content;  ///< in the window's own mm
  std::vector<std::string> holds;
  std::size_t first = 0;  ///< the earliest of its pieces, by its place among all
  std::string name;       ///< for its file: "A-port-bare"
  int row = 1, column = 1, rows = 1, columns = 1;
  /// The check across all of the joined pages, in lines: ways to say it, the longest first.
  std::vector<std::vector<std::string>> joined;
};

/// A piece cut up, or whole where it fits.
std::vector<Draft> drafts_of(const job::Job& job, const Paper& paper, const Piece& piece);
/// Pieces that fit, on shared pages; `places` among all pieces, beside them.
std::vector<Draft> shared_drafts(const job::Job& job, const Paper& paper, std::vector<Piece> pieces,
                                 const std::vector<std::size_t>& places);
/// Upright or lengthwise, whichever takes fewer pages; lengthwise where they are equal.
bool better_lengthwise(const job::Print& print, const Paper& paper, double width, double height);

Page compose(const job::Job& job, const Paper& paper, Draft draft, std::size_t number, std::size_t of);

}  // namespace fairblade::pages
