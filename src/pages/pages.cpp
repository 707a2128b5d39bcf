#include "pages/pages.hpp"

#include <algorithm>
#include <iterator>

#include "base/text.hpp"
#include "drawing/flow.hpp"
#include "pages/compose.hpp"
#include "pages/cover.hpp"
#include "pages/joints.hpp"
#include "pages/paper.hpp"

namespace fairblade::pages {
namespace {

bool fits_paper(const job::Print& print, const Paper& paper, double width, double height) {
  for (const bool lengthwise : {true, false}) {
    const Layout layout(print, paper, lengthwise);
    if (width <= layout.window_width() + 1e-6 && height <= layout.window_height() + 1e-6) return true;
  }
  return false;
}

void append(std::vector<Draft>& drafts, std::vector<Draft> more) {
  std::move(more.begin(), more.end(), std::back_inserter(drafts));
}

/// The longest side of any piece.
double longest_of(const std::vector<Piece>& pieces) {
  double out = 0;
  for (const Piece& piece : pieces) out = std::max({out, piece.sheet.width, piece.sheet.height});
  return out;
}

/// Each draft gone when its page is made: two hundred stations have a thousand pages.
Pages composed(const job::Job& job, const Paper& paper, std::vector<Draft> drafts) {
  Pages out;
  out.page_size = paper.page_size;
  for (std::size_t k = 0; k < drafts.size(); ++k) {
    out.pages.push_back(compose(job, paper, std::move(drafts[k]), k + 1, drafts.size()));
  }
  return out;
}

}  // namespace

drawing::PaperRoom room_to_read(const job::Print& print) {
  const drawing::PaperRoom usual;
  const Paper paper = paper_of(print, usual.long_side);
  const Layout upright(print, paper, false), lying(print, paper, true);
  drawing::PaperRoom out;
  out.long_side = std::min({usual.long_side, upright.window_height(), lying.window_width()});
  out.short_side = std::min({usual.short_side, upright.window_width(), lying.window_height()});
  const bool wide_enough = upright.window_width() >= drawing::Flow::widest;
  out.table_height = std::min(usual.table_height, (wide_enough ? upright : lying).window_height());
  return out;
}

int columns_for(const job::Print& print, double width) {
  const Paper paper = paper_of(print, width);
  const Layout layout(print, paper, true);
  return static_cast<int>(starts_of(width, layout.window_width(), print.overlap, {}).size());
}

int rows_for(const job::Print& print, double width, double height) {
  const Paper paper = paper_of(print, width);
  const Layout layout(print, paper, better_lengthwise(print, paper, width, height));
  return static_cast<int>(starts_of(height, layout.window_height(), print.overlap, {}).size());
}

Pages make_pages(const job::Job& job, std::vector<Piece> pieces, const Kinds& kinds) {
  const Paper paper = paper_of(job.print, longest_of(pieces));
  std::vector<Piece> small;
  std::vector<std::size_t> places;
  std::vector<Draft> drafts;
  for (std::size_t k = 0; k < pieces.size(); ++k) {
    Piece& piece = pieces[k];
    if (fits_paper(job.print, paper, piece.sheet.width, piece.sheet.height)) {
      small.push_back(std::move(piece));
      places.push_back(k);
    } else {
      auto cut_up = drafts_of(job, paper, piece);
      for (Draft& one : cut_up) one.first = k;
      append(drafts, std::move(cut_up));
      piece.sheet = {};
    }
  }
  append(drafts, shared_drafts(job, paper, std::move(small), places));
  std::stable_sort(drafts.begin(), drafts.end(), [](const Draft& a, const Draft& b) { return a.first < b.first; });
  auto all = covers_of(job, paper, drafts, kinds);
  append(all, std::move(drafts));
  return composed(job, paper, std::move(all));
}

Point page_room(const job::Print& print) {
  const Paper paper = paper_of(print, 0);
  const Layout layout(print, paper, false);
  return {layout.window_width(), layout.window_height()};
}

Pages frame_pages(const job::Job& job, std::vector<Piece> pieces) {
  std::vector<Draft> drafts;
  for (Piece& piece : pieces) {
    Draft draft;
    draft.content = std::move(piece.sheet);
    draft.holds = {piece.label};
    draft.name = file_name_of(piece.label);
    drafts.push_back(std::move(draft));
  }
  return composed(job, paper_of(job.print, 0), std::move(drafts));
}

}  // namespace fairblade::pages
