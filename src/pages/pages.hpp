// Product: drawings laid out on the paper in the printer, as Sheets of one size. Verbs: make_pages, frame_pages,
// room_to_read, page_room.
//
// Small pieces share pages; a piece larger than the paper's window is cut up into rows and columns that overlap, with
// crosses on both neighbours. Every page has a check bar each way, words that say what it holds, and a key map.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "drawing/paper_room.hpp"
#include "drawing/sheet.hpp"
#include "job/job.hpp"

namespace fairblade::pages {

/// mm, from where to where.
using Stretch = std::pair<double, double>;

struct Piece {
  std::string label;             ///< "Station A, port, BARE"
  drawing::Sheet sheet;          ///< just as large as it is
  std::vector<Stretch> whole_x;  ///< where no joint should run across, in the piece's own mm
  std::vector<Stretch> whole_y;
};

struct Page {
  std::string file;  ///< "pages/03-A-port-bare-r1c2.svg"
  drawing::Sheet sheet;
  std::vector<std::string> holds;  ///< labels of its pieces
  int row = 1, column = 1, rows = 1, columns = 1;
};

struct Pages {
  std::vector<Page> pages;  ///< the cover first
  std::string page_size;    ///< for @page in CSS; empty where the browser's paper stands
};

/// Kinds of templates in the words of the job file ("bare", "clearance"): those with pages, and those with files alone.
struct Kinds {
  std::vector<std::string> with_pages, without;
};

/// Pieces in their order as far as sharing pages allows. The cover tells which kinds are without pages.
Pages make_pages(const job::Job& job, std::vector<Piece> pieces, const Kinds& kinds = {});

/// mm of an upright page that a drawing may cover within its frame.
Point page_room(const job::Print& print);
/// Drawings that fit page_room, one to a page in their order: framed and numbered, without a cover of ours. Of the job only
/// the name and the print settings count.
Pages frame_pages(const job::Job& job, std::vector<Piece> pieces);

/// What of the job's paper, margin and ruler's correction is left for a sheet that should stay whole.
drawing::PaperRoom room_to_read(const job::Print& print);

/// Pages side by side that so long a piece takes, at the least.
int columns_for(const job::Print& print, double width);
/// Pages one above another that a piece of that size takes, laid as it would be.
int rows_for(const job::Print& print, double width, double height);

}  // namespace fairblade::pages
