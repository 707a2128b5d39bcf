#include "drawing/nose_gauge.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/file_names.hpp"
#include "base/polyline.hpp"
#include "base/text.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/outline.hpp"
#include "drawing/template_drawing.hpp"

namespace fairblade::drawing {
namespace {

using fill::Nose;
using section::Face;

constexpr double gauge_rim = 2;     // paper round the card
constexpr double lap = 9;           // of the horn over the chord line
constexpr double clear = 3;         // between the lap and the leading edge
constexpr double mark_zone = 9;     // of the card, for the stock mark where it does not end there
constexpr double least_depth = 32;  // for FWD and UP on the horn

struct Line {
  std::string words;
  double size = 3;
  bool bold = false;
};

std::string upper_side(Face face) { return upper_case(section::name_of(face)); }
std::string place_of(const Nose& nose) { return nose.station ? "Station " + printable(nose.name) : printable(nose.name); }

/// Where the tail ends, in words.
std::string tail_words(const job::Job& job, const Nose& nose) {
  if (nose.ends_on_stock)
    return nose.tail == nose.ahead ? "The tail ends on the stock line." : "The horn ends on the stock line.";
  std::string out =
      "The tail ends " + length_words(nose.tail, job) + " aft, " + trimmed(100 * nose.tail_fraction, 1) + " % of the chord.";
  if (!nose.ahead) return out + " The stock's place is not known.";
  if (nose.stock) return out;
  return out + " The stock is " + length_words(std::abs(*nose.ahead), job) + (*nose.ahead < 0 ? " ahead" : " aft") +
         " of the leading edge.";
}

class Gauge {
 public:
  Gauge(const job::Job& job, const Nose& nose, Face face) : job_(job), nose_(nose), face_(face), out_(section::sign_of(face)) {
    for (const Point& p : nose.section.line(face)) {
      const double s = p.x() - nose.section.leading_edge_x;
      if (s < nose.tail - 1e-9) line_.emplace_back(s, p.y());
    }
    line_.emplace_back(nose.tail, ordinate_at(nose.section.line(face), nose.section.leading_edge_x + nose.tail));
    for (const Point& p : line_) {
      widest_ = std::max(widest_, p.y());
      deepest_ = std::min(deepest_, p.y());
    }
  }
  Sheet draw();

 private:
  /// The sheet's place of a point s mm aft of the leading edge and d mm outwards from the chord line.
  Point at(double s, double d) const { return {origin_.x() + s, origin_.y() + out_ * d}; }
  double top_of(double near, double far) const { return std::min(at(0, near).y(), at(0, far).y()); }
  bool tail_on_stock() const { return nose_.stock && *nose_.stock == nose_.tail; }
  bool horn_on_stock() const { return nose_.stock && *nose_.stock == -nose_.horn; }
  bool mark_on_tail() const { return nose_.stock && *nose_.stock >= 0 && !tail_on_stock(); }

  void word_lines();
  void place();
  void edges();
  void bolts();
  void stock();
  void direction();
  void words();

