#include "drawing/template_drawing.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"

namespace fairblade::drawing {
namespace {

constexpr double margin = 10;
constexpr double bar_column = 24;      // left of the card: the check bar along
constexpr double horn = 34;            // card ahead of the leading edge and aft of the trailing edge
constexpr double body = 46;            // card beyond the greatest half-breadth
constexpr double blade_band = 24;      // paper on the blade's side of the chord line
constexpr double waste_band = 31;      // paper beyond the card's back
constexpr double longest_reach = 150;  // how far the front horn grows to carry the stock line
constexpr const char* stage = "FINAL";

class TemplateDrawing {
 public:
  TemplateDrawing(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                  Face face)
      : job_(job),
        measured_(measured),
        target_(target),
        face_(face),
        out_(section::sign_of(face)),
        line_(target_line(target, face)) {}

  Sheet draw();

 private:
  /// The sheet's place of a point s mm aft of the target's leading edge and d mm outwards from the chord line.
  Point at(double s, double d) const { return {origin_.x() + s, origin_.y() + out_ * d}; }
  /// The sheet y of a band that reaches from `near` to `far` outwards: its upper edge.
  double top_of(double near, double far) const { return std::min(at(0, near).y(), at(0, far).y()); }
  double aft_end() const { return target_.chord + horn; }
  double half_breadth(double s) const { return target_.half_breadth(face_, target_.leading_edge_x + s); }
  std::string side_name() const { return face_ == Face::port ? "PORT" : "STARBOARD"; }
  std::optional<double> stock() const;

  void place();
  void card();
  void stops();
  void stock_line();
  void fraction_ticks();
  void words_on_card();
  void front_horn();
  void blade_side();
  void waste_side();

