#include "pages/compose.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace fairblade::pages {
namespace {

using drawing::Fill;
using drawing::Path;
using drawing::Pen;
using drawing::Sheet;

constexpr double map_width = 24, map_height = 12;

/// Little boxes, one to a page of the joined set; this page's is dark.
void add_key_map(Sheet& sheet, const Draft& draft, Point corner) {
  const double w = std::min(map_width / draft.columns, 8.0), h = std::min(map_height / draft.rows, 8.0);
  const double left = corner.x() + map_width - w * draft.columns;
  const auto cell = [&](int row, int column, double inset) {
    const double x = left + w * (column - 1) + inset, y = corner.y() + h * (row - 1) + inset;
    const double x2 = left + w * column - inset, y2 = corner.y() + h * row - inset;
    return std::vector<Point>{{x, y}, {x2, y}, {x2, y2}, {x, y2}};
  };
  Path cells{{}, true, Pen::dimension, Fill::none, "key-map"};
  for (int r = 1; r <= draft.rows; ++r) {
    for (int c = 1; c <= draft.columns; ++c) cells.runs.push_back(cell(r, c, 0));
  }
  sheet.items.emplace_back(cells);
  const double inset = std::min({0.8, w / 5, h / 5});
  sheet.items.emplace_back(Path{{cell(draft.row, draft.column, inset)}, true, Pen::none, Fill::dark, {}});
}

std::string what_it_holds(const Draft& draft) {
  std::string out;
  for (const std::string& one : draft.holds) out += (out.empty() ? "" : "; ") + one;
  return out;
}

/// In as many words as there is room for.
std::string how_to_print(const job::Job& job, double size, double room) {
  const job::Print& print = job.print;
  const std::string bar = drawing::check_bar_words(job.units);
  std::string words = "print at actual size (100 %); both bars must measure " + bar, few = "print at 100 %; both bars: " + bar;
  if (print.ruler_across != 100 || print.ruler_along != 100) {
    const std::string read = trimmed(print.ruler_across, 2) + " and " + trimmed(print.ruler_along, 2);
    words = "corrected for a printer whose bars read " + read;
    few = "corrected for bars of " + read;
  }
  return drawing::width_of(words, size, false) <= room ? words : few;
}

/// How far apart the end crosses are, in as many words as there is room for: the number is never cut off.
void write_joined(const Draft& draft, double room, drawing::Column& column) {
  constexpr double most = 2.6, least = 2.2;
  for (const auto& lines : draft.joined) {
    const auto fits = [&](const std::string& line) { return drawing::width_of(line, least, false) <= room; };
    if (!std::all_of(lines.begin(), lines.end(), fits) && &lines != &draft.joined.back()) continue;
    for (const std::string& line : lines) {
      const double size = lines.size() > 1 ? least : drawing::size_that_fits(line, most, least, false, room);
      column.paragraph(line, size);
    }
    return;
  }
}

void add_frame(const job::Job& job, const Layout& layout, const Draft& draft, const std::string& number, Sheet& sheet) {
  // A bar's name is that of the paper's direction, which on a lengthwise page is the other one.
  const double below = layout.window_height();
  const char* horizontal = draft.lengthwise ? "along" : "across";
  const char* vertical = draft.lengthwise ? "across" : "along";
  const std::string bar = drawing::check_bar_words(job.units);
  const auto words = [&](const char* way) { return std::string("check bar ") + way + " the paper: " + bar; };
  drawing::add_check_bar_across(sheet, {bar_column, below + 3}, "check-" + std::string(horizontal), words(horizontal));
  const double top = std::max((below - drawing::check_bar_length) / 2, 0.0);
  drawing::add_check_bar_along(sheet, {bar_column - 2, top}, "check-" + std::string(vertical), words(vertical));

  const bool cut_up = draft.rows * draft.columns > 1;
  const double left = bar_column + drawing::check_bar_length + 6;
  constexpr double room_to_tell = 45;  // below it the words alone say which page it is
  const bool with_map = cut_up && layout.width() - 1 - map_width - 3 - left >= room_to_tell;
  const double right = layout.width() - 1 - (with_map ? map_width + 3 : 0);
  drawing::Column column(sheet, left, below + 1.2, right - left);
  const std::string place = "row " + std::to_string(draft.row) + " of " + std::to_string(draft.rows) + ", column " +
                            std::to_string(draft.column) + " of " + std::to_string(draft.columns);
  const bool one_line = !cut_up || drawing::width_of(number + ": " + place, 2.4, true) <= right - left;
  const std::string head = cut_up && one_line ? number + ": " + place : number;
  column.line(head, drawing::size_that_fits(head, 3.2, 2.4, true, right - left), true);
  const double place_size = drawing::size_that_fits(place, 2.6, 2.2, true, right - left);
  if (!one_line && drawing::width_of(place, place_size, true) > right - left) column.paragraph(place, place_size);
  else if (!one_line) column.line(place, place_size, true);
  const std::string holds = what_it_holds(draft);
  const double holds_size = drawing::size_that_fits(holds, 2.6, 2.2, false, right - left);
  const double lines = drawing::width_of(holds, holds_size, false) / (right - left);
  const bool long_list = !cut_up && lines > 1 && lines < 1.85;  // two lines, broken at words
  if (long_list) column.paragraph(holds, holds_size);           // then the boat's name, which each piece bears, gives way
  else column.line(holds, holds_size);
  if (cut_up) write_joined(draft, right - left, column);
  const double end = below + strip + std::min(2.0, job.print.margin);  // a little of the margin, where there is one
  const auto fits = [&](double size) { return !cut_up || column.bottom() + drawing::line_height(size) <= end; };
  if (one_line && !long_list && fits(2.4)) column.line(job.name, 2.4);
  if (!cut_up || (right - left > 90 && fits(2.2))) column.line(how_to_print(job, 2.2, right - left), 2.2);
  if (with_map) add_key_map(sheet, draft, {layout.width() - 1 - map_width, below + 2});
}

}  // namespace

Page compose(const job::Job& job, const Paper& paper, Draft draft, std::size_t number, std::size_t of) {
  const Layout layout(job.print, paper, draft.lengthwise);
  const std::string page = "page " + std::to_string(number) + " of " + std::to_string(of);
  Sheet composed;
  add_items(composed, std::move(draft.content), {layout.window_origin().x(), layout.window_origin().y()});
  add_frame(job, layout, draft, page, composed);
  Page out;
  out.sheet.width = paper.width;
  out.sheet.height = paper.height;
  out.sheet.title = drawing::printable(job.name + ", " + page + ": " + what_it_holds(draft));
  add_items(out.sheet, std::move(composed), layout.onto_sheet());
  out.holds = std::move(draft.holds);
  out.row = draft.row;
  out.column = draft.column;
  out.rows = draft.rows;
  out.columns = draft.columns;
  const std::string digits = std::to_string(number);
  out.file = "pages/" + std::string(3 - std::min<std::size_t>(digits.size(), 3), '0') + digits + "-" + draft.name;
  if (draft.rows * draft.columns > 1) {
    out.file += "-r" + std::to_string(draft.row) + "c" + std::to_string(draft.column);
  }
  out.file += ".svg";
  return out;
}

}  // namespace fairblade::pages
