#include "drawing/template_drawing.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"

namespace fairblade::drawing {
namespace {

constexpr double card_rim = 2;         // paper round the card
constexpr double card_horn = 30;       // card ahead of the leading edge and aft of the trailing edge
constexpr double body = 46;            // card beyond the greatest half-breadth
constexpr double blade_band = 20;      // paper on the blade's side of the chord line, where it is lettered
constexpr double dimension_band = 8;   // beyond the card's back
constexpr double marks_room = 20;      // that FWD, UP and "printed side up" take across
constexpr double longest_reach = 150;  // how far the front horn grows to carry the stock line

class HalfCard {
 public:
  HalfCard(const TemplateOf& wanted, bool lettered_blade_side)
      : job_(wanted.job),
        target_(wanted.target),
        stage_(wanted.stage),
        face_(wanted.face),
        wanted_(wanted),
        blade_side_(lettered_blade_side),
        out_(section::sign_of(wanted.face)),
        from_(wanted.from_fraction * wanted.target.chord) {
    for (const Point& p : stage_.line(face_)) line_.emplace_back(p.x() - target_.leading_edge_x, p.y());
    if (aft_half()) cut_line_to_aft_half();
  }

  TemplateCard draw();

 private:
  /// The sheet's place of a point s mm aft of the finished leading edge and d mm outwards from the chord line.
  Point at(double s, double d) const { return {origin_.x() + s, origin_.y() + out_ * d}; }
  /// The sheet y of a band that reaches from `near` to `far` outwards: its upper edge.
  double top_of(double near, double far) const { return std::min(at(0, near).y(), at(0, far).y()); }
  bool aft_half() const { return from_ > 0; }
  /// Where the marks FWD and UP begin on an aft half, mm aft of the leading edge: clear of the stock line and its label.
  double marks_from() const {
    constexpr double label = 5;
    const bool in_the_way = stock() && *stock() - label < from_ + 4 + marks_room;
    return (in_the_way ? *stock() + label : from_) + 4;
  }
  double front_end() const { return aft_half() ? from_ : -front_; }  // one length at every stage
  double aft_end() const { return target_.chord + card_horn; }
  double leading_edge() const { return stage_.leading_edge_x - target_.leading_edge_x; }
  double trailing_edge() const { return stage_.trailing_edge_x - target_.leading_edge_x; }
  double half_breadth(double s) const;
  std::string side_name() const { return face_ == Face::port ? "PORT" : "STARBOARD"; }
  std::optional<double> stock() const;
  /// Does the stock line run where the leading edge's label would stand?
  bool stock_at_stop() const { return stock() && *stock() <= leading_edge() && *stock() > leading_edge() - 6; }

  void cut_line_to_aft_half();
  void place();
  void edges();
  void stops();
  void stock_line();
  void fraction_ticks();
  void words_on_card();
  void direction();
  void blade_side();
  void dimension();

