#include "target/fairness.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::target {
namespace {

using form::SectionCurve;

// Largest value in [fair, unfair] that the predicate still passes.
template <class Fair>
double last_fair(double fair, double unfair, const Fair& is_fair) {
  for (int k = 0; k < 60; ++k) {
    const double middle = (fair + unfair) / 2;
    (is_fair(middle) ? fair : unfair) = middle;
  }
  return fair;
}

}  // namespace

bool nose_dips(const SectionCurve& curve) {
  constexpr int steps = 400;
  const double root = std::sqrt(curve.max_thickness_at());
  for (int k = 1; k < steps; ++k) {
    if (curve.slope_u(root * k / steps) < -1e-9) return true;
  }
  return false;
}

double largest_fair_radius(const SectionCurve& curve, double chord) {
  const double own = SectionCurve(curve.form()).radius();
  const auto fair = [&](double r) { return SectionCurve(curve.form(), r, curve.edge()).nose_convex(); };
  if (!fair(own)) return 0;
  double high = 2 * own;
  while (fair(high) && high < 1) high *= 2;
  return chord * last_fair(own, high, fair);
}

double largest_fair_edge(const SectionCurve& curve, double chord) {
  const double own = SectionCurve(curve.form()).edge();
  const auto fair = [&](double e) { return SectionCurve(curve.form(), curve.radius(), e).tail_convex(); };
  if (!fair(own)) return 0;
  double high = 2 * own;
  while (fair(high) && high < 1) high *= 2;
  return chord * last_fair(own, high, fair);
}

std::optional<Fault> judge_curve(const job::Job& job, const job::Station& station, const SectionCurve& curve, double chord,
                                 std::vector<Warning>& warnings) {
  const auto mm = [&](double v) { return in_unit(v, job.units); };
  const std::string who = "station " + station.name;
  const double thickest = 2 * chord * curve.at(curve.max_thickness_at());
  const double edge = chord * curve.edge();
  const double radius = chord * curve.radius();
  if (edge >= thickest) {
    return Fault{place_of(station, {"trailing_edge_thickness"}),
                 who + ": a trailing edge of " + mm(edge) + " on a section only " + mm(thickest) + " thick",
                 "ask for an edge under " + mm(largest_fair_edge(curve, chord)) + " or a thicker section"};
  }
  if (curve.tail_flares()) {
    const double fair = largest_fair_edge(curve, chord);
    return Fault{place_of(station, {"trailing_edge_thickness"}),
                 who + ": with a trailing edge of " + mm(edge) + " the section would thicken again towards it",
                 "ask for " + mm(fair) + " at most, or a section " + mm(thickest * edge / std::max(fair, 1e-9)) + " thick"};
  }
  const bool dips = nose_dips(curve);
  if (dips || curve.nose_overshoots()) {
    const double fair = largest_fair_radius(curve, chord);
    return Fault{
        place_of(station, {"leading_edge_radius"}),
        who + ": a leading-edge radius of " + mm(radius) + " would " +
            (dips ? "leave a hollow behind the nose" : "make the nose thicker than the section"),
        "ask for " + mm(fair) + " at most, or a section " + mm(thickest * std::sqrt(radius / std::max(fair, 1e-9))) + " thick"};
  }
  if (!curve.tail_convex()) {
    const double fair = largest_fair_edge(curve, chord);
    warnings.push_back({"tail-hollow", who,
                        "with a trailing edge of " + mm(edge) + " the run aft is slightly hollow; it is straight or full up to " +
                            mm(fair) + ", or in a section " + mm(thickest * edge / std::max(fair, 1e-9)) + " thick"});
  }
  if (!curve.nose_convex()) {
    const double fair = largest_fair_radius(curve, chord);
    warnings.push_back({"nose-hollow", who,
                        "a leading-edge radius of " + mm(radius) + " leaves a slight hollow behind the nose; it is full up to " +
                            mm(fair) + ", or in a section " + mm(thickest * std::sqrt(radius / std::max(fair, 1e-9))) +
                            " thick"});
  } else if (curve.nose_shoulders()) {
    warnings.push_back({"nose-shoulder", who,
                        "a leading-edge radius of " + mm(radius) + " is " +
                            trimmed(curve.radius() / SectionCurve(curve.form()).radius(), 1) +
                            " times the form's own: the curve tightens again behind the nose (a shoulder)"});
  }
  return std::nullopt;
}

}  // namespace fairblade::target
