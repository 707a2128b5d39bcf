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

/// What of an edge or a nose too full for the section can be had: less of it, or a thicker section; nothing where neither can.
/// Rounded inwards, to be typed in as it is printed.
struct Ways {
  std::optional<double> at_most, thick;  // mm
  bool any() const { return at_most || thick; }
};

Ways ways_of(double fair, double needed, double chord, LengthUnit unit) {
  constexpr double thickest = 0.4;  // of the chord, beyond any section
  Ways out;
  if (last_figure_down(fair, unit) > 0) out.at_most = last_figure_down(fair, unit);
  if (fair > 0 && needed <= thickest * chord) out.thick = last_figure_up(needed, unit);
  return out;
}

/// "up to 4.0 mm, or in a section 52.0 mm thick".
std::string where_fair(const Ways& ways, LengthUnit unit) {
  std::string out;
  if (ways.at_most) out = "up to " + in_unit(*ways.at_most, unit);
  if (ways.thick) out += (out.empty() ? "" : ", or ") + ("in a section " + in_unit(*ways.thick, unit)) + " thick";
  return out;
}

/// "ask for 4.0 mm at most, or a section 52.0 mm thick", or what else there is to ask for.
std::string how_to_ask(const Ways& ways, LengthUnit unit, const char* otherwise) {
  if (!ways.any()) return otherwise;
  std::string out = "ask for ";
  if (ways.at_most) out += in_unit(*ways.at_most, unit) + " at most";
  if (ways.thick) out += (ways.at_most ? ", or a section " : "a section ") + in_unit(*ways.thick, unit) + " thick";
  return out;
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
    return Fault{
        place_of(station, {"trailing_edge_thickness"}),
        who + ": a trailing edge of " + mm(edge) + " on a section only " + mm(thickest) + " thick",
        "ask for an edge under " + mm(last_figure_down(largest_fair_edge(curve, chord), job.units)) + " or a thicker section"};
  }
  const bool tail_full = curve.tail_convex(), nose_full = curve.nose_convex();
  const double fair_edge = tail_full ? edge : largest_fair_edge(curve, chord);
  const double fair_radius = nose_full ? radius : largest_fair_radius(curve, chord);
  const Ways tail = ways_of(fair_edge, thickest * edge / std::max(fair_edge, 1e-9), chord, job.units);
  const Ways nose = ways_of(fair_radius, thickest * std::sqrt(radius / std::max(fair_radius, 1e-9)), chord, job.units);
  if (curve.tail_flares()) {
    return Fault{place_of(station, {"trailing_edge_thickness"}),
                 who + ": with a trailing edge of " + mm(edge) + " the section would thicken again towards it",
                 how_to_ask(tail, job.units, "ask for a form with its greatest thickness further forward")};
  }
  const bool dips = nose_dips(curve);
  if (dips || curve.nose_overshoots()) {
    return Fault{place_of(station, {"leading_edge_radius"}),
                 who + ": a leading-edge radius of " + mm(radius) + " would " +
                     (dips ? "leave a hollow behind the nose" : "make the nose thicker than the section"),
                 how_to_ask(nose, job.units, "ask for the form's own radius, or another form")};
  }
  if (!tail_full) {
    warnings.push_back({"tail-hollow", who,
                        "with a trailing edge of " + mm(edge) + " the run aft is slightly hollow" +
                            (tail.any() ? "; it is straight or full " + where_fair(tail, job.units)
                                        : ", as the form itself is: ask for one with its greatest thickness further forward")});
  }
  if (!nose_full) {
    warnings.push_back(
        {"nose-hollow", who,
         "a leading-edge radius of " + mm(radius) + " leaves a slight hollow behind the nose" +
             (nose.any() ? "; it is full " + where_fair(nose, job.units) : ", as the form itself does: ask for another form")});
  } else if (curve.nose_shoulders()) {
    warnings.push_back({"nose-shoulder", who,
                        "a leading-edge radius of " + mm(radius) + " is " +
                            trimmed(curve.radius() / SectionCurve(curve.form()).radius(), 1) +
                            " times the form's own: the curve tightens again behind the nose (a shoulder)"});
  }
  return std::nullopt;
}

}  // namespace fairblade::target
