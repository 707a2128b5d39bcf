#include <algorithm>
#include <cmath>

#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/worksheet.hpp"
#include "drawing/worksheet_parts.hpp"

namespace fairblade::drawing {
namespace {

using job::MeasuredBy;
using worksheet::on_rule;
using worksheet::on_rule_with_unit;

constexpr double label_type = 2.8, half_width = 84;  // mm: type of labels; the left half of the page
constexpr double box_height = 8.6, pitch = 10;
constexpr double gutter = 2.5;  // between boxes of two columns
constexpr std::size_t spare_rows = 1;

/// A column of the table: boxes to write in, but for the first two.
struct TableColumn {
  std::string heading, under;
  double width;
};

class StationPage {
 public:
  StationPage(const worksheet::Worksheet& worksheet, std::size_t k, bool again, double height)
      : job_(worksheet.job), station_(worksheet.job.stations[k]), places_(worksheet.places[k]), again_(again) {
    sheet_.width = worksheet_width;
    sheet_.height = height;
    sheet_.title = "Measuring sheet";
  }
  Sheet draw() {
    head();
    add_items(sheet_, draw_holding(station_, job_.units), {worksheet_width - holding_width, y_}, "holding-");
    const double top = y_;
    sizes();
    ticks();
    y_ = std::max(y_, top + holding_height);
    table();
    return std::move(sheet_);
  }

 private:
  std::string unit() const { return std::string(name_of(job_.units)); }
  void box(double left, double top, double right, double bottom, Pen pen = Pen::outline, Fill fill = Fill::none) {
    sheet_.items.emplace_back(Path{{{{left, top}, {right, top}, {right, bottom}, {left, bottom}}}, true, pen, fill, {}});
  }
  void line_to_write_on(double left, double right, double y, const std::string& words) {
    add_text(sheet_, {left, y}, words, label_type);
    add_line(sheet_, {left + width_of(words, label_type, false) + 1.5, y + 0.6}, {right, y + 0.6}, Pen::dimension);
  }
  void head();
  void asked(const std::vector<std::string>& words, double left, double right);
  void asked(const std::vector<std::string>& words) {
    asked(words, half_width - 34, half_width);
    y_ += pitch;
  }
  void sizes();
  struct InPair {
    std::string name;
    std::optional<double> known;  ///< mm
  };
  void asked_pair(const std::vector<std::string>& words, const InPair& first, const InPair& second);
  void off_centre();
  void tick(double left, const std::string& words, double y);
  void ticks();
  std::vector<TableColumn> columns() const;
  std::string x_heading() const;
  void table();
  void table_row(const std::vector<TableColumn>& columns, std::size_t row, double height);