  const job::Job& job_;
  const Nose& nose_;
  Face face_;
  double out_;
  Polyline line_;
  double widest_ = 0, deepest_ = -lap, depth_ = 0, words_from_ = 0, words_room_ = 0;
  std::vector<Line> lines_;
  Sheet sheet_;
  Point origin_;
};

/// What is lettered, as large as the tail gives room for. Height, side and stage are never shortened.
void Gauge::word_lines() {
  words_room_ = nose_.tail - (tail_on_stock() ? 7.5 : 4);
  const auto add = [&](const std::string& words, double most, double least, bool bold) {
    lines_.push_back({words, size_that_fits(words, most, least, bold, words_room_), bold});
  };
  const std::string height = in_unit(nose_.down, job_.units), below = "below the top";
  const double one_line = size_that_fits(height + " " + below, 6, 1, true, words_room_);
  if (one_line >= 4) {
    add(height + " " + below, 6, 4, true);
  } else {
    add(height, 6, 3, true);
    add(below, 3.4, 2.4, true);
  }
  const std::string side = upper_side(face_), stage = stage_words(nose_.section);
  if (size_that_fits(side + " " + stage, 5, 1, true, words_room_) >= 3.6) {
    add(side + " " + stage, 5, 3.6, true);
  } else {
    add(side, 5, 2.4, true);
    add(stage, 4, 2.4, true);
  }
  if (nose_.station) add(place_of(nose_), 4, 3, true);
  const std::string& surface = nose_.section.stage.surface;
  if (!surface.empty()) lines_.push_back({"for the blade " + surface, 2.4});
  add(printable(job_.name), 3, 2.6, false);
  for (const std::string& each : wrapped(tail_words(job_, nose_), 2.4, false, words_room_)) lines_.push_back({each, 2.4});
}

void Gauge::place() {
  double high = 3;
  for (const Line& line : lines_) high += line_height(line.size);
  words_from_ = widest_ + (mark_on_tail() ? mark_zone : 1);
  depth_ = std::ceil(std::max(words_from_ + high, least_depth));
  sheet_.width = nose_.horn + nose_.tail + 2 * gauge_rim;
  sheet_.height = depth_ - deepest_ + 2 * gauge_rim;
  origin_ = Point(gauge_rim + nose_.horn, face_ == Face::port ? gauge_rim - deepest_ : sheet_.height - gauge_rim + deepest_);
}

void Gauge::edges() {
  std::vector<Point> working;
  for (const Point& p : line_) working.push_back(at(p.x(), p.y()));
  sheet_.items.emplace_back(Path{{working}, false, Pen::cut, Fill::none, "working-edge"});
  const double front = -nose_.horn, back = nose_.tail;
  Path card{{{working.back(), at(back, depth_), at(front, depth_), at(front, -lap), at(-clear, -lap), at(-clear, 0), at(0, 0)}},
            false,
            Pen::cut,
            Fill::none,
            "card-edges"};
  if (std::abs(line_.front().y()) > 1e-6) card.runs.front().push_back(working.front());
  sheet_.items.emplace_back(card);
  add_line(sheet_, at(front - gauge_rim, 0), at(-clear, 0), Pen::datum, "chord-line");
}

void Gauge::bolts() {
  int k = 0;
  for (const double ahead : bolt_places) {
    const Point centre = at(-ahead, 0);
    std::vector<Point> ring;
    constexpr int corners = 60;
    for (int i = 0; i < corners; ++i) {
      const double angle = 2 * std::numbers::pi * i / corners;
      ring.emplace_back(centre.x() + bolt_hole / 2 * std::cos(angle), centre.y() + bolt_hole / 2 * std::sin(angle));
    }
    const std::string id = "hole-" + std::to_string(++k);
    sheet_.items.emplace_back(Path{{ring}, true, Pen::outline, Fill::none, id});
    add_cross(sheet_, centre, id + "-centre");
  }
}

/// A mark to lay on the stock line that is drawn on the blade.
void Gauge::stock() {
  if (!nose_.stock) return;
  const double s = *nose_.stock, x = at(s, 0).x();
  const auto label = [&](double inwards, double d) {
    add_text(sheet_, {x + inwards, at(0, d).y()}, "stock line", 2.4, Anchor::middle, false, -90);
  };
  if (tail_on_stock()) {
    add_line(sheet_, at(s, line_.back().y()), at(s, depth_), Pen::datum, "stock");
    label(-1.6, (line_.back().y() + depth_) / 2);
  } else if (horn_on_stock()) {
    add_line(sheet_, at(s, -lap), at(s, depth_), Pen::datum, "stock");
    label(3.6, depth_ / 2 + 4);
  } else if (mark_on_tail()) {
    const double d = s > 0 ? ordinate_at(line_, s) : 0;
    add_line(sheet_, at(s, d), at(s, words_from_ - 1), Pen::datum, "stock");
    const bool before = s > nose_.tail / 2 || x + 3 + width_of("stock line", 2.4, false) > sheet_.width;  // it, to the left
    add_text(sheet_, {x + (before ? -1.5 : 1.5), top_of(widest_ + 1, words_from_ - 1.5) + 5}, "stock line", 2.4,
             before ? Anchor::end : Anchor::start);
  } else {
    add_line(sheet_, at(s, -lap), at(s, 6), Pen::datum, "stock");
    add_text(sheet_, {std::clamp(x, at(-nose_.horn, 0).x() + 9, at(0, 0).x() - 9), top_of(6.5, 9.5) + 2.6}, "stock line", 2.4,
             Anchor::middle);
  }
}

void Gauge::direction() {
  const double middle = at(-fill::shortest_horn / 2 - 0.5, 0).x();
  const double top = top_of(10, depth_ - 1);
  const double slack = depth_ - 11 - 20;
  add_forward_arrow(sheet_, {middle - 10, top + 6 + slack / 2}, 20);
  add_up_mark(sheet_, {middle, top + 11.5 + slack / 2});
  add_text(sheet_, {middle, top + 18.5 + slack / 2}, "UP", 4, Anchor::middle, true);
}

void Gauge::words() {
  Column column(sheet_, at(0, 0).x() + 1.5, top_of(words_from_ + 0.5, depth_ - 1.5), words_room_ + 1);
  for (const Line& line : lines_) column.line(line.words, line.size, line.bold);
}

Sheet Gauge::draw() {
  sheet_.title = printable("Leading-edge gauge " + place_of(nose_) + ", " + section::name_of(face_) + ", " +
                           stage_words(nose_.section) + ", " + job_.name);
  word_lines();
  place();
  edges();
  bolts();
  stock();
  direction();
  words();
  return std::move(sheet_);
}

}  // namespace

Sheet draw_gauge(const job::Job& job, const Nose& nose, Face face) { return Gauge(job, nose, face).draw(); }

Sheet draw_gauge_sheet(const job::Job& job, const Nose& nose) {
  const Sheet starboard = draw_gauge(job, nose, Face::starboard), port = draw_gauge(job, nose, Face::port);
  constexpr double apart = 4;
  Sheet both;
  both.title =
      printable("Leading-edge gauge " + place_of(nose) + ", both halves, " + stage_words(nose.section) + ", " + job.name);
  both.width = std::max({port.width, starboard.width, check_bar_length});
  add_items(both, starboard, {0, 0}, "starboard-");
  add_items(both, port, {0, starboard.height + apart}, "port-");
  const auto length = [&](double mm) { return length_words(mm, job); };
  Column column(both, 0, starboard.height + apart + port.height + 2, both.width);
  column.paragraph("Nose radius " + length(nose.radius) + "; " + length(nose.girth) +
                       " round the nose between the gauge's ends. Cut both halves on the heavy lines, drill " +
                       trimmed(bolt_hole, 1) +
                       " mm on the crosses, and bolt the horns together: the crosses lie on the chord line.",
                   2.8);
  both.height = column.bottom() + 1;
  return framed(both, job.units);
}

std::vector<Card> gauge_cards(const job::Job& job, const std::vector<Nose>& noses) {
  std::vector<Card> out;
  std::vector<std::string> names;
  for (const Nose& nose : noses) names.push_back(nose.name);
  names = file_names_of(names);
  for (std::size_t k = 0; k < noses.size(); ++k) {
    if (!noses[k].why_none.empty()) continue;
    for (const Face face : {Face::port, Face::starboard}) {
      const auto& section = noses[k].section;
      const std::string side = section::name_of(face);
      out.push_back(
          {names[k] + "-nose-" + side + "-" + fill::name_of(section.stage.kind) + (section.stand_off > 0 ? "-clearance" : ""),
           printable(noses[k].name) + ", nose, " + side + ", " + stage_words(section), draw_gauge(job, noses[k], face)});
    }
  }
  return out;
}

}  // namespace fairblade::drawing
