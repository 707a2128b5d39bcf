#include "drawing/section_drawing.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <cmath>

#include "base/text.hpp"
#include "drawing/hatch.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"
#include "drawing/readings_table.hpp"
#include "fill/shown_rows.hpp"
#include "fill/stages.hpp"

namespace fairblade::drawing {
namespace {

constexpr double section_margin = 10, least_width = 190;  // mm
constexpr double left_column = 36, leader_zone = 15;
constexpr double add_spacing = 1.6, removal_spacing = 1.0;  // mm between hatch lines
constexpr double sliver = 0.02;                             // mm², differences below it are rounding

/// Polygons in the section's own axes moved onto the sheet.
MultiPolygon on_sheet(const MultiPolygon& polygons, double x_origin, double centre) {
  MultiPolygon out;
  for (Polygon polygon : polygons) {
    if (area(polygon) < sliver) continue;
    boost::geometry::for_each_point(polygon, [&](Point& p) { p = Point(x_origin + p.x(), centre + p.y()); });
    boost::geometry::correct(polygon);
    out.push_back(std::move(polygon));
  }
  return out;
}

/// A distance that rounds to nothing is said to be small, not to be nothing.
std::string miss_words(double mm, LengthUnit unit) {
  const double least = unit == LengthUnit::inch ? 0.001 * mm_per_inch : 0.1;  // mm, the last place shown
  return mm < least / 2 ? "less than " + in_unit(least, unit) : in_unit(mm, unit);
}

class SectionDrawing {
 public:
  SectionDrawing(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                 const fill::StationChange& change, const form::FittedForm* fitted)
      : job_(job),
        measured_(measured),
        target_(target),
        change_(change),
        fitted_(fitted),
        port_table_(job, rows_of(Face::port), target, Face::port),
        starboard_table_(job, rows_of(Face::starboard), target, Face::starboard) {}

  Sheet draw();

 private:
  std::vector<fill::OffsetRow> rows_of(Face face) const {
    return measured_.points.empty() ? fill::rows_laid(measured_, target_, face) : fill::Offsets(measured_, change_).of(face);
  }
  void place_across();
  void title_block();
  void areas();
  void outlines();
  void line_of(const Polyline& line, Face face, Pen pen, const std::string& id);
  void frame_marks();
  void bottom_block();
  enum class Sample { add, removal, line, reading };
  double key_entry(double x, const std::string& words, Sample sample, Pen pen = Pen::dimension);
  std::string form_words() const;
  std::string change_words(const char* what, double total, const fill::Deepest& deepest) const;
  bool stock_on_sheet() const;

