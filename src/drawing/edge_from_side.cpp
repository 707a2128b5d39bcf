#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "base/units.hpp"
#include "drawing/edge_card.hpp"
#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"

namespace fairblade::drawing {
namespace {

using fill::EdgeCard;
using fill::EdgeHeight;

constexpr double batten_width = 45;                   // mm, of the timber as drawn
constexpr double names_room = 22, numbers_room = 46;  // mm of paper, left and right
constexpr double side_head = 13, side_foot = 4, side_type = 2.5, side_pitch = 3.5;

class EdgeFromSide {
 public:
  EdgeFromSide(const job::Job& job, const EdgeCard& card, double width, double highest) : job_(job), card_(card) {
    top_ = card.heights.front().down;
    span_ = card.heights.back().down - top_;
    for (const EdgeHeight& h : card.heights) {
      aft_ = std::max({aft_, h.saw, *h.batten + batten_width});
      fore_ = std::min(fore_, h.saw);
    }
    constexpr std::array<double, 10> scales{1, 2, 4, 5, 10, 20, 25, 50, 100, 200};
    for (const double one : scales) {
      per_ = one;
      if ((aft_ - fore_) / one <= width - names_room - numbers_room && span_ / one <= highest - side_head - side_foot) break;
    }
    sheet_.width = width;
    sheet_.height = side_head + span_ / per_ + side_foot;
  }
  Sheet draw();

 private:
  Point at(double aft, double down) const { return {names_room + (aft - fore_) / per_, side_head + (down - top_) / per_}; }
  std::vector<std::size_t> lettered() const;
  void letter(const EdgeHeight& h);

  const job::Job& job_;
  const EdgeCard& card_;
  double top_ = 0, span_ = 0, aft_ = 0, fore_ = 0, per_ = 1;
  Sheet sheet_;
};

/// Ends first, then stations, then the rest, as far as there is room on the paper.
std::vector<std::size_t> EdgeFromSide::lettered() const {
  std::vector<std::size_t> out;
  const auto take = [&](std::size_t k) {
    const double y = at(0, card_.heights[k].down).y();
    const auto near = [&](std::size_t other) { return std::abs(at(0, card_.heights[other].down).y() - y) < side_pitch; };
    if (std::none_of(out.begin(), out.end(), near)) out.push_back(k);
  };
  take(0);
  take(card_.heights.size() - 1);
  for (const bool stations : {true, false}) {
    for (std::size_t k = 0; k < card_.heights.size(); ++k) {
      if (card_.heights[k].station.has_value() == stations) take(k);
    }
  }
  return out;
}

void EdgeFromSide::letter(const EdgeHeight& h) {
  const double y = at(0, h.down).y(), baseline = y + 0.36 * side_type;
  add_line(sheet_, {names_room - 1, y}, at(h.saw, h.down), Pen::dimension);
  add_text(sheet_, {names_room - 2, baseline}, shortened(h.name, side_type, false, names_room - 3), side_type, Anchor::end);
  std::string words = "saw " + number_in_unit(h.saw, job_.units) + ", batten " + number_in_unit(*h.batten, job_.units);
  const double right = at(aft_, 0).x();
  add_line(sheet_, at(*h.batten + batten_width, h.down), {right + 1, y}, Pen::dimension);
  add_text(sheet_, {right + 2, baseline}, words, side_type);
}

Sheet EdgeFromSide::draw() {
  add_text(sheet_, {0, 3.4},
           "From the port side, 1 : " + trimmed(per_, 0) + "; numbers in " + unit_words(job_) + " aft of the stock centreline",
           2.7);
  add_forward_arrow(sheet_, {2, 10.5}, 18);
  const double bottom = top_ + span_;
  add_line(sheet_, {at(0, 0).x(), side_head - 4}, {at(0, 0).x(), sheet_.height}, Pen::datum, "stock");
  add_text(sheet_, {at(0, 0).x() + 1.2, side_head - 2}, "stock", side_type);
  Path edge{{{}}, false, Pen::outline, Fill::none, "edge"};
  for (const EdgeHeight& h : card_.heights) edge.runs.back().push_back(at(h.saw, h.down));
  const double from = *card_.heights.front().batten, to = *card_.heights.back().batten;
  sheet_.items.emplace_back(Path{{{at(from, top_), at(from + batten_width, top_), at(to + batten_width, bottom), at(to, bottom)}},
                                 true,
                                 Pen::measured,
                                 Fill::light,
                                 "batten"});
  sheet_.items.emplace_back(edge);
  add_text(sheet_, {at(aft_, 0).x() + 2, side_head - 3.5}, "grey: batten, clamped at its ends", side_type);
  // Clamps, where the two dark blocks stand.
  for (const bool lower : {false, true}) {
    const double x = (lower ? to : from) + batten_width / 2, y = at(0, lower ? bottom : top_).y() + (lower ? -1.6 : 1.6);
    const double left = at(x, 0).x() - 1.2;
    sheet_.items.emplace_back(
        Path{{{{left, y - 1}, {left + 2.4, y - 1}, {left + 2.4, y + 1}, {left, y + 1}}}, true, Pen::none, Fill::dark, {}});
  }
  for (const std::size_t k : lettered()) letter(card_.heights[k]);
  return std::move(sheet_);
}

}  // namespace

Sheet draw_edge_from_side(const job::Job& job, const EdgeCard& card, double width, double highest) {
  return EdgeFromSide(job, card, width, highest).draw();
}

}  // namespace fairblade::drawing
