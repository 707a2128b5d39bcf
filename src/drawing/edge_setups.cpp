#include <algorithm>
#include <array>
#include <cmath>

#include "base/polyline.hpp"
#include "base/text.hpp"
#include "base/units.hpp"
#include "drawing/edge_card.hpp"
#include "drawing/hatch.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

using fill::EdgeCard;
using fill::EdgeHeight;

constexpr double tail = 52, timber_long = 34, timber_thick = 18;  // mm, as drawn at full size
constexpr double setup_head = 9, setup_foot = 9, setup_type = 2.5;
constexpr double tallest = 62;  // mm of drawing at full size, else half size

/// The end of the top section as it is sawn: s aft of the saw line, starboard up.
class Tail {
 public:
  Tail(const job::Job& job, const EdgeCard& card, double width, bool saw) : job_(job), card_(card), saw_(saw) {
    const auto& section = *card.shown;
    from_ = -std::min(tail, section.trailing_edge_x - section.leading_edge_x);
    const auto& top = card.heights.front();
    edge_ = {section.port.back().y(), section.starboard.back().y()};
    for (int face = 0; face < 2; ++face) {
      end_[face] = edge_[face] - top.taper[face] * card.build_past;
    }
    timber();
    up_ = std::max({greatest(section.starboard), timber_top_, end_[1]}) + 3;
    down_ = std::max({greatest(section.port), -timber_bottom_, end_[0]}) + 3;
    aft_ = card.build_past + (saw ? 8 : timber_long + 2);
    per_ = up_ + down_ > tallest || aft_ - from_ > 110 ? 2 : 1;
    while ((up_ + down_) / per_ > 80) per_ *= 2;
    sheet_.width = width;
    words_left_ = (aft_ - from_) / per_ + 4;
  }
  Sheet draw();

 private:
  Point at(double s, double to_starboard) const { return {(s - from_) / per_, setup_head + (up_ - to_starboard) / per_}; }
  double greatest(const Polyline& line) const {
    double most = 0;
    for (const Point& p : line) {
      if (p.x() >= card_.shown->trailing_edge_x + from_) most = std::max(most, p.y());
    }
    return std::max(most, face(line, from_));
  }
  double face(const Polyline& line, double s) const { return ordinate_at(line, card_.shown->trailing_edge_x + s); }
  void timber();
  void section();
  void paste();
  void wood();
  void marks();
  std::string bent() const;
  std::string inside() const;
  double words();

  const job::Job& job_;
  const EdgeCard& card_;
  bool saw_;
  double from_ = 0, aft_ = 0, up_ = 0, down_ = 0, per_ = 1, words_left_ = 0;
  std::array<double, 2> edge_{}, end_{};
  double timber_from_ = 0, timber_to_ = 0, timber_top_ = 0, timber_bottom_ = 0;
  Sheet sheet_;
};

void Tail::timber() {
  if (saw_) {
    timber_to_ = 0;
    timber_from_ = std::max(-46.0, from_);
    timber_bottom_ = edge_[1];
    for (double s = timber_from_; s < 0; s += 0.5) {
      timber_bottom_ = std::max(timber_bottom_, face(card_.shown->starboard, s));
    }
    timber_top_ = timber_bottom_ + timber_thick;
    return;
  }
  timber_from_ = card_.build_past;
  timber_to_ = timber_from_ + timber_long;
  const double most = std::max({edge_[0], edge_[1], end_[0], end_[1], timber_thick / 2 - 5.0});
  timber_top_ = most + 5;
  timber_bottom_ = -timber_top_;
}

void Tail::section() {
  for (const bool port : {true, false}) {
    const Polyline& line = port ? card_.shown->port : card_.shown->starboard;
    const double sign = port ? -1 : 1;
    Path path{{{at(from_, sign * face(line, from_))}}, false, Pen::outline, Fill::none, port ? "port" : "starboard"};
    for (const Point& p : line) {
      const double s = p.x() - card_.shown->trailing_edge_x;
      if (s > from_) path.runs.back().push_back(at(s, sign * p.y()));
    }
    sheet_.items.emplace_back(path);
  }
  add_line(sheet_, at(from_, 0), at(aft_, 0), Pen::datum, "chord");
}

void Tail::paste() {
  const double b = card_.build_past;
  if (b <= 0) return;
  const std::vector<Point> corners{at(0, edge_[1]), at(b, end_[1]), at(b, -end_[0]), at(0, -edge_[0])};
  if (saw_) {
    sheet_.items.emplace_back(Path{{corners}, false, Pen::guide, Fill::none, "sawn-off"});
    return;
  }
  sheet_.items.emplace_back(hatch({polygon_of(corners)}, 1.1, true));
  sheet_.items.emplace_back(Path{{corners}, false, Pen::measured, Fill::none, "paste"});
}

void Tail::wood() {
  const std::vector<Point> corners{at(timber_from_, timber_top_), at(timber_to_, timber_top_), at(timber_to_, timber_bottom_),
                                   at(timber_from_, timber_bottom_)};
  sheet_.items.emplace_back(Path{{corners}, true, Pen::measured, Fill::light, "timber"});
  const Point middle = at((timber_from_ + timber_to_) / 2, (timber_top_ + timber_bottom_) / 2);
  add_text(sheet_, {middle.x(), middle.y() + (saw_ ? 0.9 : -1.2)}, "timber", setup_type, Anchor::middle);
  if (!saw_) {
    add_line(sheet_, corners.front(), corners.back(), Pen::cut, "tape");
    return;
  }
  // The wedge between the timber and the face.
  std::vector<Point> wedge{at(timber_from_, timber_bottom_), at(0, timber_bottom_)};
  for (double s = 0; s >= timber_from_; s -= 1) wedge.push_back(at(s, face(card_.shown->starboard, s)));
  const Polygon gap = polygon_of(wedge);
  if (area(gap) > 1) sheet_.items.emplace_back(hatch({gap}, 0.9, false));
}

