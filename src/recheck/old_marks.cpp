#include "recheck/old_marks.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::recheck {
namespace {

constexpr double clear_factor = 4;  // between the two sums of squares
constexpr double beyond_error = 5;  // standard deviations of a sum of n squares, sqrt(2n)
constexpr double edge_itself = 2;   // reading errors: a half-breadth at x = 0 that is none
constexpr std::size_t enough = 4;   // readings

}  // namespace

void OldMarks::weigh(const job::RoundStation& station, const Surface& surface) {
  const double built_out = -surface.section.leading_edge_x;
  if (std::abs(built_out) < 1e-6) return;
  if (line_ == 0) {
    line_ = station.place.line;
    least_ = most_ = built_out;
  }
  least_ = std::min(least_, built_out);
  most_ = std::max(most_, built_out);
  const FaceLine to_port(surface.section.port), to_starboard(surface.section.starboard);
  for (const job::Reading& one : station.readings) {
    std::optional<double> port = one.port, starboard = one.starboard;
    if (station.measured_by == job::MeasuredBy::thickness) {
      port.reset();
      if (one.caliper) port = *one.caliper / 2;  // near enough to tell the two edges from each other
      starboard.reset();
    }
    if (port) weigh(surface.section, to_port, one.x, *port);
    if (starboard) weigh(surface.section, to_starboard, one.x, *starboard);
  }
}

void OldMarks::weigh(const fill::StageSection& section, const FaceLine& face, double x, double half_breadth) {
  const double by_new = section.leading_edge_x + x, by_old = x;
  if (std::max(by_new, by_old) > section.trailing_edge_x || std::min(by_new, by_old) < section.leading_edge_x) return;
  if (x < sigma_ && half_breadth < edge_itself * sigma_) return;
  if (std::abs(face.ordinate(by_new) - face.ordinate(by_old)) <= sigma_) return;
  new_.add(face.nearest(by_new, half_breadth).depth);
  old_.add(face.nearest(by_old, half_breadth).depth);
}

double OldMarks::Left::of(bool shape) const {
  return shape ? std::max(0.0, squares - sum * sum / static_cast<double>(n)) : squares;
}

bool OldMarks::seems_old(bool shape) const {
  const auto n = static_cast<double>(new_.n);
  const double by_chance = (n + beyond_error * std::sqrt(2 * n)) * sigma_ * sigma_;
  return new_.n >= enough && new_.of(shape) > by_chance && clear_factor * old_.of(shape) < new_.of(shape);
}

std::optional<Fault> OldMarks::refusal() const {
  const bool as_it_is = seems_old(false);
  if (!as_it_is && !seems_old(true)) return std::nullopt;
  const auto off = [&](const Left& left) { return in_unit(std::sqrt(left.of(!as_it_is) / static_cast<double>(left.n)), units_); };
  const double least = std::min(std::abs(least_), std::abs(most_)), most = std::max(std::abs(least_), std::abs(most_));
  const std::string nearest_one = in_unit(least, units_), furthest = in_unit(most, units_);
  const std::string apart = nearest_one == furthest ? furthest : nearest_one + " to " + furthest;
  return Fault{{file_, line_},
               "x seems to be counted still from the old leading edge, " + apart +
                   (least_ + most_ > 0 ? " aft of" : " ahead of") +
                   " the new one, for from the old one these readings lie about " + off(old_) + " off the " +
                   (as_it_is ? "target" : "target's shape") + " near the edges, from the new one about " + off(new_),
               "put a row x_from,old-leading-edge above the header row and run again; where x does count from the new edge, a "
               "row x_from,new-leading-edge"};
}

}  // namespace fairblade::recheck
