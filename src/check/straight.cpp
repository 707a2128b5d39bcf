// Twist and lean: does the blade stand straight on its stock?
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "base/units.hpp"
#include "check/blade.hpp"
#include "check/readings.hpp"
#include "check/span.hpp"

namespace fairblade::check {
namespace {

constexpr double least_twist = 0.5, least_lean = 0.25;  // degrees: 3.7 mm on a 420 mm chord, 4.4 mm on a metre
constexpr double degree = std::numbers::pi / 180;

struct Extremes {
  SpanNumber least, most;
};
Extremes extremes_of(const SpanNumbers& numbers) {
  const auto [least, most] =
      std::minmax_element(numbers.begin(), numbers.end(), [](const auto& a, const auto& b) { return a.value < b.value; });
  return {*least, *most};
}

/// A section alone: it is turned where its two edges say so too, not only the lie of its faces.
void judge_one(const Stations& blade, const SpanNumber& one, double sigma, std::vector<Finding>& out) {
  const auto& measured = blade.measured[one.station];
  const double edges = (measured.port.at(measured.chord) - measured.starboard.at(measured.chord) - measured.port.at(0) +
                        measured.starboard.at(0)) /
                       2;
  const double by_edges = std::atan2(edges, measured.chord) / degree;
  const double limit = std::max(least_twist, beyond * one.error);
  if (std::abs(one.value) < limit || by_edges * one.value < 0 || std::abs(edges) < beyond * sigma ||
      std::abs(by_edges) < limit / 2)
    return;
  out.push_back(at_station(blade, one.station, "twist", Rank::blade, Sureness::likely,
                           "the section is turned " + fixed(std::abs(one.value), 1) +
                               " degrees against the centre plane: its trailing edge " +
                               to_side(measured.chord * std::tan(one.value * degree), blade.job.units),
                           "see whether the boards stood parallel, and sight down the trailing edge"));
}

}  // namespace

void judge_twist(const Stations& blade, double sigma, std::vector<Finding>& out) {
  SpanNumbers turned;
  for (std::size_t k = 0; k < blade.measured.size(); ++k) {
    const auto ends = centre_ends(blade, k, sigma);
    if (!ends) continue;
    const double chord = blade.measured[k].chord;
    turned.push_back({k, blade.measured[k].down, ends->degrees(chord), 2 * ends->error / chord / degree});
  }
  if (turned.size() == 1 && both_sides(blade.measured[turned.front().station])) judge_one(blade, turned.front(), sigma, out);
  if (turned.size() < 2) return;
  const auto edge = [&](std::size_t k, double degrees) {
    return to_side(blade.measured[k].chord * std::tan(degrees * degree), blade.job.units);
  };
  const auto [least, most] = extremes_of(turned);
  if (most.value - least.value < std::max(least_twist, 1.5 * beyond * std::max(least.error, most.error))) return;
  if (const auto one = alone(turned, least_twist / 2)) {
    out.push_back(at_station(blade, one->station, "twist", Rank::blade, Sureness::certain,
                             "this section alone is twisted, by " + fixed(std::abs(one->off), 1) +
                                 " degrees against the others: its trailing edge " + edge(one->station, one->off),
                             "set up the boards again here; if it stays, the blade is twisted: sight down the trailing edge"));
    return;
  }
  const bool port_last = most.down > least.down;
  const SpanNumber &first = port_last ? least : most, &last = port_last ? most : least;
  out.push_back(at_station(blade, last.station, "twist", Rank::blade, Sureness::certain,
                           "the blade is twisted: from station " + blade.measured[first.station].station + " to this one by " +
                               fixed(std::abs(last.value - first.value), 1) + " degrees, the trailing edge " +
                               edge(last.station, last.value - first.value),
                           "sight down the trailing edge; a target on the centre plane fills one face and cuts the other"));
}

namespace {

/// Where the sections lie, mm to port: at the stock (mid-chord where it is not known) and at both edges.
struct Lies {
  SpanNumbers stock, leading, trailing;
};
Lies lies_of(const Stations& blade, double sigma) {
  Lies out;
  for (std::size_t k = 0; k < blade.measured.size(); ++k) {
    const auto& measured = blade.measured[k];
    const auto ends = centre_ends(blade, k, sigma);
    if (!ends || !both_sides(measured)) continue;
    const double share = std::clamp(measured.ahead.value_or(measured.chord / 2) / measured.chord, 0.0, 1.0);
    out.stock.push_back({k, measured.down, ends->at(share), ends->error});
    out.leading.push_back({k, measured.down, ends->leading, ends->error});
    out.trailing.push_back({k, measured.down, ends->trailing, ends->error});
  }
  return out;
}

double degrees_of(const SpanNumbers& numbers) {
  if (numbers.size() > 2) return std::atan(straight_through(numbers).slope) / degree;
  return std::atan2(numbers[1].value - numbers[0].value, numbers[1].down - numbers[0].down) / degree;
}

}  // namespace

void judge_lean(const Stations& blade, double sigma, std::vector<Finding>& out) {
  const Lies lies = lies_of(blade, sigma);
  if (lies.stock.empty()) return;
  const auto unit = blade.job.units;
  const bool twisted = std::any_of(out.begin(), out.end(), [](const Finding& one) { return one.code == "twist"; });
  const double slack = std::max(1.2, beyond * lies.stock.front().error);
  if (const auto one = alone(lies.stock, slack)) {
    if (twisted) return;
    out.push_back(at_station(blade, one->station, "off-centre", Rank::blade, Sureness::likely,
                             "this section alone stands " + to_side(one->off, unit) + " of the others",
                             "set up the boards again here, from the stock"));
    return;
  }
  const auto [least, most] = extremes_of(lies.stock);
  if (lies.stock.size() >= 2 && most.value - least.value > 1.5 * slack) {
    // A twisted blade turns about some line between its edges; only what both edges share is lean.
    const double lean = degrees_of(lies.stock), fore = degrees_of(lies.leading), aft = degrees_of(lies.trailing);
    const bool only_twist = twisted && (fore * aft <= 0 || std::min(std::abs(fore), std::abs(aft)) < least_lean);
    if (std::abs(lean) < least_lean || only_twist) return;
    const auto &first = lies.stock.front(), &last = lies.stock.back();
    out.push_back(at_station(blade, last.station, "lean", Rank::blade, Sureness::certain,
                             "going down, the blade leans " + fixed(std::abs(lean), 1) + " degrees to " +
                                 (lean > 0 ? "port" : "starboard") + " of the stock, " +
                                 to_side(std::tan(lean * degree) * (last.down - first.down), unit) + " here",
                             "hold a straightedge along the stock; the boards stood askew, or stock or blade is bent"));
    return;
  }
  double mean = 0;
  for (const auto& one : lies.stock) mean += one.value / static_cast<double>(lies.stock.size());
  if (std::abs(mean) < std::max(2.5, beyond * lies.stock.front().error) || least.value * most.value < 0 || twisted) return;
  auto finding = at_station(blade, lies.stock.front().station, "off-centre", Rank::blade, Sureness::look,
                            "all that was read lies " + to_side(mean, unit) + " of the centre plane at the stock",
                            "see whether the boards stood equally far from the stock; if they did, one face is fuller");
  if (lies.stock.size() > 1) finding.station.clear();
  out.push_back(std::move(finding));
}

}  // namespace fairblade::check