void Tail::marks() {
  const double low = -down_ + 1;
  const double high = saw_ ? timber_top_ + 2.5 : std::max(edge_[1] + 4, 4.0);
  add_line(sheet_, at(0, high), at(0, low), saw_ ? Pen::cut : Pen::guide, "saw-line");
  const double y = at(0, low).y();
  if (!saw_) add_line(sheet_, at(card_.build_past, timber_bottom_), at(card_.build_past, low), Pen::dimension);
  add_text(sheet_, {at(0, 0).x() - 1, y + 1.5}, "saw line", setup_type, Anchor::end);
  if (!saw_) {
    add_text(sheet_, {at(card_.build_past, 0).x() + 1, y + 1.5}, "past it " + length_words(card_.build_past, job_), setup_type);
    add_arrow(sheet_, at(card_.build_past / 2, low + 0.6), at(card_.build_past, low + 0.6), Pen::dimension);
    add_arrow(sheet_, at(card_.build_past / 2, low + 0.6), at(0, low + 0.6), Pen::dimension);
  }
}

/// Where a straight timber would stand off an edge that is curved, seen from the side; empty where it does not to speak of.
std::string Tail::bent() const {
  constexpr double to_speak_of = 1;  // mm: what a saw and a plane put right
  std::string out;
  const auto told = [&](const std::optional<std::size_t>& k, const char* side) {
    if (!k || std::abs(card_.heights[*k].miss) <= to_speak_of) return;
    const EdgeHeight& h = card_.heights[*k];
    out += (out.empty() ? "" : ", ") + length_words(std::abs(h.miss), job_) + side +
           shortened(where_words(h.name, h.station.has_value()), setup_type, false, 34);
  };
  told(card_.furthest_in, " inside it ");
  told(card_.furthest_out, " outside it ");
  return out;
}

/// Where a straight dam would stand inside the edge itself; empty where it does not.
std::string Tail::inside() const {
  if (!card_.furthest_in) return {};
  const EdgeHeight& h = card_.heights[*card_.furthest_in];
  if (-h.miss < card_.build_past) return {};
  return " Bend it to \"saw at\" of the table and " + length_words(card_.build_past, job_) +
         ": straight it would stand inside the edge itself, " +
         shortened(where_words(h.name, h.station.has_value()), setup_type, false, 34) + " most.";
}

double Tail::words() {
  const EdgeHeight &top = card_.heights.front(), &bottom = card_.heights.back();
  const std::string from = card_.from_stock ? " aft of the stock" : " aft of the old leading edge";
  const auto where = [](const EdgeHeight& h) {
    return shortened(where_words(h.name, h.station.has_value()), setup_type, false, 34);
  };
  const auto places = [&](double past) {
    const auto place = [&](const EdgeHeight& h) { return length_words(h.saw + past, job_) + " " + where(h); };
    const std::string first = place(top);
    return card_.heights.size() < 2 ? first + from : first + " and " + place(bottom) + from;
  };
  Column column(sheet_, words_left_, setup_head - 2, sheet_.width - words_left_);
  if (saw_) {
    const std::string curve = bent();
    const std::string timber = !curve.empty() ? "mark \"saw at\" of the table at every height, and bend a batten to the marks: "
                               : card_.nothing_to_build ? "clamp a timber as straight edge: its edge "
                                                        : "move the timber forward: its edge ";
    column.paragraph(
        "When both faces are hard and fair, " + timber + places(0) + ". A wedge (hatched) keeps it square to the centre plane.",
        setup_type);
    column.skip(1);
    if (!curve.empty()) {
      column.paragraph("The edge is curved: saw along nothing straight, which would stand " + curve + ".", setup_type);
      column.skip(1);
    }
    column.paragraph("Saw along it, then plane the edge face square.", setup_type);
    column.skip(1);
    column.paragraph("Edge face after the saw: " + length_words(top.widths.front(), job_) + " " + where(top) + ".", setup_type);
  } else {
    column.paragraph(
        "Tape the straight edge of a timber, so that the paste lets go of it. Clamp it square to the centre plane: its taped "
        "edge " +
            places(card_.build_past) + "." + inside(),
        setup_type);
    column.skip(1);
    column.paragraph("Fill up to the tape (hatched). Screed both faces so that they run on straight to the timber.", setup_type);
  }
  return column.bottom();
}

Sheet Tail::draw() {
  const std::string scale = per_ == 1 ? ", full size" : ", 1 : " + trimmed(per_, 0);
  add_text(sheet_, {0, 3.6},
           (saw_ && !bent().empty()  ? std::string(card_.nothing_to_build ? "" : "2. ") + "A batten for the saw, bent to the edge"
            : card_.nothing_to_build ? "A timber as straight edge for the saw"
            : saw_                   ? "2. The same timber as straight edge for the saw"
                                     : "1. The timber as dam for the paste") +
               scale,
           3, Anchor::start, true);
  section();
  paste();
  wood();
  marks();
  const double drawn = at(0, -down_).y() + setup_foot - 4;
  sheet_.height = std::max(drawn, words() + 1);
  return std::move(sheet_);
}

}  // namespace

Sheet draw_dam(const job::Job& job, const EdgeCard& card, double width) { return Tail(job, card, width, false).draw(); }
Sheet draw_saw(const job::Job& job, const EdgeCard& card, double width) { return Tail(job, card, width, true).draw(); }

}  // namespace fairblade::drawing
