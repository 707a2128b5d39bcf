#include "drawing/form_drawing.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"
#include "drawing/readings_table.hpp"

namespace fairblade::drawing {
namespace {

constexpr double form_margin = 10, least_form_width = 190, headings = 30, leaders = 14;  // mm
constexpr double form_type = 2.6, form_pitch = 4;

std::string number(double mm, LengthUnit unit) { return fixed(mm / millimetres_in(unit), unit == LengthUnit::mm ? 2 : 3); }

class FormDrawing {
 public:
  explicit FormDrawing(const target::FormOffsets& offsets) : offsets_(offsets) {}

  Sheet draw() {
    line_ = target_line(offsets_.section, Face::port);
    half_ = widest(line_).y();
    std::vector<double> wanted;
    for (const auto& row : offsets_.rows) wanted.push_back(row.x);
    places_ = spread(wanted, form_pitch);
    x_origin_ = form_margin + headings + std::max(0.0, form_pitch - places_.front());
    sheet_.width =
        std::max(least_form_width, std::ceil(x_origin_ + std::max(places_.back(), offsets_.asked.chord) + 24 + form_margin));
    sheet_.title = "Section " + offsets_.name;
    title();
    centre_ = y_ + std::max(half_ + 4, check_bar_length / 2);
    section();
    table();
    bottom();
    return std::move(sheet_);
  }

 private:
  std::string length(double mm) const { return in_unit(mm, offsets_.asked.units); }

  void title() {
    Column column(sheet_, form_margin, form_margin, sheet_.width - 2 * form_margin);
    column.line("Section " + offsets_.name, 6, true);
    column.line("Chord " + length(offsets_.asked.chord) + ", greatest thickness " + length(offsets_.max_thickness) +
                    " at x = " + number(offsets_.section.max_thickness_at * offsets_.asked.chord, offsets_.asked.units) + ".",
                3.6);
    column.paragraph(
        "Drawn full size; both halves are alike. Half-breadths are measured from the chord line, x from the leading edge. "
        "Leading-edge radius " +
            length(offsets_.section.leading_edge_radius) + ", trailing edge " + length(offsets_.section.trailing_edge_thickness) +
            " thick.",
        3.2);
    y_ = column.bottom() + 4;
  }

  void section() {
    for (const double side : {-1.0, 1.0}) {
      std::vector<Point> run;
      for (const Point& p : line_) run.emplace_back(x_origin_ + p.x(), centre_ + side * p.y());
      sheet_.items.emplace_back(Path{{std::move(run)}, false, Pen::cut, Fill::none, side < 0 ? "upper" : "lower"});
    }
    const Point end = line_.back();
    add_line(sheet_, {x_origin_ + end.x(), centre_ - end.y()}, {x_origin_ + end.x(), centre_ + end.y()}, Pen::cut, "edge");
    add_line(sheet_, {form_margin + 26, centre_}, {x_origin_ + offsets_.asked.chord + 8, centre_}, Pen::datum, "chord-line");
    add_forward_arrow(sheet_, {form_margin, centre_}, 20);
    add_check_bar_along(sheet_, {sheet_.width - form_margin - 2, centre_ - check_bar_length / 2}, "check-along");
  }

  void table() {
    const double bend = centre_ + half_ + 3, top = bend + leaders;
    double cell = 9;
    for (const auto& row : offsets_.rows) {
      cell = std::max(cell, 2 + width_of(number(std::max(row.x, row.half_breadth), offsets_.asked.units), form_type, false));
    }
    const std::string unit(name_of(offsets_.asked.units));
    const double left = x_origin_ - form_pitch / 2 + std::min(0.0, places_.front()),
                 right = x_origin_ + places_.back() + form_pitch / 2;
    Path rules{{}, false, Pen::dimension, Fill::none, {}}, ordinates = rules, led = rules;
    for (int k = 0; k <= 2; ++k) rules.runs.push_back({{left - headings + 4, top + k * cell}, {right, top + k * cell}});
    sheet_.items.emplace_back(rules);
    add_text(sheet_, {left - 1, top + cell / 2 + 1}, "x, " + unit, form_type, Anchor::end);
    add_text(sheet_, {left - 1, top + 1.5 * cell + 1}, "half-breadth, " + unit, form_type, Anchor::end);
    for (std::size_t k = 0; k < offsets_.rows.size(); ++k) {
      const auto& row = offsets_.rows[k];
      const double x = x_origin_ + row.x, label = x_origin_ + places_[k];
      ordinates.runs.push_back({{x, centre_ - row.half_breadth}, {x, centre_ + row.half_breadth}});
      led.runs.push_back({{x, centre_ + row.half_breadth}, {x, bend}, {label, top - 1.5}, {label, top}});
      add_text(sheet_, {label + 0.36 * form_type, top + 1}, number(row.x, offsets_.asked.units), form_type, Anchor::end, false,
               -90);
      add_text(sheet_, {label + 0.36 * form_type, top + cell + 1}, number(row.half_breadth, offsets_.asked.units), form_type,
               Anchor::end, true, -90);
    }
    sheet_.items.emplace_back(ordinates);
    sheet_.items.emplace_back(led);
    y_ = std::max(top + 2 * cell, centre_ + check_bar_length / 2) + 5;
  }

  void bottom() {
    add_check_bar_across(sheet_, {form_margin, y_}, "check-across");
    Column column(sheet_, form_margin + check_bar_length + 8, y_ + 1, sheet_.width - 2 * form_margin - check_bar_length - 8);
    column.paragraph("Print at actual size (100 %): both check bars must measure " + check_bar_words(offsets_.asked.units) + ".",
                     2.8);
    sheet_.height = std::ceil(std::max(y_ + 10, column.bottom()) + form_margin);
  }

  const target::FormOffsets& offsets_;
  Sheet sheet_;
  Polyline line_;
  std::vector<double> places_;
  double half_ = 0, x_origin_ = 0, centre_ = 0, y_ = form_margin;
};

}  // namespace

Sheet draw_form(const target::FormOffsets& offsets) { return FormDrawing(offsets).draw(); }

}  // namespace fairblade::drawing
