// Private to the target room. Product: where the rebuilt edges meet the body, and a refusal where no fair curve does.
// Verbs: nose_site, tail_site, nose_fair, tail_fair, refuse_nose, refuse_tail. Units: mm.
#pragma once
#include <array>
#include <optional>

#include "target/edges_only.hpp"
#include "target/rebuilt_edges.hpp"

namespace fairblade::target {

/// What the sites are worked out from.
struct Blade {
  const job::Job& job;
  const job::Station& station;
  const section::MeasuredSection& measured;
  const form::FittedForm& fitted;
  KeptBody body(const EdgesWish& wish) const { return {measured, fitted, job.reading_error, wish.keep_from, wish.keep_to}; }
  double trailing_edge(const EdgesWish& wish) const { return measured.chord + wish.extend_trailing; }
};

/// Port first; ordinates counted from the nose's own centre.
struct NoseSite {
  std::array<BodyPoint, 2> joint;
  double length = 0;
  double centre = 0;  ///< of the leading edge, mm to port of the centre plane
  bool fair(double radius) const;
  std::optional<Radii> radii() const;  ///< fair on both sides
};
NoseSite nose_site(const Blade& blade, const KeptBody& body, const EdgesWish& wish);

struct TailSite {
  std::array<BodyPoint, 2> joint;
  double length = 0;
  double run_out = 0;  ///< apart, where the two tangents run out at the trailing edge
  double middle = 0;   ///< of the edge face, mm to port of the centre plane
  bool fair(double edge) const { return edge <= run_out + rounding; }
  static constexpr double rounding = 1e-5;  ///< mm; the curve then ends that much thinner, never hollow
  TailCurve curve(Face face, double edge) const;
};
TailSite tail_site(const Blade& blade, const KeptBody& body, const EdgesWish& wish);

/// Is there a fair nose of this wish's radius, a fair tail to its edge?
bool nose_fair(const Blade& blade, const EdgesWish& wish);
bool tail_fair(const Blade& blade, const EdgesWish& wish);

/// Why there is no fair nose or tail, and what to change: each remedy was run.
Fault refuse_nose(const Blade& blade, const NoseSite& site, const EdgesWish& wish);
Fault refuse_tail(const Blade& blade, const TailSite& site, const EdgesWish& wish);

}  // namespace fairblade::target
