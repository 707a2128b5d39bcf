#include "drawing/flow.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

constexpr double pad = 0.8;         // mm beside the words of a cell
constexpr double row_height = 4.1;  // mm
constexpr double head_type = 4.4, head_small = 2.8, number_room = 24;

bool grouped(const Grid& grid) {
  return std::any_of(grid.columns.begin(), grid.columns.end(), [](const auto& c) { return !c.group.empty(); });
}

std::vector<std::string> heading_lines(const Grid::Column& column) {
  return wrapped(column.heading, Grid::type, false, column.width - 2 * pad);
}

double headings_height(const Grid& grid) {
  std::size_t lines = 1;
  for (const Grid::Column& column : grid.columns) lines = std::max(lines, heading_lines(column).size());
  return (grouped(grid) ? 3.6 : 0) + static_cast<double>(lines) * line_height(Grid::type) + 1.2;
}

}  // namespace

double Grid::width() const {
  double sum = 0;
  for (const Column& column : columns) sum += column.width;
  return sum;
}

Flow::Flow(std::string title, std::vector<std::string> head, double highest)
    : title_(std::move(title)), head_(std::move(head)), highest_(highest) {
  begin();
}

void Flow::begin() {
  Sheet sheet;
  sheet.title = printable(title_);
  sheet.width = widest;
  sheet.height = highest_;
  drawing::Column column(sheet, rim, rim, room);
  for (std::size_t k = 0; k < head_.size(); ++k) {
    const double fits = room - (k == 0 ? number_room : 0);
    const double size = k == 0 ? size_that_fits(printable(head_[k]), head_type, 3.2, true, fits) : head_small;
    column.line(k == 0 ? shortened(head_[k], size, true, fits) : head_[k], size, k == 0);
  }
  y_ = begin_ = column.bottom() + 1.5;
  sheets_.push_back(std::move(sheet));
}

void Flow::need(double mm) {
  if (y_ + mm > highest_ - rim) begin();
}

void Flow::paragraph(std::string_view words, double size) {
  for (const std::string& each : wrapped(words, size, false, room)) {
    need(line_height(size));
    drawing::Column column(sheets_.back(), rim, y_, room);
    column.line(each, size);
    y_ = column.bottom();
  }
  y_ += 0.8;
}

void Flow::grid_headings(const Grid& grid, double height) {
  Sheet& sheet = sheets_.back();
  const double left = rim, right = rim + grid.width(), bottom = y_ + height;
  add_line(sheet, {left, y_}, {right, y_}, Pen::outline);
  double x = left;
  for (std::size_t k = 0; k < grid.columns.size();) {
    const std::string& group = grid.columns[k].group;
    const double from = x;
    do x += grid.columns[k++].width;
    while (k < grid.columns.size() && grid.columns[k].group == group && !group.empty());
    if (group.empty()) continue;
    const std::string words = shortened(group, Grid::type, true, x - from - 2 * pad);
    add_text(sheet, {(from + x) / 2, y_ + 0.97 * Grid::type + 0.4}, words, Grid::type, Anchor::middle, true);
    add_line(sheet, {from + pad, y_ + 3.4}, {x - pad, y_ + 3.4}, Pen::hatch);
  }
  x = left;
  for (const Grid::Column& column : grid.columns) {
    const auto lines = heading_lines(column);
    double baseline = bottom - 1.0 - static_cast<double>(lines.size() - 1) * line_height(Grid::type);
    for (const std::string& line : lines) {
      const double at = column.words ? x + pad : x + column.width - pad;
      add_text(sheet, {at, baseline}, line, Grid::type, column.words ? Anchor::start : Anchor::end);
      baseline += line_height(Grid::type);
    }
    x += column.width;
  }
  add_line(sheet, {left, bottom}, {right, bottom}, Pen::measured);
  y_ = bottom;
}

void Flow::grid_row(const Grid& grid, const std::vector<std::string>& cells) {
  Sheet& sheet = sheets_.back();
  double x = rim;
  const double baseline = y_ + 0.5 * row_height + 0.36 * Grid::type;
  for (std::size_t k = 0; k < cells.size(); ++k) {
    const Grid::Column& column = grid.columns[k];
    const bool spread = k + 1 == cells.size() && cells.size() < grid.columns.size();
    const double width = spread ? rim + grid.width() - x : column.width;
    const bool left = column.words || spread;
    const std::string words = shortened(cells[k], Grid::type, false, width - 2 * pad);
    if (!words.empty()) {
      add_text(sheet, {left ? x + pad : x + width - pad, baseline}, words, Grid::type, left ? Anchor::start : Anchor::end);
    }
    x += width;
  }
  y_ += row_height;
  add_line(sheet, {rim, y_}, {rim + grid.width(), y_}, Pen::hatch);
}

void Flow::grid(std::string_view heading, const Grid& grid) {
  const double headings = headings_height(grid);
  // At least three rows under the headings, so that none stand alone at a sheet's foot.
  need(7 + headings + row_height * static_cast<double>(std::min<std::size_t>(grid.rows.size(), 3)));
  drawing::Column column(sheets_.back(), rim, y_ + 1.5, room);
  column.line(heading, 3.3, true);
  y_ = column.bottom() + 0.6;
  grid_headings(grid, headings);
  for (const auto& row : grid.rows) {
    if (y_ + row_height > highest_ - rim) {
      begin();
      grid_headings(grid, headings);
    }
    grid_row(grid, row);
  }
  y_ += 2;
}

void Flow::picture(const Sheet& picture, const std::string& prefix) {
  need(picture.height);
  add_items(sheets_.back(), picture, {rim, y_}, prefix);
  y_ += picture.height + 1.5;
}

std::vector<Sheet> Flow::finish() {
  sheets_.back().height = std::min(highest_, std::ceil(y_ + rim));
  for (std::size_t k = 0; sheets_.size() > 1 && k < sheets_.size(); ++k) {
    const std::string words = "sheet " + std::to_string(k + 1) + " of " + std::to_string(sheets_.size());
    add_text(sheets_[k], {widest - rim, rim + 0.97 * head_small}, words, head_small, Anchor::end);
  }
  return std::move(sheets_);
}

}  // namespace fairblade::drawing
