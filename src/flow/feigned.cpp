#include "flow/feigned.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include "base/side_by_side.hpp"
#include "flow/stall.hpp"
#include "section/outline.hpp"

namespace fairblade::flow {
namespace {

using section::Face;

// Nearly normal and the same on every machine: the library's own distribution is not. Deviation 1, mean 0.
double stray(std::mt19937& random) {
  double sum = -6;
  for (int k = 0; k < 12; ++k) sum += (static_cast<double>(random()) + 0.5) / 4294967296.0;
  return sum;
}

/// A node of an outline, and whether it was read there: what was assumed does not stray.
struct Spot {
  section::Node node;  ///< on the target, no reading astray
  bool read = false;
};

/// One face, read off the target in thought.
std::vector<Spot> spots_of(const section::MeasuredSection& measured, const target::TargetSection& target, Face face) {
  std::vector<double> read;  // where this face was read, rising
  for (const section::SurfacePoint& point : measured.points) {
    if (point.face == face) read.push_back(point.x);
  }
  std::sort(read.begin(), read.end());
  std::vector<Spot> out;
  for (const section::Node& node : measured.side(face).nodes()) {
    const auto next = std::upper_bound(read.begin(), read.end(), node.x - 1e-6);
    const bool was_read = next != read.end() && *next < node.x + 1e-6;
    const double x = std::min(target.leading_edge_x + node.x / measured.chord * target.chord, target.trailing_edge_x());
    out.push_back({{node.x, target.half_breadth(face, x) * measured.chord / target.chord}, was_read});
  }
  return out;
}

/// Those that shape the outline at the panels' ends: the curve between two readings hangs on the next two as well. On a scanned
/// blade that is a few in a hundred.
std::vector<Spot> near_nodes(const std::vector<Spot>& spots, const std::vector<Point>& nodes) {
  std::vector<char> wanted(spots.size(), 0);
  wanted.front() = wanted.back() = 1;
  for (const Point& node : nodes) {
    const auto after =
        std::upper_bound(spots.begin(), spots.end(), node.x(), [](double x, const Spot& spot) { return x < spot.node.x; });
    const auto k = after - spots.begin(), count = static_cast<std::ptrdiff_t>(spots.size());
    for (auto i = std::max<std::ptrdiff_t>(k - 2, 0); i < std::min(k + 2, count); ++i) wanted[static_cast<std::size_t>(i)] = 1;
  }
  std::vector<Spot> out;
  for (std::size_t k = 0; k < spots.size(); ++k) {
    if (wanted[k]) out.push_back(spots[k]);
  }
  return out;
}

/// A station, ready to be read again and again.
class Subject {
 public:
  Subject(const section::MeasuredSection& measured, const target::TargetSection& target)
      : measured_(measured),
        target_(target),
        bare_(without_readings(measured)),
        copied_(measured.thickness_only || measured.one_side_only),
        port_(spots_of(measured, target, Face::port)) {
    if (!copied_) starboard_ = spots_of(measured, target, Face::starboard);
    const auto nodes = nodes_of(measured, target, feigned_panels, Crowd::nose).nodes;
    port_ = near_nodes(port_, nodes);
    if (!copied_) starboard_ = near_nodes(starboard_, nodes);
  }

  /// Both faces, read once more.
  struct Reading {
    std::vector<section::Node> port, starboard;
  };
  Reading read(double error, std::mt19937& random) const {
    Reading out;
    out.port = read(port_, error, random);
    out.starboard = copied_ ? out.port : read(starboard_, error, random);
    return out;
  }

  struct Shown {
    double suction = 0, cancel = 0;
  };
  std::optional<Shown> shown_by(const Reading& reading) const {
    section::MeasuredSection again = bare_;
    again.port = section::Side(measured_.chord, reading.port, measured_.skeg, measured_.port.with_form());
    again.starboard = section::Side(measured_.chord, reading.starboard, measured_.skeg, measured_.starboard.with_form());
    section::meet_where_crossed(again);
    auto nodes = nodes_of(again, target_, feigned_panels, Crowd::nose);
    const double effect = helm_effect(nodes);
    const auto flow = PanelFlow::solve(std::move(nodes.nodes), nodes.frame);
    if (!flow) return std::nullopt;
    return Shown{worse_suction(*flow, judged_helm), copied_ ? 0 : flow->zero_lift_degrees() / effect};
  }

 private:
  /// A caliper's error is halved: it is shared by both faces.
  std::vector<section::Node> read(const std::vector<Spot>& spots, double error, std::mt19937& random) const {
    std::vector<section::Node> out;
    out.reserve(spots.size());
    for (const Spot& spot : spots) {
      const double noise = spot.read ? error * (measured_.thickness_only ? 0.5 : 1.0) * stray(random) : 0;
      out.push_back({spot.node.x, spot.node.half_breadth + noise});
    }
    return out;
  }

  static section::MeasuredSection without_readings(const section::MeasuredSection& measured) {
    section::MeasuredSection out;
    out.chord = measured.chord;
    out.skeg = measured.skeg;
    return out;
  }

  const section::MeasuredSection& measured_;
  const target::TargetSection& target_;
  section::MeasuredSection bare_;  // chord and skeg alone: each reading gives it sides
  bool copied_;
  std::vector<Spot> port_, starboard_;
};

}  // namespace

Feigned feigned_by(const section::MeasuredSection& measured, const target::TargetSection& target, double reading_error,
                   std::uint32_t seed, int draws) {
  Feigned out;
  std::mt19937 random(seed);
  const Subject subject(measured, target);
  std::vector<Subject::Reading> readings{subject.read(0, random)};  // the first without errors
  for (int k = 0; k < draws; ++k) readings.push_back(subject.read(reading_error, random));
  std::vector<std::optional<Subject::Shown>> all(readings.size());
  side_by_side(all.size(), [&](std::size_t k) { all[k] = subject.shown_by(readings[k]); });
  const auto clean = all.front();
  if (!clean) return out;
  double sum = 0, square = 0, cancel_square = 0;
  int count = 0;
  for (std::size_t k = 1; k < all.size(); ++k) {
    const auto& shown = all[k];
    if (!shown) continue;
    const double more = shown->suction - clean->suction;
    sum += more;
    square += more * more;
    cancel_square += std::pow(shown->cancel - clean->cancel, 2);
    ++count;
  }
  if (count < 2 || count < draws / 2) return out;
  out.known = true;
  out.excess = sum / count;
  out.suction_error = std::sqrt(std::max(0.0, square / count - out.excess * out.excess) * count / (count - 1));
  out.cancel_error = std::sqrt(cancel_square / count);
  return out;
}

}  // namespace fairblade::flow
