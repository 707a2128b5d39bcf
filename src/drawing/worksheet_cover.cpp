#include <algorithm>
#include <array>

#include "base/cautions.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/worksheet.hpp"
#include "drawing/worksheet_parts.hpp"

namespace fairblade::drawing {
namespace {

using job::MeasuredBy;
using worksheet::on_rule_with_unit;

constexpr double cover_type = 2.85, heading = 3.8;  // mm
constexpr double left_part = 88, right_from = 94;

// Of the cautions those for somebody who measures; the others are on what plan prints.
constexpr std::array<std::size_t, 4> when_measuring{2, 3, 5, 6};
static_assert(cautions[2].starts_with("Old antifouling") && cautions[3].starts_with("Treat old paint") &&
              cautions[5].starts_with("Never work under") && cautions[6].starts_with("Fairing adds no strength"));

class Cover {
 public:
  Cover(const worksheet::Worksheet& worksheet, double height) : worksheet_(worksheet), job_(worksheet.job) {
    for (const auto& station : job_.stations) {
      skeg_ = skeg_ || station.skeg > 0;
      all_skeg_ = all_skeg_ && station.skeg > 0;
      boards_ = boards_ || station.measured_by != MeasuredBy::thickness;
      gaps_ = gaps_ || station.measured_by == MeasuredBy::gaps;
    }
    // Shown is the way that takes more explaining, where there are two.
    const auto jig = std::find_if(job_.stations.begin(), job_.stations.end(),
                                  [](const auto& one) { return one.measured_by != MeasuredBy::thickness; });
    shown_ = jig == job_.stations.end() ? &job_.stations.front() : &*jig;
    sheet_.width = worksheet_width;
    sheet_.height = height;
    sheet_.title = "Measuring sheets";
  }
  /// The side view takes what room the words leave.
  Sheet draw(double picture);
  double bottom() const { return y_; }

 private:
  void head();
  void beside_side_view(Column& column) const;
  void beside_jig(Column& column) const;
  void foot();
  std::string which_pages() const;