  const job::ToMeasure& job_;
  const job::StationToMeasure& station_;
  const std::vector<double>& places_;
  bool again_;
  Sheet sheet_;
  double y_ = 0;
};

void StationPage::head() {
  const std::string name = "Station " + printable(station_.name) + (again_ ? ", a second time" : "");
  const double room = 112;
  const double size = size_that_fits(name, 7, 4, true, room);
  add_text(sheet_, {0, 6.8}, shortened(name, size, true, room), size, Anchor::start, true);
  line_to_write_on(116, worksheet_width, 3.4, "measured by");
  line_to_write_on(116, worksheet_width, 9.6, "on");
  line_to_write_on(116, worksheet_width, 15.8, "down, if the mark had to move");
  Column column(sheet_, 0, 9, room);
  const std::string down = on_rule_with_unit(std::abs(station_.down), job_.units);
  const std::string where = station_.down > 0   ? down + " below the top of the blade, along the stock"
                            : station_.down < 0 ? down + " above the top of the blade, along the stock"
                                                : "At the top of the blade, square to the stock";
  column.paragraph(where + ". Chord " + on_rule_with_unit(station_.chord, job_.units) + " as far as is known. All lengths in " +
                       std::string(job_.units == LengthUnit::inch ? "inches"
                                   : job_.units == LengthUnit::cm ? "centimetres"
                                                                  : "millimetres") +
                       ".",
                   label_type);
  if (again_) {
    column.paragraph("Take everything off, set it up again, and do not look at the first sheet: what differs is your own error.",
                     label_type);
  }
  y_ = std::max(column.bottom(), 16.0) + 2;
}

/// Words in up to two lines with a box beside them.
void StationPage::asked(const std::vector<std::string>& words, double left, double right) {
  box(left, y_, right, y_ + box_height);
  double baseline = y_ + box_height / 2 + 0.36 * label_type - static_cast<double>(words.size() - 1) * 1.75;
  for (const std::string& each : words) {
    add_text(sheet_, {left - 2, baseline}, each, label_type, Anchor::end);
    baseline += 3.5;
  }
}

/// Two boxes side by side, each with its name and what is known of it underneath.
void StationPage::asked_pair(const std::vector<std::string>& words, const InPair& first, const InPair& second) {
  constexpr double side = 26;
  asked(words, half_width - 2 * side - gutter, half_width - side - gutter);
  box(half_width - side, y_, half_width, y_ + box_height);
  const double under = y_ + box_height + 3;
  const auto name = [&](double right, const InPair& one) {
    const std::string known = one.known ? ", " + on_rule_with_unit(*one.known, job_.units) + "?" : std::string();
    const double size = 2.4;
    add_text(sheet_, {right - side / 2, under}, shortened(one.name + known, size, false, side), size, Anchor::middle);
  };
  name(half_width - side - gutter, first);
  name(half_width, second);
  y_ += pitch + 3.4;
}

void StationPage::tick(double left, const std::string& words, double y) {
  box(left, y - 3.4, left + 4, y + 0.6, Pen::measured);
  add_text(sheet_, {left + 5.5, y}, words, label_type);
}

void StationPage::off_centre() {
  asked({"trailing edge off", "the centre plane"});
  y_ -= pitch - box_height;
  tick(half_width - 56, "to port (+)", y_ + 4.6);
  tick(half_width - 31, "to starboard (-)", y_ + 4.6);
  y_ += 7.4;
}

void StationPage::sizes() {
  asked({"chord"});
  asked({"chord, once more"});
  const std::string lies = station_.ahead ? " (" + on_rule(*station_.ahead, job_.units) + "?)" : "";
  asked({"leading edge ahead of the", "stock line" + lies + ", - if aft"});
  off_centre();
  if (station_.measured_by == MeasuredBy::gaps) {
    asked_pair({"boards from the", "centre plane:"}, {"port", station_.board_port}, {"starboard", station_.board_starboard});
  }
  if (station_.skeg > 0) asked_pair({"skeg ahead of the", "leading edge:"}, {"with gap", station_.skeg}, {"the gap alone", {}});
}

void StationPage::ticks() {
  y_ += 1.5;
  tick(0, "square to the stock (not level: the stock may rake)", y_ + 2);
  y_ += 6.2;
  tick(0, "leading edge worn or chipped here", y_ + 2);
  y_ += 6.2;
  tick(0, "old paint still on, about", y_ + 2);
  add_line(sheet_, {43, y_ + 2.6}, {64, y_ + 2.6}, Pen::dimension);
  add_text(sheet_, {66, y_ + 2}, unit() + " thick", label_type);
  y_ += 4.8;
}

std::string StationPage::x_heading() const {
  switch (station_.x_from) {
    case job::XFrom::trailing_edge: return "ahead of the trailing edge";
    case job::XFrom::stock: return "aft of the stock line";
    case job::XFrom::leading_edge: break;
  }
  return "aft of the leading edge";
}

std::vector<TableColumn> StationPage::columns() const {
  std::vector<TableColumn> out{{"", "", 8}, {"x", x_heading(), 36}};
  switch (station_.measured_by) {
    case MeasuredBy::half_breadths:
      out.insert(out.end(),
                 {{"PORT", "half-breadth", 47}, {"STARBOARD", "half-breadth", 47}, {"calipers", "= port + starboard", 42}});
      break;
    case MeasuredBy::gaps:
      out.insert(out.end(), {{"PORT", "gap from the port board", 47},
                             {"STARBOARD", "gap from the starboard board", 47},
                             {"calipers", "= boards - gaps", 42}});
      break;
    case MeasuredBy::thickness:
      out.insert(out.end(), {{"calipers", "thickness", 62}, {"what you noticed", "chips, paint, dents", 74}});
      break;
  }
  return out;
}

void StationPage::table_row(const std::vector<TableColumn>& columns, std::size_t row, double height) {
  const double middle = y_ + height / 2;
  const bool spare = row >= places_.size();
  double x = 0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const double left = x, right = x + columns[c].width - gutter;
    x += columns[c].width;
    if (c == 0) {
      if (!spare) add_text(sheet_, {right, middle + 1}, std::to_string(row + 1), label_type, Anchor::end);
    } else if (c == 1 && !spare) {
      const bool edge = row == 0 || row + 1 == places_.size();
      const std::string words = on_rule(places_[row], job_.units);
      const double up = edge ? 1.6 : 0;
      add_text(sheet_, {right - 2, middle + 1.9 - up}, words, size_that_fits(words, 5.4, 3, true, right - left - 2), Anchor::end,
               true);
      if (edge) add_text(sheet_, {right - 2, middle + 4}, row == 0 ? "leading edge" : "trailing edge", 2.4, Anchor::end);
    } else {
      box(left, y_ + 0.6, right, y_ + height - 0.6, Pen::outline);
    }
  }
  y_ += height;
}

void StationPage::table() {
  const auto all = columns();
  y_ += 2;
  double x = 0;
  for (const TableColumn& column : all) {
    const double centre = x + (column.width - gutter) / 2, room = column.width - gutter;
    x += column.width;
    if (column.heading.empty()) continue;
    add_text(sheet_, {centre, y_ + 3.6}, column.heading, 4, Anchor::middle, true);
    add_text(sheet_, {centre, y_ + 7.2}, column.under, size_that_fits(column.under, 2.5, 2.4, false, room), Anchor::middle);
  }
  y_ += 8.6;
  const std::size_t rows = places_.size() + spare_rows;
  const double height = std::min(13.0, (sheet_.height - y_ - 4.5) / static_cast<double>(rows));
  for (std::size_t row = 0; row < rows; ++row) table_row(all, row, height);
  const std::string foot =
      std::string("Leave a box empty where you could not read. ") +
      (station_.x_from == job::XFrom::leading_edge ? "At the trailing edge x is the chord you measured. " : "") +
      "Last row: a place of your own.";
  add_text(sheet_, {0, y_ + 3}, foot, size_that_fits(foot, 2.6, 2.4, false, worksheet_width));
}

}  // namespace

Sheet draw_worksheet_station(const worksheet::Worksheet& worksheet, std::size_t station, bool again, Point room) {
  return fitted_to(room, StationPage(worksheet, station, again, height_for(room)).draw());
}

}  // namespace fairblade::drawing