  const job::Job& job_;
  const target::TargetSection& target_;
  const fill::StageSection& stage_;
  Face face_;
  const TemplateOf& wanted_;
  bool blade_side_;
  double out_;
  double from_;
  Polyline line_;
  Sheet sheet_;
  Point origin_;
  Point widest_;
  double depth_ = 0, front_ = card_horn;
};

double HalfCard::half_breadth(double s) const { return ordinate_at(line_, s); }

/// The line from the place on where an aft half begins.
void HalfCard::cut_line_to_aft_half() {
  Polyline rest{Point(from_, half_breadth(from_))};
  for (const Point& p : line_) {
    if (p.x() > from_ + 1e-9) rest.push_back(p);
  }
  line_ = std::move(rest);
}

/// mm aft of the finished leading edge, where the card carries it.
std::optional<double> HalfCard::stock() const {
  if (!target_.ahead || *target_.ahead < -longest_reach || *target_.ahead > trailing_edge() + card_horn - 6) return {};
  if (aft_half() && *target_.ahead < from_ + 3) return {};
  return *target_.ahead;
}

void HalfCard::place() {
  widest_ = widest(line_);
  depth_ = std::ceil(std::max(widest_.y(), 0.0) + body);
  if (stock() && *stock() < 0) front_ = card_horn - *stock();
  const double band = blade_side_ ? blade_band : card_rim;
  sheet_.width = aft_end() - front_end() + 2 * card_rim;
  sheet_.height = band + depth_ + dimension_band + card_rim;
  origin_ = Point(card_rim - front_end(), face_ == Face::port ? band : sheet_.height - band);
}

void HalfCard::edges() {
  std::vector<Point> working;
  for (const Point& p : line_) working.push_back(at(p.x(), p.y()));
  const double edge = line_.back().y();
  sheet_.items.emplace_back(Path{{working}, false, Pen::cut, Fill::none, "working-edge"});
  Path chord_edges{{}, false, Pen::cut, Fill::none, "chord-edges"};
  Path card{{{at(aft_end(), 0), at(aft_end(), depth_)}}, false, Pen::outline, Fill::none, "card-edges"};
  if (aft_half()) {
    card.runs.front().insert(card.runs.front().end(), {at(from_, depth_), working.front()});
  } else {
    chord_edges.runs.push_back({at(front_end(), 0), at(leading_edge(), 0)});
    if (line_.front().y() > 0) chord_edges.runs.back().push_back(working.front());
    card.runs.front().insert(card.runs.front().end(), {at(front_end(), depth_), at(front_end(), 0)});
  }
  chord_edges.runs.push_back({at(trailing_edge(), edge), at(trailing_edge(), 0), at(aft_end(), 0)});
  sheet_.items.emplace_back(chord_edges);
  sheet_.items.emplace_back(card);
  add_line(sheet_, at(front_end() - card_rim, 0), at(aft_end() + card_rim, 0), Pen::datum, "chord-line");
}

void HalfCard::stops() {
  // A label turned to read upwards, kept to the horn's side of its line.
  const double middle = origin_.y() + out_ * (depth_ + 8) / 2;
  if (!aft_half()) {
    add_line(sheet_, at(leading_edge(), 0), at(leading_edge(), depth_), Pen::guide, "leading-edge");
    add_text(sheet_, {at(leading_edge(), 0).x() + (stock_at_stop() ? 3.6 : -1.3), middle}, "leading edge stop", 2.6,
             Anchor::middle, false, -90);
  }
  const double aft = trailing_edge(), x = at(aft, 0).x();
  add_line(sheet_, at(aft, line_.back().y()), at(aft, depth_), Pen::guide, "trailing-edge");
  add_text(sheet_, {x + 3.6, middle}, "trailing edge stop", 2.6, Anchor::middle, false, -90);
  add_text(sheet_, {x + 12, middle}, shortened(printable(target_.station), 4, true, depth_ - 14), 4, Anchor::middle, true, -90);
  const std::string side = side_name() + " " + upper_case(fill::name_of(stage_.stage.kind));
  add_text(sheet_, {x + 17.5, middle}, side, 3, Anchor::middle, false, -90);
  add_text(sheet_, {x + 22.5, middle}, length_words(target_.down, job_), 3, Anchor::middle, false, -90);
  if (stage_.stand_off > 0) return;  // the blade's edge is another
  add_text(sheet_, {x + 26.6, middle}, "edge " + length_words(stage_.edge_width, job_) + " wide", 2.4, Anchor::middle, false,
           -90);
}

void HalfCard::stock_line() {
  if (!stock()) return;
  const double s = *stock();
  const double inner = s < leading_edge() || s > trailing_edge() ? 0 : half_breadth(s);
  add_line(sheet_, at(s, inner), at(s, depth_), Pen::datum, "stock");
  const bool ahead_of_it = (s > target_.chord / 2 && s < trailing_edge()) || stock_at_stop();
  add_text(sheet_, {at(s, 0).x() + (ahead_of_it ? -1.3 : 3.2), origin_.y() + out_ * (depth_ - 17)}, "stock centreline", 2.6,
           Anchor::middle, false, -90);
}

void HalfCard::fraction_ticks() {
  constexpr double label = 7.5;  // mm that one takes
  const double apart = target_.chord / 10;
  const int lettered = apart >= label ? 1 : 2 * apart >= label ? 2 : 5;  // every one, every second, or 50 % alone
  Path ticks{{}, false, Pen::dimension, Fill::none, "chord-fractions"};
  for (int tenth = 1; tenth <= 9; ++tenth) {
    const double s = target_.chord * tenth / 10, d = half_breadth(s);
    if (s < from_ + 5) continue;
    ticks.runs.push_back({at(s, d), at(s, d + 4)});
    if ((stock() && std::abs(*stock() - s) < 6) || tenth % lettered != 0) continue;
    const double baseline = face_ == Face::port ? at(s, d + 4.6).y() + 0.95 * 2.2 : at(s, d + 4.6).y() - 0.24 * 2.2;
    add_text(sheet_, {at(s, 0).x(), baseline}, std::to_string(tenth * 10) + " %", 2.2, Anchor::middle);
  }
  sheet_.items.emplace_back(ticks);
}

void HalfCard::words_on_card() {
  // The wider of the two fields that the stock line leaves.
  double from = std::max({4.0, from_ + 4, leading_edge() + (stock_at_stop() ? 8 : 4)}),
         to = std::min(target_.chord, trailing_edge()) - 4;
  if (aft_half()) from = marks_from() + marks_room + 4;
  if (stock() && *stock() > (from + to) / 2 && *stock() < target_.chord) to = *stock() - 7;
  if (stock() && *stock() > from - 12 && *stock() <= (from + to) / 2) from = std::max(from, *stock() + 8);
  constexpr double least = 20;  // for words that can be read; the card's aft end has station, side and stage as well
  const double room = to - from;
  if (room < least) return;
  Column column(sheet_, at(from, 0).x(), top_of(std::max(widest_.y(), 0.0) + 8.5, depth_ - 1), room);
  // The side and the stage are never shortened: where they do not fit beside each other they stand on two lines.
  const std::string side = side_name(), stage = stage_words(stage_);
  const double both = size_that_fits(side + " " + stage, 7, 1, true, room);
  if (both >= 4.2) {
    column.line(side + " " + stage, both, true);
  } else {
    column.line(side, size_that_fits(side, 4.5, 2.4, true, room), true);
    column.line(stage, size_that_fits(stage, 4, 2.2, true, room), true);
  }
  const std::string name = "Station " + printable(target_.station);
  column.line(name, size_that_fits(name, 5.5, 4.2, true, room), true);
  const std::string height = length_words(target_.down, job_) + " below the top";
  column.line(height, size_that_fits(height, 4, 2.2, false, room));
  column.line(job_.name, size_that_fits(printable(job_.name), 3.6, 2.8, false, room));
  std::string last = "greatest half-breadth " + length_words(widest_.y(), job_);
  if (!stage_.stage.surface.empty()) last = "for the blade " + stage_.stage.surface + "; " + last;
  if (width_of(last, 2.8, false) > room) last = "half " + length_words(widest_.y(), job_);
  column.line(last, size_that_fits(last, 2.8, 2.2, false, room));
}

void HalfCard::direction() {
  const double middle = at(front_end() + (aft_half()               ? marks_from() - from_ + marks_room / 2
                                          : front_ < card_horn + 1 ? 12.5
                                                                   : card_horn / 2 - 2),
                           0)
                            .x();
  const double top = aft_half() ? top_of(std::max(widest_.y(), 0.0) + 8.5, depth_ - 1) : top_of(5, depth_ - 2);
  add_forward_arrow(sheet_, {middle - 10, top + 7}, 20);
  add_up_mark(sheet_, {middle, top + 14});
  add_text(sheet_, {middle, top + 21.5}, "UP", 4, Anchor::middle, true);
  add_text(sheet_, {middle, top + 26}, "printed side up", 2.4, Anchor::middle);
}

void HalfCard::blade_side() {
  if (!blade_side_) return;
  const double sense = -out_;  // down the paper is away from the card for starboard
  const auto baseline = [&](double away, double size) { return origin_.y() + (sense < 0 ? -away : away + 0.72 * size); };
  const double left = at(front_end(), 0).x() + 2, room = aft_end() - front_end() - 4;
  const std::string cut = "heavy line: cut here";
  const double text_y = baseline(7, 3);
  const std::string words = shortened(cut, 3, true, room - 12);
  add_text(sheet_, {left, text_y}, words, 3, Anchor::start, true);
  const double words_end = left + width_of(words, 3, true) + 1.5;
  const double s = std::max({0.5 * (line_.front().x() + trailing_edge()), words_end + 18 - origin_.x(), from_ + 2});
  const Point knee(std::max(at(s, 0).x() - 6, words_end + 1), text_y - 1);
  add_line(sheet_, {words_end, text_y - 1}, knee, Pen::dimension);
  const double touched = std::max(s, knee.x() - origin_.x() + 2);
  add_arrow(sheet_, knee, at(touched, half_breadth(std::min(touched, trailing_edge()))), Pen::dimension);
  add_text(sheet_, {at(aft_end(), 0).x(), baseline(1.5, 2.8)}, "chord line (centre plane)", 2.8, Anchor::end);
  const std::string face = section::name_of(face_);
  std::string here = "The blade is on this side; the card lies against its " + face + " face.";
  if (width_of(here, 2.6, false) > room) here = "Blade on this side, " + face + " face.";
  if (wanted_.thickness_only) here += " Measured by caliper: both sides are taken as alike.";
  if (width_of(here, 2.6, false) > room) here = "Blade on this side; by caliper.";
  const double size = size_that_fits(here, 3, 2.2, false, room);
  add_text(sheet_, {left, baseline(14, 3)}, shortened(here, size, false, room), size);
}

void HalfCard::dimension() {
  const double y = at(0, depth_).y() + out_ * 5, from = aft_half() ? from_ : leading_edge(), to = trailing_edge();
  std::string words = length_words(to - from, job_);
  if (to - from > 150) {
    words = aft_half()                                         ? words + " to the cut"
            : stage_.stage.to_come > 0 || stage_.stand_off > 0 ? "edge to edge " + words
                                                               : "chord " + words;
  }
  add_dimension(sheet_, {at(from, 0).x(), y}, {at(to, 0).x(), y}, words, 3, "chord-length");
  Path ends{{{at(from, depth_ + 1), at(from, depth_ + 7)}, {at(to, depth_ + 1), at(to, depth_ + 7)}},
            false,
            Pen::dimension,
            Fill::none,
            {}};
  sheet_.items.emplace_back(ends);
}

TemplateCard HalfCard::draw() {
  sheet_.title = printable("Template " + target_.station + ", " + section::name_of(face_) + (aft_half() ? ", aft half, " : ", ") +
                           stage_words(stage_) + ", " + job_.name);
  place();
  blade_side();
  edges();
  stops();
  stock_line();
  fraction_ticks();
  words_on_card();
  direction();
  dimension();
  if (!blade_side_) {
    const double baseline = face_ == Face::port ? at(0, 1.2).y() + 0.95 * 2.4 : at(0, 1.2).y() - 0.24 * 2.4;
    add_text(sheet_, {at(aft_end(), 0).x() - 1, baseline}, "chord line", 2.4, Anchor::end);
  }
  double first_tenth = 0;
  for (const Point& p : line_) {
    if (p.x() <= 0.1 * target_.chord) first_tenth = std::max(first_tenth, p.y());
  }
  return {std::move(sheet_), origin_, first_tenth};
}

}  // namespace

std::string stage_words(const fill::StageSection& stage) {
  std::string out = upper_case(fill::name_of(stage.stage.kind));
  if (stage.stand_off > 0) out += ", clearance " + trimmed(stage.stand_off, 2) + " mm";
  return out;
}

TemplateCard draw_card(const TemplateOf& wanted) { return HalfCard(wanted, false).draw(); }

TemplateCard draw_pair(const TemplateOf& wanted) {
  const auto card_of = [&](Face face) {
    TemplateOf one = wanted;
    one.face = face;
    return draw_card(one);
  };
  const TemplateCard upper = card_of(Face::starboard), lower = card_of(Face::port);
  TemplateCard out;
  out.sheet.title = upper.sheet.title;
  out.origin = upper.origin;
  out.first_tenth = std::max(upper.first_tenth, lower.first_tenth);
  out.sheet.width = std::max(upper.sheet.width, lower.sheet.width);
  const double down = upper.origin.y() - lower.origin.y();
  out.sheet.height = down + lower.sheet.height;
  add_items(out.sheet, upper.sheet, {}, "starboard-");
  add_items(out.sheet, lower.sheet, {0, down}, "port-");
  return out;
}

Sheet draw_template(const TemplateOf& wanted) {
  std::string note;
  if (wanted.target.ahead && *wanted.target.ahead < -longest_reach) {
    note = "Stock centreline " + length_words(-*wanted.target.ahead, wanted.job) + " ahead of the leading edge.";
  }
  return framed(HalfCard(wanted, true).draw().sheet, wanted.job.units, note);
}

}  // namespace fairblade::drawing
