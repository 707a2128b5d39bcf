#include "flow/feigned.hpp"

#include <algorithm>
#include <cmath>
#include <random>

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

// One side read off the target. Places that were assumed, not read, do not stray; a caliper's error is halved.
std::vector<section::Node> read_again(const section::MeasuredSection& measured, const target::TargetSection& target, Face face,
                                      double error, std::mt19937& random) {
  const bool halves = measured.thickness_only;
  std::vector<double> read;  // where this face was read, rising
  for (const section::SurfacePoint& point : measured.points) {
    if (point.face == face) read.push_back(point.x);
  }
  std::sort(read.begin(), read.end());
  std::vector<section::Node> out;
  for (const section::Node& node : measured.side(face).nodes()) {
    const auto next = std::upper_bound(read.begin(), read.end(), node.x - 1e-6);
    const bool was_read = next != read.end() && *next < node.x + 1e-6;
    const double x = std::min(target.leading_edge_x + node.x / measured.chord * target.chord, target.trailing_edge_x());
    const double noise = was_read ? error * (halves ? 0.5 : 1.0) * stray(random) : 0;
    out.push_back({node.x, target.half_breadth(face, x) * measured.chord / target.chord + noise});
  }
  return out;
}

struct Shown {
  double suction = 0, cancel = 0;
};

std::optional<Shown> shown_by(const section::MeasuredSection& measured, const target::TargetSection& target, double error,
                              std::mt19937& random) {
  section::MeasuredSection again = measured;
  const auto port = read_again(measured, target, Face::port, error, random);
  const bool copied = measured.thickness_only || measured.one_side_only;
  const auto starboard = copied ? port : read_again(measured, target, Face::starboard, error, random);
  again.port = section::Side(measured.chord, port, measured.skeg, measured.port.with_form());
  again.starboard = section::Side(measured.chord, starboard, measured.skeg, measured.starboard.with_form());
  section::meet_where_crossed(again);
  auto nodes = nodes_of(again, target, feigned_panels);
  const double effect = helm_effect(nodes);
  const auto flow = PanelFlow::solve(std::move(nodes.nodes), nodes.frame);
  if (!flow) return std::nullopt;
  return Shown{worse_suction(*flow, judged_helm), copied ? 0 : flow->zero_lift_degrees() / effect};
}

}  // namespace

Feigned feigned_by(const section::MeasuredSection& measured, const target::TargetSection& target, double reading_error,
                   std::uint32_t seed, int draws) {
  Feigned out;
  std::mt19937 random(seed);
  const auto clean = shown_by(measured, target, 0, random);
  if (!clean) return out;
  double sum = 0, square = 0, cancel_square = 0;
  int count = 0;
  for (int k = 0; k < draws; ++k) {
    const auto shown = shown_by(measured, target, reading_error, random);
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