  const job::Job& job_;
  const section::MeasuredSection& measured_;
  const target::TargetSection& target_;
  const fill::StationChange& change_;
  const form::FittedForm* fitted_;
  ReadingsTable port_table_, starboard_table_;
  Polyline measured_port_, measured_starboard_, target_port_, target_starboard_;
  Sheet sheet_;
  double x_origin_ = 0, centre_ = 0;         // sheet place of x = 0 on the centre plane
  double x_from_ = 0, x_to_ = 0, half_ = 0;  // extent of both sections
  double y_ = section_margin;                // how far down the sheet is filled
};

bool SectionDrawing::stock_on_sheet() const {
  return measured_.ahead && *measured_.ahead > x_from_ - 60 && *measured_.ahead < x_to_ + 5;
}

void SectionDrawing::place_across() {
  x_from_ = std::min(0.0, target_.leading_edge_x);
  x_to_ = std::max(measured_.chord, target_.trailing_edge_x());
  for (const Polyline* line : {&measured_port_, &measured_starboard_, &target_port_, &target_starboard_}) {
    half_ = std::max(half_, widest(*line).y());
  }
  double left = std::min({x_from_, port_table_.leftmost(), starboard_table_.leftmost()});
  if (stock_on_sheet()) left = std::min(left, *measured_.ahead - 5);
  x_origin_ = section_margin + left_column - left;
  const double right = std::max({x_to_ + 32, port_table_.rightmost() + 6, starboard_table_.rightmost() + 6});
  sheet_.width = std::max(least_width, std::ceil(x_origin_ + right + 12 + section_margin));
}

std::string SectionDrawing::form_words() const {
  const std::string per_cent = trimmed(100 * target_.thickness_ratio, 1) + " % thick";
  std::string words;
  if (fitted_ != nullptr) {
    words = "Nearest standard section: NACA " + form::name_of(fitted_->form) + " (" +
            trimmed(100 * fitted_->form.thickness_ratio, 1) + " % thick). The blade typically misses it by " +
            miss_words(fitted_->typical, job_.units) + ", at worst by " +
            miss_words(std::abs(fitted_->worst.residual), job_.units) + " (" + (fitted_->worst.residual > 0 ? "full" : "hollow") +
            ") at x = " + number_in_unit(fitted_->worst.x, job_.units) + ", " + section::name_of(fitted_->worst.face) + ". ";
  }
  if (target_.joints) return words + "Target: the body stays as it is, the edges are rebuilt; " + per_cent + ".";
  return words + "Target: NACA " + form::name_of(target_.curve.form()) + " family, " + per_cent + ".";
}

void SectionDrawing::title_block() {
  const double room = sheet_.width - 2 * section_margin;
  add_up_mark(sheet_, {sheet_.width - section_margin - 3, section_margin + 3.5});
  add_text(sheet_, {sheet_.width - section_margin - 8, section_margin + 4.7}, "UP is towards you", 3.2, Anchor::end, true);
  Column head(sheet_, section_margin, section_margin, room - 46);
  head.line("Section " + printable(measured_.station), 7, true);
  Column column(sheet_, section_margin, head.bottom() + 0.5, room);
  column.line(job_.name, 4.2);
  column.skip(1);
  std::string where = length_words(measured_.down, job_) + " below the top of the blade. Chord " +
                      length_words(measured_.chord, job_) + " as measured, " + length_words(target_.chord, job_) + " as target.";
  if (measured_.skeg > 0) {
    where += " The section begins " + length_words(measured_.skeg, job_) + " aft of the fixed skeg's leading edge.";
  }
  if (measured_.ahead && !stock_on_sheet()) {
    where += " The stock centreline lies " + length_words(std::abs(*measured_.ahead), job_) +
             (*measured_.ahead > 0 ? " aft" : " ahead") + " of the leading edge, off this sheet.";
  }
  if (measured_.points.empty()) where += " No readings here: laid between its neighbours.";
  column.paragraph(where, 3.2);
  column.paragraph(form_words(), 3.2);
  const fill::Stage shaped = fill::stages_of(job_).front();
  if (shaped.to_come > 0) {
    column.paragraph("The target is the finished surface. Under the coats what is filled is shaped " +
                         length_words(shaped.to_come, job_) + " inside it, as the templates marked \"bare\" have it.",
                     3.2);
  }
  column.paragraph(
      "Drawn full size, seen from above looking down: forward to the left, port below, starboard above. "
      "Half-breadths are measured from the centre plane, x aft from the measured leading edge.",
      3.2);
  y_ = column.bottom() + 4;
}

void SectionDrawing::line_of(const Polyline& line, Face face, Pen pen, const std::string& id) {
  std::vector<Point> run;
  for (const Point& p : line) run.emplace_back(x_origin_ + p.x(), centre_ + section::sign_of(face) * p.y());
  sheet_.items.emplace_back(Path{{std::move(run)}, false, pen, Fill::none, id});
}

void SectionDrawing::areas() {
  const Apart alone = outlines_apart(measured_, target_);
  const MultiPolygon add = on_sheet(alone.a, x_origin_, centre_), removal = on_sheet(alone.b, x_origin_, centre_);
  for (const Polygon& each : removal) {
    const std::vector<Point> ring(each.outer().begin(), each.outer().end());
    sheet_.items.emplace_back(Path{{ring}, true, Pen::none, Fill::light, {}});
  }
  Path lines = hatch(add, add_spacing, true);
  lines.id = "add";
  sheet_.items.emplace_back(lines);
  Path crossed = hatch(removal, removal_spacing, true);
  const Path other = hatch(removal, removal_spacing, false);
  crossed.runs.insert(crossed.runs.end(), other.runs.begin(), other.runs.end());
  crossed.id = "take-off";
  sheet_.items.emplace_back(crossed);
}

void SectionDrawing::outlines() {
  line_of(measured_port_, Face::port, Pen::measured, "measured-port");
  line_of(measured_starboard_, Face::starboard, Pen::measured, "measured-starboard");
  line_of(target_port_, Face::port, Pen::cut, "target-port");
  line_of(target_starboard_, Face::starboard, Pen::cut, "target-starboard");
  const auto closing = [&](const Polyline& port, const Polyline& starboard, Pen pen) {
    for (const bool aft : {false, true}) {
      const Point a = aft ? port.back() : port.front(), b = aft ? starboard.back() : starboard.front();
      if (a.y() == 0 && b.y() == 0) continue;
      add_line(sheet_, {x_origin_ + a.x(), centre_ + a.y()}, {x_origin_ + b.x(), centre_ - b.y()}, pen);
    }
  };
  closing(measured_port_, measured_starboard_, Pen::measured);
  closing(target_port_, target_starboard_, Pen::cut);
}

void SectionDrawing::frame_marks() {
  const double left = section_margin + 26, right = x_origin_ + x_to_ + 30;
  add_line(sheet_, {left, centre_}, {right, centre_}, Pen::datum, "centre-plane");
  add_text(sheet_, {right, centre_ - 1.2}, "centre plane", 2.8, Anchor::end);
  add_forward_arrow(sheet_, {section_margin, centre_}, 22);
  add_text(sheet_, {section_margin, centre_ - half_ - 5}, "STARBOARD", 3.6, Anchor::start, true);
  add_text(sheet_, {section_margin, centre_ + half_ + 8}, "PORT", 3.6, Anchor::start, true);
  add_check_bar_along(sheet_, {sheet_.width - section_margin - 2, centre_ - check_bar_length / 2}, "check-along");
  if (!stock_on_sheet()) return;
  const double x = x_origin_ + *measured_.ahead;
  add_line(sheet_, {x, centre_ - half_ - 2.5}, {x, centre_ + half_ + leader_zone - 2}, Pen::datum, "stock");
  add_text_on_white(sheet_, Text{{x + 1, centre_ + half_ + leader_zone - 6}, "stock", 2.8, Anchor::middle, -90, false});
}

std::string SectionDrawing::change_words(const char* what, double total, const fill::Deepest& deepest) const {
  if (total < sliver) return std::string(what) + ": nothing";
  const bool inches = job_.units == LengthUnit::inch;
  const std::string area_words =
      inches ? fixed(total / (mm_per_inch * mm_per_inch), 2) + " in\xc2\xb2" : fixed(total, total < 10 ? 1 : 0) + " mm\xc2\xb2";
  return std::string(what) + ": " + area_words + ", deepest " + in_unit(deepest.depth, job_.units) +
         " square to the face at x = " + number_in_unit(deepest.x, job_.units) + ", " + section::name_of(deepest.face);
}

/// One sample with its words; returns where the next may begin, having gone to a new line where there was no room.
double SectionDrawing::key_entry(double x, const std::string& words, Sample sample, Pen pen) {
  constexpr double length = 14, type = 3;
  const double width = length + 2 + width_of(words, type, false);
  if (x > section_margin && x + width > sheet_.width - section_margin) {
    x = section_margin;
    y_ += 6.5;
  }
  if (sample == Sample::add || sample == Sample::removal) {
    const bool removal = sample == Sample::removal;
    const Polygon box = polygon_of({{x, y_}, {x + length, y_}, {x + length, y_ + 4.5}, {x, y_ + 4.5}});
    const std::vector<Point> ring(box.outer().begin(), box.outer().end());
    sheet_.items.emplace_back(Path{{ring}, true, Pen::dimension, removal ? Fill::light : Fill::none, {}});
    sheet_.items.emplace_back(hatch({box}, removal ? removal_spacing : add_spacing, true));
    if (removal) sheet_.items.emplace_back(hatch({box}, removal_spacing, false));
  } else {
    add_line(sheet_, {x, y_ + 2.3}, {x + length, y_ + 2.3}, pen);
    if (sample == Sample::reading) add_dot(sheet_, {x + length / 2, y_ + 2.3}, 0.45);
  }
  const double room = sheet_.width - 2 * section_margin - length - 2;
  add_text(sheet_, {x + length + 2, y_ + 3.4}, shortened(words, type, false, room), type);
  return x + width + 7;
}

void SectionDrawing::bottom_block() {
  double x = section_margin;
  x = key_entry(x, change_words("ADD", change_.add_area, change_.add), Sample::add);
  x = key_entry(x, change_words("TAKE OFF", change_.remove_area, change_.removal), Sample::removal);
  x = key_entry(x, "target surface", Sample::line, Pen::cut);
  x = key_entry(x, "blade as measured", Sample::line, Pen::measured);
  x = key_entry(x, measured_.points.empty() ? "half-breadth, laid there" : "half-breadth at a reading", Sample::reading);
  key_entry(x, "centre plane, stock centreline", Sample::line, Pen::datum);
  y_ += 9;
  add_check_bar_across(sheet_, {section_margin, y_}, "check-across");
  const double beside = section_margin + check_bar_length + 8;
  Column column(sheet_, beside, y_ + 1, sheet_.width - section_margin - beside);
  column.paragraph("Print at actual size (100 %): both check bars must measure " + check_bar_words(job_.units) + ".", 2.8);
  y_ = std::max(y_ + 10, column.bottom());
}

Sheet SectionDrawing::draw() {
  measured_port_ = measured_line(measured_, Face::port);
  measured_starboard_ = measured_line(measured_, Face::starboard);
  target_port_ = target_line(target_, Face::port);
  target_starboard_ = target_line(target_, Face::starboard);
  sheet_.title = printable("Section " + measured_.station + ", " + job_.name);
  place_across();
  title_block();
  const double upper_table = y_;
  centre_ = std::max(upper_table + starboard_table_.height() + leader_zone + half_, upper_table + check_bar_length / 2);
  areas();
  outlines();
  const double upper_end = centre_ - half_ - leader_zone, lower_end = centre_ + half_ + leader_zone;
  starboard_table_.draw_leaders(sheet_, x_origin_, centre_, centre_ - half_ - 3.5, upper_end);
  port_table_.draw_leaders(sheet_, x_origin_, centre_, centre_ + half_ + 3.5, lower_end);
  frame_marks();
  const double headings_end = x_origin_ + std::min({x_from_, port_table_.leftmost(), starboard_table_.leftmost()}) - 3;
  starboard_table_.draw(sheet_, x_origin_, upper_end - starboard_table_.height(), headings_end);
  port_table_.draw(sheet_, x_origin_, lower_end, headings_end);
  y_ = std::max(lower_end + port_table_.height(), centre_ + check_bar_length / 2) + 7;
  bottom_block();
  sheet_.height = std::ceil(y_ + section_margin);
  return std::move(sheet_);
}

}  // namespace

Sheet draw_section(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                   const fill::StationChange& change, const form::FittedForm* fitted) {
  return SectionDrawing(job, measured, target, change, fitted).draw();
}

}  // namespace fairblade::drawing
