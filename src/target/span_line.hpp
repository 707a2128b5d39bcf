// One quantity along the span (chord, leading-edge line, t, r or e): faired, and what each station was pulled.
// Verbs: fair_along. Heights in mm; the quantity in its own unit throughout.
//
// "straight": weighted least squares of a straight line in `down`; "fair": of a quadratic. Lower bounds make it a convex
// quadratic programme in three unknowns at most, solved as a least-distance problem by non-negative least squares
// (Lawson & Hanson 1974, ch. 23). Seen: within 1e-13 of enumerating every set of binding stations.
#pragma once
#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "job/job.hpp"

namespace fairblade::target {

struct SpanQuantity {
  std::vector<double> down;  ///< mm, rising, all distinct
  std::vector<double> value;
  std::vector<double> weight;  ///< >= 0; 0 for a station that was interpolated. Empty: all 1
  std::vector<double> bound;   ///< the line may not be below it, at any station; -infinity: none. Empty: none at all
};

struct SpanLine {
  std::vector<double> faired;  ///< at each station; never below its bound
  std::vector<double> pull;    ///< faired - own
  /// Own value less what the other stations alone would say, by r/(1 - h). Always of the line without bounds;
  /// for "as-measured" of the quadratic. A station without weight: its plain residual.
  std::vector<double> deleted;
  std::vector<double> hat;           ///< h, each station's hold on its own place of the line
  bool deleted_known = false;        ///< four stations with weight, or more; else `deleted` is 0 throughout
  std::optional<double> scatter;     ///< one standard deviation of a station of mean weight, where stations are to spare
  std::vector<std::size_t> binding;  ///< stations whose bound holds the line up

  /// The line at any height; for "as-measured" straight between stations, held beyond the ends.
  double at(double height) const;

  bool between_stations = false;         ///< "as-measured"
  std::vector<double> down;              ///< mm
  double middle = 0, half_span = 1;      ///< mm; s = (down - middle) / half_span
  std::array<double, 3> coefficients{};  ///< of 1, s, s²
};

/// A quadratic needs three stations with weight, a straight line two; with fewer the line is what they allow.
SpanLine fair_along(const SpanQuantity& quantity, job::Spanwise kind);

}  // namespace fairblade::target
