#include "recheck/mistaken.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "base/numerics.hpp"
#include "base/polyline.hpp"
#include "base/text.hpp"

namespace fairblade::recheck {
namespace {

constexpr std::size_t fewest = 5;                 // readings
constexpr double beyond_doubt = 5;                // times nearer to the target as it might be meant
constexpr double too_far = 1, far_for_twice = 5;  // mm; what filler may stand out by, and all over
constexpr double never_left = 10;                 // mm; so much is nowhere left to do over a whole blade
constexpr double near_share = 1.0 / 3;            // of the thickest half-breadth
constexpr double fewest_near = 0.05;              // of all readings
constexpr double half_as_thick = 1.5;             // times the target: a blade that was so much thicker may be so still

class Meant {
 public:
  Meant(const job::RoundStation& station, const Surface& surface, const std::function<double(double)>& x_of)
      : station_(station), section_(surface.section), x_of_(x_of) {}

  /// Median distance from the target along the half-breadth; without end where too few lie on it.
  double miss(double factor_of_x, double factor) const {
    std::vector<double> misses;
    for (const job::Reading& one : station_.readings) {
      const double x = x_of_(factor_of_x * one.x);
      if (x < section_.leading_edge_x || x > section_.trailing_edge_x) continue;
      const double port = ordinate_at(section_.port, x), starboard = ordinate_at(section_.starboard, x);
      if (one.port) misses.push_back(std::abs(factor * *one.port - port));
      if (one.starboard) misses.push_back(std::abs(factor * *one.starboard - starboard));
      if (one.caliper) misses.push_back(std::abs(factor * *one.caliper - port - starboard) / 2);
    }
    return misses.size() < fewest ? std::numeric_limits<double>::infinity() : median(std::move(misses));
  }

  /// What the half-breadths of a face and the target's, times `sign`, have in common along it: the median of their sum.
  struct Common {
    double miss = std::numeric_limits<double>::infinity();  ///< median distance from it; without end where too few tell
    double value = 0;                                       ///< mm, of the face that is farther out
  };
  Common common(double sign) const {
    Common out;
    std::vector<double> misses;
    for (const bool port : {true, false}) {
      std::vector<double> sums;
      for (const job::Reading& one : station_.readings) {
        const double x = x_of_(one.x);
        const auto& half = port ? one.port : one.starboard;
        if (!half || x < section_.leading_edge_x || x > section_.trailing_edge_x) continue;
        sums.push_back(*half + sign * ordinate_at(port ? section_.port : section_.starboard, x));
      }
      if (sums.empty()) continue;
      const double middle = median(sums);
      if (std::abs(middle) > std::abs(out.value)) out.value = middle;
      for (const double one : sums) misses.push_back(std::abs(one - middle));
    }
    if (misses.size() < fewest) return out;
    const double miss = median(std::move(misses));
    if (miss < far_for_twice) out.miss = miss;  // else they have nothing in common
    return out;
  }

 private:
  const job::RoundStation& station_;
  const fill::StageSection& section_;
  const std::function<double(double)>& x_of_;
};

}  // namespace

std::optional<Fault> mistaken(const job::RoundStation& station, const Surface& surface, const std::function<double(double)>& x_of,
                              LengthUnit unit, double sigma) {
  const Meant meant(station, surface, x_of);
  const double read = meant.miss(1, 1);
  if (!(read > std::max(5 * sigma, too_far))) return std::nullopt;
  const std::string of = " of station " + station.name, here(name_of(unit));
  double least = std::min(read, 1e9) / beyond_doubt;
  std::optional<Fault> out;
  const auto weigh = [&](double miss, std::string what, std::string remedy) {
    if (miss > least) return;
    least = miss;
    out = Fault{station.place, std::move(what), std::move(remedy)};
  };
  for (const LengthUnit other : {LengthUnit::mm, LengthUnit::cm, LengthUnit::inch}) {
    if (other == unit) continue;
    const double factor = millimetres_in(other) / millimetres_in(unit);
    const std::string there(name_of(other));
    weigh(meant.miss(factor, factor), "the readings" + of + " lie on this blade as " + there + ", not as " + here,
          "put a row units," + there + " above the header, or write them in " + here);
    weigh(meant.miss(1, factor), "the half-breadths" + of + " lie on this blade as " + there + ", its x as " + here,
          "write both in one unit");
  }
  const bool gaps = station.measured_by == job::MeasuredBy::gaps;
  if (station.measured_by != job::MeasuredBy::thickness && read > far_for_twice) {
    const Meant::Common board = meant.common(1), level = meant.common(-1);
    if (gaps) {
      weigh(board.miss, "the gaps" + of + " lie on this blade as half-breadths",
            "if they are, name their columns port and starboard; else look at the boards' distance");
    } else if (board.value > 0) {
      const std::string off = in_unit(board.value, unit);
      weigh(board.miss, "the half-breadths" + of + " lie on this blade as gaps from boards " + off + " off its centre plane",
            "if they are, name their columns port_gap and starboard_gap, and put a row board,DISTANCE above the header");
    }
    if (gaps && std::abs(level.value) > never_left) {
      weigh(level.miss,
            "the half-breadths" + of + " come out " + in_unit(std::abs(level.value), unit) +
                (level.value > 0 ? " more" : " less") + " than this blade's all along",
            "look at the distance of the boards from the centre plane, and the units");
    }
  }
  if (station.measured_by == job::MeasuredBy::half_breadths && read > far_for_twice && surface.was_over < half_as_thick) {
    weigh(meant.miss(1, 0.5), "the half-breadths" + of + " are twice this blade's all along",
          "if they are thicknesses, write them into a column caliper; else read again");
  }
  return out;
}

std::optional<Fault> of_no_such_blade(const std::vector<HeightRead>& heights, const Place& place, LengthUnit unit) {
  std::size_t all = 0, near = 0;
  double off = 0, third = 0, widest = 0;  // mm: sums over the readings, and the widest of what counts as near
  for (const HeightRead& height : heights) {
    double thickest = 0;
    for (const auto* face : {&height.surface.section.port, &height.surface.section.starboard}) {
      for (const Point& one : *face) thickest = std::max(thickest, std::abs(one.y()));
    }
    const double limit = std::max(never_left, near_share * thickest);
    widest = std::max(widest, limit);
    for (const Judged& one : height.readings) {
      ++all;
      if (std::abs(one.depth) <= limit) ++near;
      off += std::abs(one.depth);
      third += near_share * thickest;
    }
  }
  if (all < fewest || static_cast<double>(near) >= fewest_near * static_cast<double>(all) || off <= third) return std::nullopt;
  return Fault{
      place,
      std::to_string(near) + " of " + std::to_string(all) + " readings lie within " + in_unit(widest, unit) +
          " of the target: this is not the blade that was planned",
      "look whether gaps stand under port and starboard, at the boards' distance, at the units, and at the plan's folder"};
}

}  // namespace fairblade::recheck