  const job::Job& job_;
  const section::MeasuredSection& measured_;
  const target::TargetSection& target_;
  Face face_;
  double out_;
  Polyline line_;
  Sheet sheet_;
  Point origin_;
  Point widest_;
  double depth_ = 0, front_ = horn;
};

/// mm aft of the target's leading edge, where the card carries it.
std::optional<double> TemplateDrawing::stock() const {
  if (!target_.ahead || *target_.ahead < -longest_reach || *target_.ahead > target_.chord + horn - 6) return {};
  return *target_.ahead;
}

void TemplateDrawing::place() {
  widest_ = widest(line_);
  depth_ = std::ceil(std::max(widest_.y(), 0.0) + body);
  if (stock() && *stock() < 0) front_ = horn - *stock();
  const double high = std::max(blade_band, check_bar_length + 6 - depth_ - waste_band);
  sheet_.width = std::ceil(margin + bar_column + front_ + target_.chord + horn + margin);
  sheet_.height = std::ceil(margin + high + depth_ + waste_band + margin);
  origin_ = Point(margin + bar_column + front_, face_ == Face::port ? margin + high : sheet_.height - margin - high);
}

void TemplateDrawing::card() {
  std::vector<Point> working;
  for (const Point& p : line_) working.push_back(at(p.x() - target_.leading_edge_x, p.y()));
  const double edge = line_.back().y();
  sheet_.items.emplace_back(Path{{working}, false, Pen::cut, Fill::none, "working-edge"});
  Path stops{{{at(-front_, 0), at(0, 0)}}, false, Pen::cut, Fill::none, "chord-edges"};
  if (line_.front().y() > 0) stops.runs.back().push_back(working.front());
  stops.runs.push_back({at(target_.chord, edge), at(target_.chord, 0), at(aft_end(), 0)});
  sheet_.items.emplace_back(stops);
  sheet_.items.emplace_back(Path{{{at(-front_, 0), at(-front_, depth_), at(aft_end(), depth_), at(aft_end(), 0)}},
                                 false,
                                 Pen::outline,
                                 Fill::none,
                                 "card-edges"});
  add_line(sheet_, at(-front_ - 7, 0), at(aft_end() + 5, 0), Pen::datum, "chord-line");
}

void TemplateDrawing::stops() {
  // A label turned to read upwards, kept to the horn's side of its line.
  const double middle = origin_.y() + out_ * (depth_ + 8) / 2;
  add_line(sheet_, at(0, 0), at(0, depth_), Pen::guide, "leading-edge");
  add_text(sheet_, {at(0, 0).x() - 1.3, middle}, "leading edge stop", 2.6, Anchor::middle, false, -90);
  const double edge = line_.back().y();
  add_line(sheet_, at(target_.chord, edge), at(target_.chord, depth_), Pen::guide, "trailing-edge");
  add_text(sheet_, {at(target_.chord, 0).x() + 3.6, middle}, "trailing edge stop", 2.6, Anchor::middle, false, -90);
  const std::string name = side_name() + " " + stage;
  add_text(sheet_, {at(target_.chord, 0).x() + 13, middle}, shortened(printable(target_.station), 4, true, depth_ - 14),
           4, Anchor::middle, true, -90);
  add_text(sheet_, {at(target_.chord, 0).x() + 19, middle}, name, 3, Anchor::middle, false, -90);
  add_text(sheet_, {at(target_.chord, 0).x() + 26, middle}, length_words(target_.down, job_), 3, Anchor::middle, false,
           -90);
}

void TemplateDrawing::stock_line() {
  if (!stock()) return;
  const double s = *stock();
  add_line(sheet_, at(s, s < 0 ? 0 : half_breadth(s)), at(s, depth_), Pen::datum, "stock");
  const bool aft_label = s > target_.chord / 2 && s < target_.chord;
  add_text(sheet_, {at(s, 0).x() + (aft_label ? -1.3 : 3.2), origin_.y() + out_ * (depth_ - 17)}, "stock centreline",
           2.6, Anchor::middle, false, -90);
}

void TemplateDrawing::fraction_ticks() {
  Path ticks{{}, false, Pen::dimension, Fill::none, "chord-fractions"};
  for (int tenth = 1; tenth <= 9; ++tenth) {
    const double s = target_.chord * tenth / 10, d = half_breadth(s);
    ticks.runs.push_back({at(s, d), at(s, d + 4)});
    if (stock() && std::abs(*stock() - s) < 6) continue;
    const double baseline = face_ == Face::port ? at(s, d + 4.6).y() + 0.95 * 2.2 : at(s, d + 4.6).y() - 0.24 * 2.2;
    add_text(sheet_, {at(s, 0).x(), baseline}, std::to_string(tenth * 10) + " %", 2.2, Anchor::middle);
  }
  sheet_.items.emplace_back(ticks);
}

void TemplateDrawing::words_on_card() {
  // The wider of the two fields that the stock line leaves.
  double from = 4, to = target_.chord - 4;
  if (stock() && *stock() > target_.chord / 2 && *stock() < target_.chord) to = *stock() - 7;
  if (stock() && *stock() > -8 && *stock() <= target_.chord / 2) from = std::max(from, *stock() + 8);
  const double room = to - from;
  Column column(sheet_, at(from, 0).x(), top_of(std::max(widest_.y(), 0.0) + 8.5, depth_ - 2), room);
  // The side and the stage are never shortened: where they do not fit beside each other they stand on two lines.
  const std::string side = side_name();
  const double both = size_that_fits(side + " " + stage, 8, 1, true, room);
  if (both >= 4.5) {
    column.line(side + " " + stage, both, true);
  } else {
    const double size = size_that_fits(side, 5, 2.4, true, room);
    column.line(side, size, true);
    column.line(stage, size, true);
  }
  const std::string name = "Station " + printable(target_.station);
  column.line(name, size_that_fits(name, 6, 4.4, true, room), true);
  column.line(job_.name, size_that_fits(printable(job_.name), 4, 3, false, room));
  const std::string height = length_words(target_.down, job_) + " below the top";
  column.line(height, size_that_fits(height, 3.6, 2.2, false, room));
  std::string widest = "greatest half-breadth " + length_words(widest_.y(), job_);
  if (width_of(widest, 3.2, false) > room) widest = "half " + length_words(widest_.y(), job_);
  column.line(widest, size_that_fits(widest, 3.2, 2.2, false, room));
}

void TemplateDrawing::front_horn() {
  const double middle = at(-front_ + horn / 2 - 2, 0).x();
  const double top = top_of(4, depth_ - 2);
  add_forward_arrow(sheet_, {middle - 11, top + 10}, 22);
  add_up_mark(sheet_, {middle, top + 20});
  add_text(sheet_, {middle, top + 28}, "UP", 4, Anchor::middle, true);
  add_text(sheet_, {middle, top + 32.5}, "printed side up", 2.4, Anchor::middle);
}

void TemplateDrawing::blade_side() {
  const double sense = -out_;  // down the paper is away from the card for starboard
  const auto baseline = [&](double away, double size) {
    return origin_.y() + (sense < 0 ? -away : away + 0.72 * size);
  };
  const double left = origin_.x() - front_ + 4, room = front_ + target_.chord + horn - 8;
  const std::string cut = "heavy line: cut here, the target surface";
  const double target_x = std::min(at(0.5 * target_.chord, 0).x(), left + width_of(cut, 3, true) + 18);
  const double s = target_x - origin_.x();
  const double text_y = baseline(8, 3);
  const std::string words = shortened(cut, 3, true, room - 12);
  add_text(sheet_, {left, text_y}, words, 3, Anchor::start, true);
  const double words_end = left + width_of(words, 3, true) + 1.5;
  const Point knee(std::max(target_x - 6, words_end + 1), text_y - 1);
  add_line(sheet_, {words_end, text_y - 1}, knee, Pen::dimension);
  add_arrow(sheet_, knee, at(std::max(s, knee.x() - origin_.x() + 2), half_breadth(std::max(s, 1.0))), Pen::dimension);
  add_text(sheet_, {at(aft_end(), 0).x(), baseline(1.5, 2.8)}, "chord line (centre plane)", 2.8, Anchor::end);
  std::string here =
      "The blade is on this side; the card lies against its " + std::string(section::name_of(face_)) + " face.";
  if (measured_.thickness_only) here += " Measured by caliper: both sides are taken as alike.";
  add_text(sheet_, {left, baseline(16, 3)}, shortened(here, 3, false, room), 3);
}

void TemplateDrawing::waste_side() {
  const double sense = out_;
  const auto y = [&](double away) { return at(0, depth_).y() + sense * away; };
  add_dimension(sheet_, {at(0, 0).x(), y(5)}, {at(target_.chord, 0).x(), y(5)},
                (target_.chord > 150 ? "chord " : "") + length_words(target_.chord, job_), 3, "chord-length");
  Path ends{{{at(0, depth_ + 1), at(0, depth_ + 7)}, {at(target_.chord, depth_ + 1), at(target_.chord, depth_ + 7)}},
            false,
            Pen::dimension,
            Fill::none,
            {}};
  sheet_.items.emplace_back(ends);
  const double left = origin_.x() - front_;
  const double bar_top = std::min(y(11), y(21));
  add_check_bar_across(sheet_, {left, bar_top}, "check-across");
  const double beside = left + check_bar_length + 8, room = sheet_.width - margin - beside;
  Column column(sheet_, beside, bar_top, room);
  column.paragraph("Print at actual size (100 %); both check bars must measure 100 mm.", 2.8);
  if (!stock() && target_.ahead) {
    column.paragraph("Stock centreline " + length_words(std::abs(*target_.ahead), job_) +
                         (*target_.ahead < 0 ? " ahead" : " aft") + " of the leading edge.",
                     2.8);
  }
  const double middle = sheet_.height / 2;
  add_check_bar_along(sheet_, {margin + 8, middle - check_bar_length / 2}, "check-along");
}

Sheet TemplateDrawing::draw() {
  sheet_.title = printable("Template " + target_.station + ", " + section::name_of(face_) + ", final, " + job_.name);
  place();
  blade_side();
  card();
  stops();
  stock_line();
  fraction_ticks();
  words_on_card();
  front_horn();
  waste_side();
  return std::move(sheet_);
}

}  // namespace

Sheet draw_template(const job::Job& job, const section::MeasuredSection& measured, const target::TargetSection& target,
                    section::Face face) {
  return TemplateDrawing(job, measured, target, face).draw();
}

}  // namespace fairblade::drawing
