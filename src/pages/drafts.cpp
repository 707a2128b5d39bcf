#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "pages/clip.hpp"
#include "pages/compose.hpp"
#include "pages/joints.hpp"
#include "pages/nest.hpp"

namespace fairblade::pages {
namespace {

using drawing::Box;
using drawing::Item;
using drawing::Path;
using drawing::Pen;
using drawing::Sheet;
using drawing::Text;

constexpr double nest_gap = 4;  // mm between pieces on a shared page

bool fits_window(const Layout& layout, double width, double height) {
  return width <= layout.window_width() + 1e-6 && height <= layout.window_height() + 1e-6;
}

struct Grid {
  std::vector<double> x, y;  // where the windows begin
  double width, height;      // of a window
};

Grid grid_of(const job::Job& job, const Layout& layout, const Piece& piece) {
  return {starts_of(piece.sheet.width, layout.window_width(), job.print.overlap, piece.whole_x),
          starts_of(piece.sheet.height, layout.window_height(), job.print.overlap, piece.whole_y), layout.window_width(),
          layout.window_height()};
}

/// The middle of what two neighbouring windows share.
double middle_of_joint(double start, double window, double next) { return (start + window + next) / 2; }

/// Joint lines, crosses on them, and a cross at either end for the overall check, in the piece's own mm.
void add_joint_marks(const Piece& piece, const Grid& grid, Sheet& board) {
  const auto within = [](double v, double high) { return std::clamp(v, 5.0, std::max(high - 5, 5.0)); };
  for (std::size_t c = 0; c + 1 < grid.x.size(); ++c) {
    const double x = middle_of_joint(grid.x[c], grid.width, grid.x[c + 1]);
    const std::string name = "joint-x" + std::to_string(c + 1);
    drawing::add_line(board, {x, 0}, {x, piece.sheet.height}, Pen::guide, name);
    for (std::size_t r = 0; r < grid.y.size(); ++r) {
      const double high = std::min(grid.height, piece.sheet.height - grid.y[r]);
      for (int k = 0; k < 2; ++k) {
        const double y = within(grid.y[r] + high * (k == 0 ? 0.14 : 0.86), piece.sheet.height);
        drawing::add_cross(board, {x, y}, "cross-x" + std::to_string(c + 1) + "-" + std::to_string(2 * r + k + 1));
      }
    }
  }
  for (std::size_t r = 0; r + 1 < grid.y.size(); ++r) {
    const double y = middle_of_joint(grid.y[r], grid.height, grid.y[r + 1]);
    drawing::add_line(board, {0, y}, {piece.sheet.width, y}, Pen::guide, "joint-y" + std::to_string(r + 1));
    for (std::size_t c = 0; c < grid.x.size(); ++c) {
      const double wide = std::min(grid.width, piece.sheet.width - grid.x[c]);
      for (int k = 0; k < 2; ++k) {
        const double x = within(grid.x[c] + wide * (k == 0 ? 0.14 : 0.86), piece.sheet.width);
        drawing::add_cross(board, {x, y}, "cross-y" + std::to_string(r + 1) + "-" + std::to_string(2 * c + k + 1));
      }
    }
  }
}

/// Crosses near the ends of the joined set, and how far apart they must be.
std::vector<std::vector<std::string>> add_overall_check(const job::Job& job, const Piece& piece, const Grid& grid, Sheet& board) {
  constexpr double in = 5;
  const double w = piece.sheet.width, h = piece.sheet.height;
  const bool across = grid.x.size() > 1, down = grid.y.size() > 1;
  std::string words;
  std::vector<std::string> few, fewest;
  const auto tell = [&](const std::string& way, const std::string& end, double mm) {
    const std::string from = across && down ? way : "end crosses";
    words += (words.empty() ? "" : ", ") + way + (words.empty() ? end : "") + " " + drawing::length_words(mm, job);
    few.push_back(from + " " + drawing::length_words(mm, job));
    fewest.push_back(from + " " + in_unit(mm, LengthUnit::mm));
  };
  if (across) {
    drawing::add_cross(board, {in, h / 2}, "end-cross-left");
    drawing::add_cross(board, {w - in, h / 2}, "end-cross-right");
    tell("left to right", " end cross", w - 2 * in);
  }
  if (down) {
    drawing::add_cross(board, {w / 2, in}, "end-cross-top");
    drawing::add_cross(board, {w / 2, h - in}, "end-cross-bottom");
    tell("top to bottom", " end cross", h - 2 * in);
  }
  return {{"joined: " + words}, few, fewest};
}

}  // namespace

bool better_lengthwise(const job::Print& print, const Paper& paper, double width, double height) {
  const auto pages = [&](bool lengthwise) {
    const Layout layout(print, paper, lengthwise);
    return starts_of(width, layout.window_width(), print.overlap, {}).size() *
           starts_of(height, layout.window_height(), print.overlap, {}).size();
  };
  return pages(true) <= pages(false);
}

std::vector<Draft> drafts_of(const job::Job& job, const Paper& paper, const Piece& piece) {
  const bool lengthwise = better_lengthwise(job.print, paper, piece.sheet.width, piece.sheet.height);
  const Layout layout(job.print, paper, lengthwise);
  const Grid grid = grid_of(job, layout, piece);
  Sheet board;
  std::vector<Text> texts;
  for (const Item& item : piece.sheet.items) {
    if (const Text* text = std::get_if<Text>(&item)) texts.push_back(*text);
    else board.items.push_back(item);
  }
  std::vector<std::vector<std::string>> joined;
  if (grid.x.size() * grid.y.size() > 1) {
    add_joint_marks(piece, grid, board);
    joined = add_overall_check(job, piece, grid, board);
  }
  std::vector<Box> windows;
  for (const double y : grid.y) {
    for (const double x : grid.x) windows.emplace_back(Point(x, y), Point(x + grid.width, y + grid.height));
  }
  const auto shares = share_out(texts, windows);
  std::vector<Draft> out;
  for (std::size_t k = 0; k < windows.size(); ++k) {
    Draft draft;
    draft.lengthwise = lengthwise;
    draft.holds = {piece.label};
    draft.name = file_name_of(piece.label);
    draft.rows = static_cast<int>(grid.y.size());
    draft.columns = static_cast<int>(grid.x.size());
    draft.row = static_cast<int>(k / grid.x.size()) + 1;
    draft.column = static_cast<int>(k % grid.x.size()) + 1;
    draft.joined = joined;
    Sheet part;
    for (const Item& item : board.items) {
      Path path = clipped(std::get<Path>(item), windows[k]);
      if (!path.runs.empty()) part.items.emplace_back(std::move(path));
    }
    for (const Text& text : shares[k]) part.items.emplace_back(text);
    add_items(draft.content, std::move(part), {-windows[k].min_corner().x(), -windows[k].min_corner().y()});
    out.push_back(std::move(draft));
  }
  return out;
}

std::vector<Draft> shared_drafts(const job::Job& job, const Paper& paper, std::vector<Piece> pieces,
                                 const std::vector<std::size_t>& places) {
  std::vector<Draft> out;
  for (const bool lengthwise : {true, false}) {
    const Layout layout(job.print, paper, lengthwise);
    std::vector<std::size_t> here;
    std::vector<Point> sizes;
    for (std::size_t k = 0; k < pieces.size(); ++k) {
      const drawing::Sheet& sheet = pieces[k].sheet;
      if (fits_window(Layout(job.print, paper, true), sheet.width, sheet.height) != lengthwise) continue;
      here.push_back(k);
      sizes.emplace_back(sheet.width, sheet.height);
    }
    for (const auto& page : nest(sizes, layout.window_width(), layout.window_height(), nest_gap)) {
      Draft draft;
      draft.lengthwise = lengthwise;
      std::vector<std::pair<std::size_t, std::string>> labels;  // by their places, which the page's name and foot follow
      for (std::size_t k = 0; k < page.size(); ++k) {
        Piece& piece = pieces[here[page[k].piece]];
        labels.emplace_back(places[here[page[k].piece]], piece.label);
        const std::string prefix = page.size() > 1 ? "piece" + std::to_string(k + 1) + "-" : "";
        add_items(draft.content, std::move(piece.sheet), {page[k].at.x(), page[k].at.y()}, prefix);
      }
      std::sort(labels.begin(), labels.end());
      draft.first = labels.empty() ? 0 : labels.front().first;
      for (auto& [place, label] : labels) draft.holds.push_back(std::move(label));
      draft.name = file_name_of(page.size() > 1 ? draft.holds.front() + " and more" : draft.holds.front());
      out.push_back(std::move(draft));
    }
  }
  return out;
}

}  // namespace fairblade::pages