  const worksheet::Worksheet& worksheet_;
  const job::ToMeasure& job_;
  bool boards_ = false, gaps_ = false, skeg_ = false, all_skeg_ = true;
  const job::StationToMeasure* shown_ = nullptr;
  Sheet sheet_;
  double y_ = 0;
};

void Cover::head() {
  Column column(sheet_, 0, 0, worksheet_width);
  const std::string name = printable(job_.job);
  column.line(name, size_that_fits(name, 6.5, 4, true, worksheet_width), true);
  column.line("Measuring sheets: print, take to the yard, write by hand", 4.2);
  column.skip(1);
  column.paragraph(which_pages() + " Write with a soft pencil, and photograph each page when it is full.", cover_type);
  y_ = column.bottom() + 3;
}

std::string Cover::which_pages() const {
  const std::size_t count = job_.stations.size();
  const std::string last = std::to_string(count + 2), name = job_.stations[worksheet_.twice].name;
  std::string out = count == 1 ? "Page 2 is for the station"
                               : "Pages 2 to " + std::to_string(count + 1) + " are for the stations, from the top down";
  return out + "; page " + last + " is for station " + shortened(name, cover_type, false, 40) +
         " a second time, to learn your own error.";
}

void Cover::beside_side_view(Column& column) const {
  column.line("Bring", heading, true);
  column.paragraph(
      std::string(
          "These sheets, pencil and marker, masking tape, tape measure, steel rule, a straight batten longer than the chord, "
          "a square, string, calipers that span the blade (big wooden ones will do)") +
          (boards_ ? ", two straight boards a hand longer than the chord, two spacers of one length, clamps." : "."),
      cover_type);
  column.skip(2);
  column.line("The stock line comes first", heading, true);
  column.paragraph(
      "A worn leading edge is no datum: the stock is. Hold the batten, or a taut string, along the middle of the stock and carry "
      "its line down both "
      "faces with the marker, to the bottom. At each station write how far the leading edge stands ahead of that line. Hung on "
      "pintles? Then it runs through their middles.",
      cover_type);
  column.skip(2);
  column.line("Then the stations", heading, true);
  column.paragraph(
      "Mark each distance down the stock line from the top of the blade. Square to the stock line, not level, for the stock may "
      "rake, draw the "
      "station right round the blade. If your mark had to move, write where it is. Where an edge has a kink, put a station of "
      "its own; where the tip is rounded or cut "
      "away, move the lowest station up to the last place with a whole section, and write its distance.",
      cover_type);
  if (!skeg_) return;
  column.paragraph(
      "Where a skeg stands ahead, write how far its leading edge stands ahead of the rudder's, and the gap between them.",
      cover_type);
}

void Cover::beside_jig(Column& column) const {
  column.line(boards_ ? "Two boards and the calipers" : "Rule and calipers", heading, true);
  if (boards_) {
    column.paragraph(
        "Clamp the boards to the spacers, one on each side, in the cut of the station, so that they are parallel and clear of "
        "the blade. The centre "
        "plane runs through the stock line and the trailing edge of the top station: set the boards equally far from it" +
            std::string(gaps_ ? ", and write how far." : "."),
        cover_type);
    column.skip(1);
    column.paragraph(
        gaps_ ? "Stand the square on a board at each x, and read the gap from the board to the blade. Half-breadths are worked "
                "out by fairblade."
              : "Stand the square on a board at each x, read the gap from the board to the blade, and write board less gap.",
        cover_type);
    column.skip(1);
    column.paragraph("Then the calipers at the same x: port and starboard together must come to what they say, within " +
                         caliper_slack(job_.units) + ". If not, something has slipped: read again, now.",
                     cover_type);
  } else {
    column.paragraph(
        std::string(shown_->x_from == job::XFrom::leading_edge ? "Hold the batten across the nose, square to the chord, and lay "
                                                                 "the rule aft from it: so x is counted from the leading edge. "
                                                               : "") +
            "Mark each x on both faces, then read the calipers across the two marks. Thickness alone does not tell whether one "
            "side is fuller.",
        cover_type);
  }
  column.skip(1);
  column.paragraph(
      "Twist shows at the trailing edge: sighted along from below, that of a twisted blade walks out of the plane through the "
      "stock line and the "
      "trailing edge of the top station. At each station write how far its middle stands off that plane, and to which side.",
      cover_type);
}

void Cover::foot() {
  Column column(sheet_, 0, y_, worksheet_width);
  column.line("Before you put anything away", heading, true);
  column.paragraph(
      std::string("Read x = 0 and the trailing edge too") +
          (all_skeg_ ? "." : ", and most of the places ahead of a tenth of the chord.") +
          " Chord measured twice? Port "
          "and starboard not "
          "changed over (port is left, looking forward)? One unit throughout? Then type it in and let fairblade check judge it, "
          "before the "
          "boat is out of reach.",
      cover_type);
  column.skip(2);
  column.line("Cautions", heading, true);
  column.paragraph(cautions_first, cover_type);
  for (const std::size_t k : when_measuring) column.paragraph("- " + std::string(cautions[k]), cover_type);
  y_ = column.bottom();
}

Sheet Cover::draw(double picture) {
  head();
  const double top = y_;
  Column left(sheet_, 0, top, left_part);
  left.line("Where the stations lie", heading, true);
  const bool guessed = std::any_of(job_.stations.begin(), job_.stations.end(), [](const auto& one) { return !one.ahead; });
  left.paragraph("distance down from the top of the blade, " + std::string(name_of(job_.units)) +
                     (guessed ? "; a fifth of the chord ahead of the stock is a guess" : ""),
                 2.4);
  add_items(sheet_, draw_stations_from_side(worksheet_, left_part, picture), {0, left.bottom() + 1}, "side-");
  Column right(sheet_, right_from, top, worksheet_width - right_from);
  beside_side_view(right);
  y_ = std::max(left.bottom() + 1 + picture, right.bottom()) + 3;
  const double jig = y_;
  add_items(sheet_, draw_holding(*shown_, job_.units), {0, jig}, "holding-");
  Column words(sheet_, holding_width + 4, jig, worksheet_width - holding_width - 4);
  beside_jig(words);
  y_ = std::max(jig + holding_height, words.bottom()) + 2;
  foot();
  return std::move(sheet_);
}

}  // namespace

Sheet draw_worksheet_cover(const worksheet::Worksheet& worksheet, Point room) {
  constexpr double least_picture = 50, most_picture = 100;
  const double height = height_for(room);
  Cover first(worksheet, height);
  first.draw(least_picture);
  // What stands beside the side view may be the higher of the two; then a larger picture costs less than it takes.
  double picture = std::clamp(least_picture + height - first.bottom(), least_picture, most_picture);
  for (; picture < most_picture; picture += 1) {
    Cover next(worksheet, height);
    next.draw(picture + 1);
    if (next.bottom() > height) break;
  }
  return fitted_to(room, Cover(worksheet, height).draw(picture));
}

}  // namespace fairblade::drawing
