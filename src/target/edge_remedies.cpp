// What to change where a rebuilt edge cannot be fair. Every number is rounded to the safe side first, then run.
#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "base/text.hpp"
#include "target/edge_sites.hpp"
#include "target/remedies.hpp"

namespace fairblade::target {
namespace {

using Fair = std::function<bool(double)>;

// A length as it is printed: a digit finer than readings are, because it is a limit.
struct Printed {
  LengthUnit unit;
  int decimals() const { return unit == LengthUnit::mm ? 2 : unit == LengthUnit::cm ? 3 : 4; }
  double step() const { return millimetres_in(unit) * std::pow(10.0, -decimals()); }
  double down(double mm) const { return std::floor(mm / step() + 1e-6) * step(); }
  double up(double mm) const { return std::ceil(mm / step() - 1e-6) * step(); }
  std::string text(double mm) const { return fixed(mm / millimetres_in(unit), decimals()) + " " + std::string(name_of(unit)); }
};

// The fair place nearest to `start` on the way to `end`: scanned, then halved; the last value is a fair one.
std::optional<double> nearest_fair(double start, double end, const Fair& fair) {
  constexpr int steps = 40;
  double unfair = start;
  for (int k = 1; k <= steps; ++k) {
    double good = start + (end - start) * k / steps;
    if (!fair(good)) {
      unfair = good;
      continue;
    }
    for (int halving = 0; halving < 24; ++halving) {
      const double middle = (good + unfair) / 2;
      (fair(middle) ? good : unfair) = middle;
    }
    return good;
  }
  return std::nullopt;
}

const char* const no_way_out = "nothing about this edge alone helps: plan the full section instead";

enum class Inwards { down, up };

/// " (0.726 of the chord)", rounded inwards as the length beside it; nothing where it would not do so rounded.
std::string fraction(const Blade& blade, double x, Inwards side, const Fair& fair) {
  constexpr double steps = 1000, chance = 1e-6;
  const double share = x / blade.measured.chord * steps;
  const double rounded = (side == Inwards::down ? std::floor(share + chance) : std::ceil(share - chance)) / steps;
  return fair(rounded * blade.measured.chord) ? " (" + fixed(rounded, 3) + " of the chord)" : std::string();
}

// The side whose own limit is the lower one, or "both sides" where they are alike.
std::string governing(const NoseSite& site) {
  const auto port = fair_radii(site.joint[0], site.length), starboard = fair_radii(site.joint[1], site.length);
  const double p = port ? port->most : 0, s = starboard ? starboard->most : 0;
  if (std::abs(p - s) <= 1e-3 * std::max(p, s)) return "both sides";
  return p < s ? "port, the thinner side there," : "starboard, the thinner side there,";
}

}  // namespace

Fault refuse_nose(const Blade& blade, const NoseSite& site, const EdgesWish& wish) {
  const Printed printed{blade.job.units};
  std::vector<std::string> remedies;
  std::string why = "no radius is fair there";
  if (const auto radii = site.radii()) {
    const bool too_round = wish.radius > radii->most;
    const double limit = too_round ? printed.down(radii->most) : printed.up(radii->least);
    const std::string bound = too_round ? " at most" : " at least";
    const std::string side = governing(site);
    const std::string limits = side + (side == "both sides" ? " allow " : " allows ");
    why = (too_round ? limits : "it takes ") + printed.text(limit) + bound;
    if (limit > 0 && site.fair(limit)) {
      remedies.push_back("ask for a leading-edge radius of " + printed.text(limit) + bound);
    }
  }
  const Fair fair_from = [&](double from) {
    EdgesWish other = wish;
    other.keep_from = from;
    return nose_fair(blade, other);
  };
  const auto keep_from = [&](double from, Inwards side) {
    remedies.push_back("keep the body from x " + printed.text(from) + fraction(blade, from, side, fair_from) +
                       ", which rebuilds " + printed.text(from + wish.extend_leading) +
                       (side == Inwards::down ? " at most" : " at least"));
  };
  const double least = std::min(0.01 * blade.measured.chord, wish.keep_from);
  if (const auto found = nearest_fair(wish.keep_from, least, fair_from)) {
    const double from = printed.down(*found);
    if (from > 0 && fair_from(from)) keep_from(from, Inwards::down);
  } else if (const auto longer = nearest_fair(wish.keep_from, wish.keep_to - 0.05 * blade.measured.chord, fair_from)) {
    const double from = printed.up(*longer);
    if (from < wish.keep_to && fair_from(from)) keep_from(from, Inwards::up);
  }
  return {place_of(blade.station, {"leading_edge_radius", "keep", "approach"}),
          "station " + blade.station.name + ": a leading-edge radius of " + printed.text(wish.radius) +
              " on a nose rebuilt over " + printed.text(site.length) + " leaves a hollow: " + why,
          either(remedies, no_way_out)};
}

Fault refuse_tail(const Blade& blade, const TailSite& site, const EdgesWish& wish) {
  const Printed printed{blade.job.units};
  std::vector<std::string> remedies;
  const Fair fair_to = [&](double to) {
    EdgesWish other = wish;
    other.keep_to = to;
    return tail_fair(blade, other);
  };
  const double least = (wish.nose ? wish.keep_from : 0) + 0.05 * blade.measured.chord;
  if (least < wish.keep_to) {
    if (const auto found = nearest_fair(wish.keep_to, least, fair_to)) {
      const double to = printed.down(*found);
      if (to > wish.keep_from && fair_to(to)) {
        remedies.push_back("end the kept part at x " + printed.text(to) + fraction(blade, to, Inwards::down, fair_to));
      }
    }
  }
  const double edge = printed.down(site.run_out);
  if (edge > 0 && site.fair(edge)) remedies.push_back("ask for a trailing edge of " + printed.text(edge) + " at most");
  if (wish.extend_trailing > 0) {
    const Fair fair_extended = [&](double extension) {
      EdgesWish other = wish;
      other.extend_trailing = extension;
      return tail_fair(blade, other);
    };
    if (const auto found = nearest_fair(wish.extend_trailing, 0, fair_extended)) {
      const double extension = printed.down(*found);
      if (extension >= 0 && fair_extended(extension)) {
        remedies.push_back("extend the trailing edge by " + printed.text(extension) + " instead of " +
                           printed.text(wish.extend_trailing));
      }
    }
  }
  const std::string tangents = site.run_out >= 0 ? "run out " + printed.text(site.run_out) + " apart there"
                                                 : "have crossed by " + printed.text(-site.run_out) + " there";
  return {place_of(blade.station, {"trailing_edge_thickness", "keep", "extend_trailing_edge", "approach"}),
          "station " + blade.station.name + ": a trailing edge of " + printed.text(wish.edge) +
              " leaves the tail hollow: the two faces, straight on from x " + printed.text(wish.keep_to) + ", " + tangents,
          either(remedies, no_way_out)};
}

}  // namespace fairblade::target
