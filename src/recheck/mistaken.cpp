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
  if (station.measured_by != job::MeasuredBy::thickness && read > far_for_twice) {
    weigh(meant.miss(1, 0.5), "the half-breadths" + of + " are twice this blade's all along",
          "if they are thicknesses, write them into a column caliper; else read again");
  }
  return out;
}

}  // namespace fairblade::recheck
