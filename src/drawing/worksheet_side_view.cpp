#include <algorithm>
#include <cmath>

#include "drawing/lettering.hpp"
#include "drawing/marks.hpp"
#include "drawing/readings_table.hpp"
#include "drawing/worksheet_parts.hpp"

namespace fairblade::drawing {
namespace {

using worksheet::on_rule;

constexpr double view_head = 9, view_foot = 6, view_type = 2.7, view_pitch = 3.9;  // mm
constexpr double labels = 42;                                                      // mm of the width
constexpr double usual_ahead = 0.2;  // of the chord, where nobody has said: the drawing needs a stock line

class SideView {
 public:
  SideView(const worksheet::Worksheet& worksheet, double width, double height)
      : worksheet_(worksheet), stations_(worksheet.job.stations) {
    sheet_.width = width;
    sheet_.height = height;
    place();
  }
  Sheet draw() {
    outline();
    stock();
    lines();
    return std::move(sheet_);
  }

 private:
  static double ahead_of(const job::StationToMeasure& station) { return station.ahead.value_or(usual_ahead * station.chord); }
  Point at(double aft, double down) const { return {left_ + (aft - fore_) * scale_, view_head + (down - top_) * scale_}; }
  void place();
  void outline();
  void stock();
  void lines();
  void line(std::size_t k, double y);

  const worksheet::Worksheet& worksheet_;
  const std::vector<job::StationToMeasure>& stations_;
  Sheet sheet_;
  double top_ = 0, bottom_ = 0, fore_ = 0, aft_ = 0, scale_ = 1, left_ = 2;
};

void SideView::place() {
  top_ = std::min(0.0, stations_.front().down);
  for (const auto& station : stations_) {
    fore_ = std::min(fore_, -ahead_of(station));
    aft_ = std::max(aft_, station.chord - ahead_of(station));
  }
  bottom_ = std::max(worksheet_.job.bottom.value_or(stations_.back().down), stations_.back().down);
  bottom_ = std::max(bottom_, top_ + 0.4 * (aft_ - fore_));  // a lone station
  const double room = sheet_.width - labels - left_ - 3;
  scale_ = std::min(room / (aft_ - fore_), (sheet_.height - view_head - view_foot) / (bottom_ - top_));
}

/// Straight on above the first and below the last station, where nobody has measured.
void SideView::outline() {
  std::vector<Point> fore{at(-ahead_of(stations_.front()), top_)};
  std::vector<Point> back{at(stations_.front().chord - ahead_of(stations_.front()), top_)};
  for (const auto& station : stations_) {
    fore.push_back(at(-ahead_of(station), station.down));
    back.push_back(at(station.chord - ahead_of(station), station.down));
  }
  fore.push_back(at(-ahead_of(stations_.back()), bottom_));
  back.push_back(at(stations_.back().chord - ahead_of(stations_.back()), bottom_));
  fore.insert(fore.end(), back.rbegin(), back.rend());
  sheet_.items.emplace_back(Path{{fore}, true, Pen::outline, Fill::light, "blade"});
}

void SideView::stock() {
  const Point top = at(0, top_), bottom = at(0, bottom_);
  for (const double side : {-0.9, 0.9}) add_line(sheet_, {top.x() + side, 1.5}, {top.x() + side, top.y()}, Pen::measured);
  add_line(sheet_, {top.x(), 1}, {top.x(), bottom.y() + 2}, Pen::datum, "stock-line");
  add_text(sheet_, {std::max(top.x(), 8.0), bottom.y() + 5}, "stock line", view_type, Anchor::middle);
  // The arrows stand above the labels, clear of the blade.
  const double x = sheet_.width - labels + 4;
  add_arrow(sheet_, {x + 12, 5}, {x, 5}, Pen::outline);
  add_text(sheet_, {x + 8, 3}, "FWD", 3, Anchor::middle, true);
  add_arrow(sheet_, {x + 22, 8}, {x + 22, 0.5}, Pen::outline);
  add_text(sheet_, {x + 24, 5.5}, "UP", 3, Anchor::start, true);
}

void SideView::line(std::size_t k, double y) {
  const auto& station = stations_[k];
  const double begin = sheet_.width - labels;
  const Point aft = at(station.chord - ahead_of(station), station.down);
  add_line(sheet_, at(-ahead_of(station), station.down), aft, Pen::cut);
  sheet_.items.emplace_back(
      Path{{{aft, {begin - 1.5, aft.y()}, {begin, y}, {begin + 1, y}}}, false, Pen::dimension, Fill::none, {}});
  const std::string where = on_rule(station.down, worksheet_.job.units) + ", page " + std::to_string(k + 2);
  constexpr double gap = 1.5;
  const double for_where = width_of(where, view_type, false), room = labels - 2 * gap;
  const std::string name = shortened(station.name, view_type, true, std::max(room - for_where, 4.0));
  const double after = width_of(name, view_type, true) + gap;
  add_text(sheet_, {begin + gap, y + 0.36 * view_type}, name, view_type, Anchor::start, true);
  add_text(sheet_, {begin + gap + after, y + 0.36 * view_type}, shortened(where, view_type, false, room - after + gap),
           view_type);
}

/// All of them, or every so many where they crowd, and the last.
void SideView::lines() {
  const auto most = static_cast<std::size_t>((sheet_.height - view_head - view_foot) / view_pitch);
  const std::size_t step = (stations_.size() + most - 1) / most;
  std::vector<std::size_t> shown;
  for (std::size_t k = 0; k < stations_.size(); k += step) shown.push_back(k);
  if (shown.back() + 1 != stations_.size()) shown.back() = stations_.size() - 1;
  std::vector<double> wanted;
  for (const std::size_t k : shown) wanted.push_back(at(0, stations_[k].down).y());
  std::vector<double> places = spread(wanted, view_pitch);
  const double low = view_head + 2, high = sheet_.height - 2;
  const double shift = std::clamp(0.0, low - places.front(), std::max(low - places.front(), high - places.back()));
  for (double& y : places) y += shift;
  for (std::size_t k = 0; k < shown.size(); ++k) line(shown[k], places[k]);
}

}  // namespace

Sheet draw_stations_from_side(const worksheet::Worksheet& worksheet, double width, double height) {
  return SideView(worksheet, width, height).draw();
}

}  // namespace fairblade::drawing
