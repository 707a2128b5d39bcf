#include "fill/slices.hpp"

#include <cassert>
#include <cmath>

namespace fairblade::fill {

namespace {

template <typename Section>
std::vector<Rib> ribs_of(const std::vector<Section>& sections, const std::vector<double>& fractions) {
  std::vector<Rib> out;
  for (const Section& one : sections) out.push_back(rib_of(one, fractions));
  return out;
}

/// `wanted_between(k, w)`: the wanted rib fraction w of the way from station k to the next.
template <typename Between>
std::vector<Slice> cut(const job::Job& job, const std::vector<section::MeasuredSection>& measured, const std::vector<Rib>& wanted,
                       const Between& wanted_between, const std::vector<double>& fractions, std::size_t per_bay) {
  assert(per_bay >= 2 && per_bay % 2 == 0 && measured.size() == wanted.size() && !measured.empty());
  const std::vector<Rib> of_measured = ribs_of(measured, fractions);
  std::vector<Slice> out;
  const std::size_t last = measured.size() - 1;
  if (measured.front().down > 0 || last == 0) {
    const double above = std::max(0.0, measured.front().down);
    out.push_back({above / 2, above, true, 0, of_measured[0], wanted[0]});
  }
  for (std::size_t k = 0; k < last; ++k) {
    const double h = (measured[k + 1].down - measured[k].down) / static_cast<double>(per_bay);
    for (std::size_t i = 0; i <= per_bay; ++i) {
      const double w = static_cast<double>(i) / static_cast<double>(per_bay);
      const double weight = h / 3 * (i == 0 || i == per_bay ? 1 : i % 2 == 1 ? 4 : 2);
      std::optional<std::size_t> station;
      if (i == 0) station = k;
      if (i == per_bay) station = k + 1;
      // A station's own slice to the last bit, in both bays that it stands in: who counts places once must know it again.
      const double down = station ? measured[*station].down : measured[k].down + w * h * static_cast<double>(per_bay);
      out.push_back({down, weight, false, station,
                     station ? of_measured[*station] : between(of_measured[k], of_measured[k + 1], w),
                     station ? wanted[*station] : wanted_between(k, w)});
    }
  }
  if (job.bottom && *job.bottom > measured[last].down) {
    const double below = *job.bottom - measured[last].down;
    out.push_back({measured[last].down + below / 2, below, true, last, of_measured[last], wanted[last]});
  }
  return out;
}

}  // namespace

std::vector<Slice> slices(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                          const std::vector<target::TargetSection>& targets, const std::vector<double>& fractions,
                          std::size_t per_bay) {
  const auto ribs = ribs_of(targets, fractions);
  const auto straight = [&](std::size_t k, double w) { return between(ribs[k], ribs[k + 1], w); };
  return cut(job, measured, ribs, straight, fractions, per_bay);
}

std::vector<Slice> slices(const job::Job& job, const std::vector<section::MeasuredSection>& measured,
                          const std::vector<target::TargetSection>& targets, const std::vector<Rib>& within,
                          const std::vector<double>& fractions, std::size_t per_bay) {
  const auto ribs = ribs_of(targets, fractions);
  const auto inside = [&](std::size_t k, double w) { return between(ribs[k], ribs[k + 1], within[k], within[k + 1], w); };
  return cut(job, measured, within, inside, fractions, per_bay);
}

Outline clipped(const Outline& o, double from, double to) {
  Outline out;
  const auto push = [&](double x, double port, double starboard) {
    out.x.push_back(x);
    out.port.push_back(port);
    out.starboard.push_back(starboard);
  };
  const auto cut = [&](std::size_t k, double x) {  // between k - 1 and k
    const double w = (x - o.x[k - 1]) / (o.x[k] - o.x[k - 1]);
    push(x, o.port[k - 1] + w * (o.port[k] - o.port[k - 1]), o.starboard[k - 1] + w * (o.starboard[k] - o.starboard[k - 1]));
  };
  for (std::size_t k = 0; k < o.x.size(); ++k) {
    if (k > 0 && o.x[k - 1] < from && o.x[k] > from && from < to) cut(k, from);
    if (k > 0 && o.x[k - 1] < to && o.x[k] > to && from < to) cut(k, to);
    if (o.x[k] >= from && o.x[k] <= to) push(o.x[k], o.port[k], o.starboard[k]);
  }
  return out;
}

double girth(const Rib& rib, const std::vector<double>& fractions) {
  double sum = std::max(0.0, rib.port.front() + rib.starboard.front()) + std::max(0.0, rib.port.back() + rib.starboard.back());
  for (std::size_t k = 1; k < fractions.size(); ++k) {
    const double dx = fractions[k] - fractions[k - 1];
    sum += std::hypot(dx, rib.port[k] - rib.port[k - 1]) + std::hypot(dx, rib.starboard[k] - rib.starboard[k - 1]);
  }
  return sum * rib.chord;
}

double section_area(const Rib& rib, const std::vector<double>& fractions) {
  double sum = 0;
  for (std::size_t k = 1; k < fractions.size(); ++k) {
    sum += (fractions[k] - fractions[k - 1]) * (rib.port[k] + rib.port[k - 1] + rib.starboard[k] + rib.starboard[k - 1]) / 2;
  }
  return sum * rib.chord * rib.chord;
}

}  // namespace fairblade::fill
