#include "recheck/frozen.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "target/loft.hpp"

namespace fairblade::recheck {
namespace {

/// Cubics in u = sqrt(fraction of the chord) through the points, each with the slope of the parabola through it and its
/// neighbours. Two points all but at one place are a step, which no slope reaches over.
class FrozenFace : public target::FaceShape {
 public:
  FrozenFace(const std::vector<double>& x, const std::vector<double>& y)
      : from_(x.front()), chord_(x.back() - x.front()), y_(y), slope_(x.size(), 0.0) {
    constexpr double step = 1e-5;  // mm
    for (const double one : x) u_.push_back(std::sqrt((one - from_) / chord_));
    for (std::size_t first = 0, k = 0; k < x.size(); ++k) {
      if (k + 1 < x.size() && x[k + 1] - x[k] > step) continue;
      set_slopes(first, k);
      first = k + 1;
    }
  }
  double at(double x) const override { return value(root(x)).first; }
  double slope(double x) const override {
    const double u = root(x), by_u = value(u).second;
    if (u > 0) return by_u / (2 * chord_ * u);
    return by_u > 0 ? std::numeric_limits<double>::infinity() : 0;
  }

 private:
  double root(double x) const { return std::sqrt(std::clamp((x - from_) / chord_, 0.0, 1.0)); }
  /// y and dy/du
  std::pair<double, double> value(double u) const {
    const auto above = std::upper_bound(u_.begin(), u_.end(), u);
    const auto k = std::clamp<std::size_t>(static_cast<std::size_t>(above - u_.begin()), 1, u_.size() - 1);
    const double h = u_[k] - u_[k - 1], s = std::clamp((u - u_[k - 1]) / h, 0.0, 1.0), r = 1 - s;
    const double y =
        y_[k - 1] * r * r * (1 + 2 * s) + y_[k] * s * s * (3 - 2 * s) + h * s * r * (slope_[k - 1] * r - slope_[k] * s);
    const double by_u = 6 * s * r * (y_[k] - y_[k - 1]) / h + slope_[k - 1] * r * (1 - 3 * s) + slope_[k] * s * (3 * s - 2);
    return {y, by_u};
  }

  void set_slopes(std::size_t first, std::size_t last) {
    const auto rise = [&](std::size_t k) { return (y_[k + 1] - y_[k]) / (u_[k + 1] - u_[k]); };
    if (last - first < 2) {
      for (std::size_t k = first; last > first && k <= last; ++k) slope_[k] = rise(first);
      return;
    }
    for (std::size_t k = first; k <= last; ++k) {
      const std::size_t m = std::clamp(k, first + 1, last - 1);  // the middle of the three
      const double a = rise(m - 1), b = rise(m), bend = (b - a) / (u_[m + 1] - u_[m - 1]);
      slope_[k] = a + bend * (2 * u_[k] - u_[m - 1] - u_[m]);
    }
  }

  double from_, chord_;
  std::vector<double> u_, y_, slope_;
};

target::TargetSection section_of(const job::FrozenStation& station) {
  target::TargetSection out;
  out.station = station.name;
  out.down = station.down;
  out.ahead = station.target_ahead;
  out.leading_edge_x = station.x.front();
  out.chord = station.x.back() - station.x.front();
  out.left_to = station.left_to;
  out.port_shape = std::make_shared<const FrozenFace>(station.x, station.port);
  out.starboard_shape = std::make_shared<const FrozenFace>(station.x, station.starboard);
  return out;
}

double was_over(const job::FrozenStation& station, const target::TargetSection& target) {
  constexpr std::size_t enough = 200;  // readings; a scan has thousands
  double widest = 0;
  for (std::size_t k = 0; k < station.x.size(); ++k) widest = std::max({widest, station.port[k], station.starboard[k]});
  std::vector<double> over;
  for (std::size_t k = 0; k < station.readings.size(); k += 1 + station.readings.size() / enough) {
    const job::FrozenReading& one = station.readings[k];
    const double wanted = target.half_breadth(one.port ? section::Face::port : section::Face::starboard, one.x);
    if (wanted > 0.2 * widest) over.push_back(one.measured / wanted);
  }
  return over.empty() ? 1 : median(std::move(over));
}

fill::Stage stage_of(const job::FrozenStage& stage) {
  for (const auto kind : {fill::StageKind::bare, fill::StageKind::glassed}) {
    if (stage.name == fill::name_of(kind)) return {kind, stage.to_come, stage.surface};
  }
  return {fill::StageKind::final, stage.to_come, stage.surface};
}

/// The stations about a height that lies between the first and the last: one where it is a station's own.
std::vector<std::size_t> stations_about(const std::vector<target::TargetSection>& targets, double down) {
  std::size_t below = 0;
  while (below + 1 < targets.size() && targets[below].down < down) ++below;
  if (targets[below].down == down || below == 0) return {below};
  return {below - 1, below};
}

}  // namespace

Outcome<Frozen> freeze(const job::FrozenPlan& plan, const std::string& stage) {
  Frozen out;
  out.job.name = plan.job;
  out.job.file = plan.file;
  out.job.units = plan.units;
  out.job.reading_error = plan.reading_error;
  out.job.bottom = plan.bottom;
  for (const job::FrozenStation& one : plan.stations) {
    out.targets.push_back(section_of(one));
    out.was_over.push_back(was_over(one, out.targets.back()));
  }
  std::vector<std::string> known;
  for (const job::FrozenStage& one : plan.stages) {
    out.stages.push_back(stage_of(one));
    known.push_back(one.name);
  }
  const auto found = std::find_if(out.stages.begin(), out.stages.end(),
                                  [&](const fill::Stage& one) { return stage.empty() || stage == fill::name_of(one.kind); });
  if (found == out.stages.end()) {
    return Fault{{"--stage", 0}, "the plan's coats make no stage \"" + stage + "\"", "choose from " + joined(known)};
  }
  out.stage = *found;
  return out;
}

Outcome<Surface> surface_at(const Frozen& frozen, double down, const std::string& name, const Place& place) {
  const auto target = target::target_at(frozen.job, frozen.targets, down, name);
  if (!target) {
    Fault fault = target.faults().front();
    fault.place = place;
    fault.what = "station " + name + ": " + fault.what;
    fault.remedy = "the plan has no target there: leave these readings out, or correct \"down\"";
    return fault;
  }
  Surface out;
  out.name = name;
  out.down = down;
  const auto about = stations_about(frozen.targets, down);
  if (about.size() == 2) out.between = frozen.targets[about[0]].station + " and " + frozen.targets[about[1]].station;
  for (const std::size_t k : about) out.was_over = std::max(out.was_over, frozen.was_over[k]);
  if (target->ahead) out.origin_ahead = *target->ahead + target->leading_edge_x;
  auto section = fill::stage_section(*target, frozen.stage);
  if (!section) {
    return Fault{place, "station " + name + ": under the coats to come the section closes up", "give another --stage"};
  }
  out.section = std::move(*section);
  return out;
}

}  // namespace fairblade::recheck
