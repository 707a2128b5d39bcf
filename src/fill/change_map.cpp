#include "fill/change_map.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/numerics.hpp"
#include "fill/before_coats.hpp"
#include "fill/loft.hpp"
#include "fill/shown_rows.hpp"
#include "fill/stand_out.hpp"
#include "target/face_shapes.hpp"

namespace fairblade::fill {
namespace {

constexpr std::size_t columns = 80;        // along the chord
constexpr std::size_t steps_in_a_bay = 8;  // and fewer on a blade of many stations
constexpr std::size_t usual_rows = 96;

// Crowded to both edges, where depths change quickest.
std::vector<double> map_fractions() {
  std::vector<double> out;
  for (std::size_t k = 0; k <= columns; ++k) {
    out.push_back((1 - std::cos(std::numbers::pi * static_cast<double>(k) / static_cast<double>(columns))) / 2);
  }
  return out;
}

// Half-breadth at x, straight in sqrt(x) between places; nothing beyond the outline.
std::optional<double> half_breadth(const Outline& o, Face face, double x) {
  constexpr double close = 1e-9;
  if (x < o.x.front() - close || x > o.x.back() + close) return std::nullopt;
  const auto found = static_cast<std::size_t>(std::lower_bound(o.x.begin(), o.x.end(), x) - o.x.begin());
  const std::size_t k = std::clamp<std::size_t>(found, 1, o.x.size() - 1);
  const double a = std::sqrt(std::max(0.0, o.x[k - 1] - o.x.front())), b = std::sqrt(o.x[k] - o.x.front());
  const double w = std::clamp((std::sqrt(std::max(0.0, x - o.x.front())) - a) / (b - a), 0.0, 1.0);
  const auto& y = face == Face::port ? o.port : o.starboard;
  return y[k - 1] + w * (y[k] - y[k - 1]);
}

double finished_depth_at(const Pair& pair, Face face, double x) {
  const auto is = half_breadth(pair.measured, face, x);
  const auto wanted = half_breadth(pair.target, face, x);
  const double sign = section::sign_of(face);
  if (wanted && (!is || *wanted > *is)) return stands_out(pair.measured, x, sign * *wanted);
  return is ? -stands_out(pair.target, x, sign * *is) : 0;
}

struct Maker {
  const job::Job& job;
  const std::vector<section::MeasuredSection>& measured;
  const std::vector<target::TargetSection>& targets;
  ChangeMap map{};
  std::vector<double> along = chord_fractions(160);  // of the outlines that depths are worked out from
  std::vector<Rib> is{}, wanted{};
  CoatsOver coats = coats_over(job);

  double to_shape(double depth, double left_to, double x) const {
    return coats.to_shape(depth, target::share_of_target(left_to, x));
  }
  double depth_at(const Pair& pair, double left_to, Face face, double x) const {
    return to_shape(finished_depth_at(pair, face, x), left_to, x);
  }
  double edge_at(std::size_t k) const { return map.stock_known ? -*measured[k].ahead : 0; }

