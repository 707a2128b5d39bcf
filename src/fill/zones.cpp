#include "fill/zones.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/numerics.hpp"
#include "fill/noise.hpp"
#include "fill/stages.hpp"

namespace fairblade::fill {
namespace {

using Three = std::array<double, 3>;

// Litres, or nothing where they are less than a cubic millimetre: two outlines that meet leave rounding behind.
double told(double litres) { return litres > 1e-6 ? litres : 0; }

std::size_t index(Zone zone) { return static_cast<std::size_t>(zone); }
double sum(const Three& three) { return three[0] + three[1] + three[2]; }

// mm² to add in each zone of one slice.
Three added(const Slice& slice, const std::vector<double>& fractions, const job::ZoneBounds& bounds) {
  const Pair pair = pair_of(slice.measured, slice.target, fractions);
  constexpr double far = std::numeric_limits<double>::infinity();
  const double fore = bounds.leading_edge * slice.measured.chord;
  const double aft = (1 - bounds.trailing_edge) * slice.measured.chord;
  const std::array<double, 4> cuts{-far, fore, aft, far};
  Three out{};
  for (std::size_t k = 0; k < 3; ++k) {
    out[k] =
        target::areas_between({clipped(pair.measured, cuts[k], cuts[k + 1]), clipped(pair.target, cuts[k], cuts[k + 1])}).add;
  }
  return out;
}

// Each zone's share of the variance of the litres: readings err apart, so their variances add.
Three shares_of_variance(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                         const std::vector<StationChange>& changes) {
  Three out{};
  for (std::size_t k = 0; k < measured.size(); ++k) {
    each_noisy(job, measured, changes[k], k, [&](const OffsetRow& row, double sigma, double surface) {
      const double w = surface * sigma * normal_below(row.change() / sigma);
      out[index(zone_at(row.x, measured[k].chord, job.zones))] += w * w;
    });
  }
  return out;
}

void share_error(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                 const std::vector<StationChange>& changes, const Volumes& volumes, Zones& out) {
  const Three shares = shares_of_variance(job, measured, changes);
  const double all = sum(shares);
  const auto set = [](ZoneAmount& zone, double error) {
    zone.error = error;
    zone.low = std::max(0.0, zone.net - 2 * error);
    zone.high = zone.net + 2 * error;
  };
  for (std::size_t k = 0; k < 3; ++k) set(out.by_zone[k], all > 0 ? volumes.add_error * std::sqrt(shares[k] / all) : 0);
  set(out.whole, volumes.add_error);
}

void take_surface(const std::vector<Piece>& surface, double build, Zones& out) {
  for (const Piece& piece : surface) {
    ZoneAmount& zone = out.by_zone[index(piece.zone)];
    zone.deepest = std::max(zone.deepest, piece.depth);
    if (piece.depth > build + no_filler) zone.filled_area += piece.area / mm2_per_m2;
  }
}

struct Sums {
  Three net{}, beyond{};  // litres
};
Sums summed(const std::vector<Slice>& slices, const std::vector<double>& fractions, const job::ZoneBounds& bounds) {
  Sums out;
  for (const Slice& slice : slices) {
    const Three here = added(slice, fractions, bounds);
    for (std::size_t k = 0; k < 3; ++k) (slice.beyond ? out.beyond : out.net)[k] += here[k] * slice.weight / mm3_per_litre;
  }
  return out;
}

/// The targets less `build` all round.
std::vector<Rib> under_coats(const std::vector<target::TargetSection>& targets, double build,
                             const std::vector<double>& fractions) {
  std::vector<Rib> out;
  for (const auto& target : targets) {
    const auto section = stage_section(target, {StageKind::bare, build, {}});
    out.push_back(section ? rib_of(*section, target.down, fractions) : rib_of(target, fractions));
  }
  return out;
}

void finish(const job::Job& job, Zones& out) {
  out.whole = {};
  for (ZoneAmount& zone : out.by_zone) {
    zone.filler = std::max(0.0, zone.net + zone.beyond - zone.taken_by_coats - zone.taken_by_glass);
    zone.sanding = zone.filled_area * job.workshop.sanding_allowance;  // m² x mm = litres
    const double useful = zone.filler + zone.sanding;
    zone.to_mix = useful / job.workshop.kept();
    zone.loss = zone.to_mix - useful;
    out.whole.net += zone.net;
    out.whole.beyond += zone.beyond;
    out.whole.filled_area += zone.filled_area;
    out.whole.taken_by_coats += zone.taken_by_coats;
    out.whole.taken_by_glass += zone.taken_by_glass;
    out.whole.filler += zone.filler;
    out.whole.sanding += zone.sanding;
    out.whole.loss += zone.loss;
    out.whole.to_mix += zone.to_mix;
    out.whole.deepest = std::max(out.whole.deepest, zone.deepest);
  }
}

}  // namespace

void take_glass(const job::Job& job, double litres, Zones& zones) {
  const ZoneAmount before = zones.whole;
  zones.by_zone[index(Zone::leading_edge)].taken_by_glass = litres;
  finish(job, zones);
  zones.whole.error = before.error;
  zones.whole.low = before.low;
  zones.whole.high = before.high;
}

const job::Filler& filler_of(const job::Job& job, Zone zone) { return zone == Zone::faces ? job.faces : job.edges; }

Zones zones_of(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
               const std::vector<target::TargetSection>& targets, const std::vector<StationChange>& changes,
               const Volumes& volumes, const std::vector<Piece>& surface, double build) {
  constexpr std::size_t steps = 16;  // a bay
  const auto fractions = chord_fractions(240);
  auto [net, beyond] = summed(slices(job, measured, targets, fractions, steps), fractions, job.zones);
  Zones out;
  out.bounds = job.zones;
  const double found = sum(net);
  if (!(found > 0)) net[index(Zone::faces)] = volumes.add;
  const double scale = found > 0 ? volumes.add / found : 1;
  if (found > 1e-6) out.scaled_by = scale;  // below a microlitre it tells of rounding only
  for (std::size_t k = 0; k < 3; ++k) {
    out.by_zone[k].zone = static_cast<Zone>(k);
    out.by_zone[k].net = told(net[k] * scale);
    out.by_zone[k].beyond = told(beyond[k]);
  }
  if (build > 0) {
    const auto shaped =
        summed(slices(job, measured, targets, under_coats(targets, build, fractions), fractions, steps), fractions, job.zones);
    for (std::size_t k = 0; k < 3; ++k) {
      ZoneAmount& zone = out.by_zone[k];
      zone.taken_by_coats = std::max(0.0, zone.net + zone.beyond - shaped.net[k] * scale - shaped.beyond[k]);
    }
  }
  take_surface(surface, build, out);
  for (std::size_t k = 0; k < changes.size(); ++k) {  // the stations' deepest places are known exactly
    const Deepest& deep = changes[k].add;
    auto& zone = out.by_zone[index(zone_at(deep.x, measured[k].chord, job.zones))];
    zone.deepest = std::max(zone.deepest, deep.depth);
  }
  finish(job, out);
  share_error(job, measured, changes, volumes, out);
  return out;
}

}  // namespace fairblade::fill
