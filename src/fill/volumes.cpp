#include <algorithm>
#include <cmath>
#include <iterator>

#include "base/numerics.hpp"
#include "base/side_by_side.hpp"
#include "fill/fill.hpp"
#include "fill/loft.hpp"
#include "fill/noise.hpp"

namespace fairblade::fill {
namespace {

using section::MeasuredSection;
using target::TargetSection;

struct Bay {  // the blade between two heights
  const Rib &measured_a, &measured_b, &target_a, &target_b;
  const std::vector<double>& fractions;

  Areas at(double w) const {
    return areas_between(pair_of(between(measured_a, measured_b, w), between(target_a, target_b, w), fractions));
  }
};

// A stretch of a bay: the fractions of it where it begins and ends, its height in mm, the areas there and half-way.
struct Stretch {
  double from, to, height;
  Areas first, middle, last;
};

Areas simpson(const Stretch& s) {
  return {s.height / 6 * (s.first.add + 4 * s.middle.add + s.last.add),
          s.height / 6 * (s.first.remove + 4 * s.middle.remove + s.last.remove)};
}

// Simpson on halves until two levels agree to `settled` mm³ (or 0.02 %).
Areas integral(const Bay& bay, const Stretch& whole, int depth, double settled) {
  const double centre = (whole.from + whole.to) / 2;
  const Stretch left{whole.from, centre, whole.height / 2, whole.first, bay.at((whole.from + centre) / 2), whole.middle};
  const Stretch right{centre, whole.to, whole.height / 2, whole.middle, bay.at((centre + whole.to) / 2), whole.last};
  const Areas p = simpson(left), q = simpson(right), once = simpson(whole);
  const Areas halves{p.add + q.add, p.remove + q.remove};
  const auto near = [&](double u, double v) { return std::abs(u - v) <= std::max(settled, 2e-4 * std::abs(v)); };
  if (depth == 0 || (near(once.add, halves.add) && near(once.remove, halves.remove))) return halves;
  const Areas upper = integral(bay, left, depth - 1, settled / 2), lower = integral(bay, right, depth - 1, settled / 2);
  return {upper.add + lower.add, upper.remove + lower.remove};
}

Areas integral(const Bay& bay, double height, std::size_t bays) {
  const double settled = 0.2e-3 * mm3_per_litre / static_cast<double>(bays);  // 0.2 mL over the blade
  return integral(bay, {0, 1, height, bay.at(0), bay.at(0.5), bay.at(1)}, 8, settled);
}

}  // namespace

/// All stations at the same chord fractions. Outside the unnamed namespace, for a part of LitresWithAnother::Ready, which is
/// named.
struct Ribs {
  Ribs(const std::vector<MeasuredSection>& sections, const std::vector<TargetSection>& targets)
      : measured(sections.size()), target(targets.size()) {
    side_by_side(measured.size(), [&](std::size_t k) {
      measured[k] = rib_of(sections[k], fractions);
      target[k] = rib_of(targets[k], fractions);
    });
  }
  std::vector<double> fractions = chord_fractions(240);
  std::vector<Rib> measured, target;
};

namespace {

/// mm³ between two stations.
Areas in_bay(const Bay& bay, std::size_t bays) { return integral(bay, bay.measured_b.down - bay.measured_a.down, bays); }

std::vector<Areas> all_bays(const Ribs& ribs) {
  std::vector<Areas> bays(ribs.measured.size() - 1);
  side_by_side(bays.size(), [&](std::size_t k) {
    bays[k] = in_bay({ribs.measured[k], ribs.measured[k + 1], ribs.target[k], ribs.target[k + 1], ribs.fractions}, bays.size());
  });
  return bays;
}

/// mm³ between the first station and the last.
Areas sum_bays(const Ribs& ribs) {
  Areas sum;
  for (const Areas& here : all_bays(ribs)) {
    sum.add += here.add;
    sum.remove += here.remove;
  }
  return sum;
}

void reading_noise(const job::Job& job, const std::vector<MeasuredSection>& measured, const std::vector<StationChange>& changes,
                   Volumes& out) {
  std::vector<NoiseSum> of_station(measured.size());
  side_by_side(measured.size(), [&](std::size_t k) {
    const bool copies = measured[k].thickness_only || measured[k].one_side_only;  // one error moves both faces
    each_noisy(job, measured, changes[k], k, [&](const OffsetRow& row, double sigma, double surface) {
      if (copies && row.face == Face::starboard) return;
      of_station[k].add({row.change(), sigma, (copies ? 2 : 1) * surface});
    });
  });
  NoiseSum sum;
  for (const NoiseSum& one : of_station) sum.add(one);
  const Noise noise = sum.total();
  out.add_error = noise.error / mm3_per_litre;
  out.may_be_reading_error = std::min(out.add, noise.excess / mm3_per_litre);
}

}  // namespace

double litres_to_add(const std::vector<MeasuredSection>& measured, const std::vector<TargetSection>& targets) {
  const Ribs ribs(measured, targets);
  return sum_bays(ribs).add / mm3_per_litre;
}

struct LitresWithAnother::Ready {
  Ready(const std::vector<MeasuredSection>& measured, const std::vector<TargetSection>& targets)
      : ribs(measured, targets), bays(all_bays(ribs)) {}
  Ribs ribs;
  std::vector<Areas> bays;
};

LitresWithAnother::LitresWithAnother(const std::vector<MeasuredSection>& measured, const std::vector<TargetSection>& targets)
    : ready_(std::make_unique<const Ready>(measured, targets)) {}
LitresWithAnother::~LitresWithAnother() = default;

double LitresWithAnother::with(std::size_t station, const MeasuredSection& measured, const TargetSection& target) const {
  const Ribs& ribs = ready_->ribs;
  const Rib is = rib_of(measured, ribs.fractions), wanted = rib_of(target, ribs.fractions);
  double sum = 0;
  for (std::size_t k = 0; k < ready_->bays.size(); ++k) {
    if (k != station && k + 1 != station) {
      sum += ready_->bays[k].add;
      continue;
    }
    const bool above = k == station;  // the station is at the bay's upper end
    const Bay bay{above ? is : ribs.measured[k], above ? ribs.measured[k + 1] : is, above ? wanted : ribs.target[k],
                  above ? ribs.target[k + 1] : wanted, ribs.fractions};
    sum += in_bay(bay, ready_->bays.size()).add;
  }
  return sum / mm3_per_litre;
}

Volumes sum_volumes(const job::Job& job, const std::vector<MeasuredSection>& measured, const std::vector<TargetSection>& targets,
                    const std::vector<StationChange>& changes) {
  const Ribs ribs(measured, targets);
  const Areas sum = sum_bays(ribs);
  Volumes out;
  out.add = sum.add / mm3_per_litre;
  out.remove = sum.remove / mm3_per_litre;
  if (measured.front().down > 0) {
    const Areas first = areas_between(pair_of(ribs.measured.front(), ribs.target.front(), ribs.fractions));
    out.above_add = first.add * measured.front().down / mm3_per_litre;
    out.above_remove = first.remove * measured.front().down / mm3_per_litre;
  }
  if (job.bottom && *job.bottom > measured.back().down) {
    // Below the last station its section is carried on unchanged.
    const double rest = *job.bottom - measured.back().down;
    const Areas last = areas_between(pair_of(ribs.measured.back(), ribs.target.back(), ribs.fractions));
    out.has_below = true;
    out.below_add = last.add * rest / mm3_per_litre;
    out.below_remove = last.remove * rest / mm3_per_litre;
  }
  reading_noise(job, measured, changes, out);
  return out;
}

}  // namespace fairblade::fill