  MapRow row(double down, double edge, const Rib& old_rib, const Rib& new_rib) const {
    MapRow out{down, edge, old_rib.chord, edge + new_rib.leading_edge_x, new_rib.chord, false, {}, {}};
    const Pair pair = pair_of(old_rib, new_rib, along);
    const double from = out.front() - edge, length = out.back() - out.front();
    for (const double f : map.fractions) {
      out.port.push_back(depth_at(pair, new_rib.left_to, Face::port, from + f * length));
      out.starboard.push_back(depth_at(pair, new_rib.left_to, Face::starboard, from + f * length));
    }
    return out;
  }
  void rows();
  void readings(const std::vector<StationChange>& changes);
  void deeper(const MapPlace& one);
  void notes();
};

void Maker::deeper(const MapPlace& one) {
  const double depth = std::abs(one.depth);
  auto& most = one.depth > 0 ? map.deepest_add : map.deepest_removal;
  if (depth > map.error && !(most && std::abs(most->depth) >= depth)) most = one;
}

void Maker::rows() {
  const std::size_t last = measured.size() - 1;
  const std::size_t steps = last == 0 ? 1 : std::clamp<std::size_t>(usual_rows / last, 1, steps_in_a_bay);
  for (std::size_t k = 0; k < last; ++k) {
    for (std::size_t i = k == 0 ? 0 : 1; i <= steps; ++i) {
      const double w = static_cast<double>(i) / static_cast<double>(steps);
      const auto mix = [w](double a, double b) { return a + w * (b - a); };
      map.rows.push_back(row(mix(measured[k].down, measured[k + 1].down), mix(edge_at(k), edge_at(k + 1)),
                             between(is[k], is[k + 1], w), between(wanted[k], wanted[k + 1], w)));
    }
  }
  if (last == 0) return map.rows.push_back(row(measured[0].down, edge_at(0), is[0], wanted[0]));
  const auto carry = [&](double down, const MapRow& from) {
    MapRow out = from;
    out.down = down;
    out.carried_on = true;
    return out;
  };
  if (measured[0].down > 0) map.rows.insert(map.rows.begin(), carry(0, map.rows.front()));
  if (job.bottom && *job.bottom > measured[last].down) map.rows.push_back(carry(*job.bottom, map.rows.back()));
}

void Maker::readings(const std::vector<StationChange>& changes) {
  for (std::size_t k = 0; k < measured.size(); ++k) {
    const Pair pair = pair_of(is[k], wanted[k], along);
    const auto place = [&](double x, Face face, double depth) {
      return MapPlace{measured[k].station, measured[k].down, edge_at(k) + x, x, face, measured[k].thickness_only, depth};
    };
    for (const Face face : {Face::port, Face::starboard}) {
      for (const OffsetRow& one : rows_shown(Offsets(measured[k], changes[k]).of(face), most_shown))
        map.readings.push_back(place(one.x, face, depth_at(pair, wanted[k].left_to, face, one.x)));
    }
    for (const auto& [one, sign] : {std::pair{&changes[k].add, 1}, {&changes[k].removal, -1}}) {
      if (one->depth > 0) deeper(place(one->x, one->face, to_shape(sign * one->depth, wanted[k].left_to, one->x)));
    }
  }
  if (!coats.any()) return;
  for (const MapPlace& one : map.readings) deeper(one);  // where nothing comes off the finished surface, it may under the coats
}

void Maker::notes() {
  std::string mirrored, calipers;
  const auto add = [](std::string& names, const std::string& name) { names += (names.empty() ? "" : ", ") + name; };
  for (const auto& one : measured) {
    if (one.one_side_only) add(mirrored, one.station);
    if (one.thickness_only) add(calipers, one.station);
  }
  if (!mirrored.empty())
    map.notes.push_back("Read on one side only, the other drawn as its mirror image: station " + mirrored + ".");
  if (!calipers.empty())
    map.notes.push_back("Read with calipers, which cannot tell port from starboard: station " + calipers + ".");
}

bool stock_known_in(const std::vector<section::MeasuredSection>& measured) {
  return std::all_of(measured.begin(), measured.end(), [](const auto& one) { return one.ahead.has_value(); });
}

}  // namespace

ChangeMap change_map(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                     const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes) {
  Maker make{job, measured, targets};
  if (measured.empty()) return {};
  make.map.fractions = map_fractions();
  make.map.error = job.reading_error;
  make.map.stock_known = stock_known_in(measured);
  for (std::size_t k = 0; k < measured.size(); ++k) {
    make.is.push_back(rib_of(measured[k], make.along));
    make.wanted.push_back(rib_of(targets[k], make.along));
    make.map.stations.push_back({measured[k].station, measured[k].down});
  }
  make.rows();
  make.readings(changes);
  make.notes();
  return std::move(make.map);
}

}  // namespace fairblade::fill
