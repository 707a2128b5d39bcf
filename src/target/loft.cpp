#include "target/loft.hpp"

#include <algorithm>
#include <cmath>

#include "base/numerics.hpp"
#include "base/text.hpp"
#include "base/units.hpp"
#include "section/outline.hpp"

namespace fairblade::target {

using form::SectionCurve;
using section::MeasuredSection;
using section::Node;
using section::Side;

namespace {

double mix(double a, double b, double w) { return a + w * (b - a); }
std::optional<double> mix(const std::optional<double>& a, const std::optional<double>& b, double w) {
  if (!a || !b) return std::nullopt;
  return mix(*a, *b, w);
}
// Radius over chord goes as the square of the nose's sqrt(x) term, and that term is what runs straight.
double mixed_radius(double a, double chord_a, double b, double chord_b, double w) {
  const double root = mix(std::sqrt(std::max(0.0, a) / chord_a), std::sqrt(std::max(0.0, b) / chord_b), w);
  return root * root * mix(chord_a, chord_b, w);
}

// The two neighbours, and how far between them.
struct Gap {
  std::size_t above = 0, below = 0;
  double w = 0;
};

template <class Section>
std::optional<Gap> gap_at(const std::vector<Section>& sections, double down) {
  if (sections.empty() || !(down >= sections.front().down && down <= sections.back().down)) return std::nullopt;
  std::size_t below = 0;
  while (sections[below].down < down) ++below;
  if (sections[below].down == down) return Gap{below, below, 0};
  const double a = sections[below - 1].down, b = sections[below].down;
  return Gap{below - 1, below, (down - a) / (b - a)};
}

template <class Section>
Fault off_the_stations(const job::Job& job, const std::vector<Section>& sections, double down) {
  Fault out;
  out.place.file = job.file;
  out.what = "no section at " + in_unit(down, job.units) + " down";
  if (!sections.empty()) {
    out.what += ": the stations run from " + in_unit(sections.front().down, job.units) + " to " +
                in_unit(sections.back().down, job.units);
  }
  out.remedy = "ask for a height between the first and the last station";
  return out;
}

// Roots of chord fraction where a lofted side gets nodes: even ones, and where either parent turns.
std::vector<double> node_roots(const Side& a, const Side& b) {
  constexpr double apart = 1e-4;
  std::vector<double> own;
  for (const Side* side : {&a, &b}) {
    for (const Node& node : side->nodes()) own.push_back(std::sqrt(std::clamp(node.x / side->chord(), 0.0, 1.0)));
  }
  for (const double fraction : chord_fractions(240)) own.push_back(std::sqrt(fraction));
  std::sort(own.begin(), own.end());
  std::vector<double> out(1, 0.0);
  for (const double u : own) {
    if (u > out.back() + apart && u < 1 - apart) out.push_back(u);
  }
  out.push_back(1);
  return out;
}

Side lofted_side(const Side& a, const Side& b, double w) {
  const double chord = mix(a.chord(), b.chord(), w);
  std::vector<Node> nodes;
  for (const double u : node_roots(a, b)) {
    nodes.push_back({u >= 1 ? chord : chord * u * u, chord * mix(a.at_u(u) / a.chord(), b.at_u(u) / b.chord(), w)});
  }
  return Side(chord, nodes, mix(a.lead(), b.lead(), w));
}

// By fraction of the rudder's own chord, so that no rounding of x falls off its end.
double on_curve(const TargetSection& target, double fraction) {
  return fraction >= 1 ? 1 : (target.skeg + fraction * target.chord) / target.whole_chord();
}
double half_breadth_ratio(const TargetSection& target, Face face, double fraction) {
  const double x = fraction >= 1 ? target.trailing_edge_x() : target.leading_edge_x + fraction * target.chord;
  if (const FaceShape* shape = target.shape(face)) return shape->at(x) / target.chord;
  return target.whole_chord() * target.curve.at(on_curve(target, fraction)) / target.chord;
}
double slope_of(const TargetSection& target, Face face, double fraction) {
  if (const FaceShape* shape = target.shape(face)) return shape->slope(target.leading_edge_x + fraction * target.chord);
  return target.curve.slope(on_curve(target, fraction));
}

using Parent = std::shared_ptr<const TargetSection>;

class LoftFace : public FaceShape {
 public:
  LoftFace(Parent a, Parent b, double w, Face face) : a_(std::move(a)), b_(std::move(b)), w_(w), face_(face) {
    leading_ = mix(a_->leading_edge_x, b_->leading_edge_x, w);
    chord_ = mix(a_->chord, b_->chord, w);
  }
  double at(double x) const override {
    const double f = fraction(x);
    return chord_ * mix(half_breadth_ratio(*a_, face_, f), half_breadth_ratio(*b_, face_, f), w_);
  }
  // dy/dx = d(y/c)/d(fraction). Weighted as a sum: one steep nose must not become infinity less infinity.
  double slope(double x) const override {
    const double f = fraction(x);
    return (1 - w_) * slope_of(*a_, face_, f) + w_ * slope_of(*b_, face_, f);
  }

 private:
  double fraction(double x) const { return std::clamp((x - leading_) / chord_, 0.0, 1.0); }
  Parent a_, b_;
  double w_, leading_ = 0, chord_ = 1;
  Face face_;
};

bool one_family(const TargetSection& a, const TargetSection& b) {
  const bool shaped = a.port_shape || a.starboard_shape || b.port_shape || b.starboard_shape;
  const bool same_share = std::abs(a.skeg * b.chord - b.skeg * a.chord) <= 1e-12 * a.chord * b.chord;
  const form::Form &p = a.curve.form(), &q = b.curve.form();
  return !shaped && same_share && p.max_thickness_at == q.max_thickness_at &&
         (p.plain() || p.leading_edge_index == q.leading_edge_index);
}

// The nearest curve: the loft itself in one family, else a stand-in that the shapes overrule.
SectionCurve mixed_curve(const SectionCurve& a, const SectionCurve& b, double w) {
  form::Form form = w < 0.5 ? a.form() : b.form();
  form.thickness_ratio = mix(a.form().thickness_ratio, b.form().thickness_ratio, w);
  if (!a.form().plain() && !b.form().plain()) {
    form.leading_edge_index = mix(a.form().leading_edge_index, b.form().leading_edge_index, w);
    form.max_thickness_at = mix(a.form().max_thickness_at, b.form().max_thickness_at, w);
  }
  return SectionCurve(form, mixed_radius(a.radius(), 1, b.radius(), 1, w), mix(a.edge(), b.edge(), w));
}

// Greatest of f over u in [0, 1]: scanned, then refined between the neighbours of the best.
template <class Function>
double place_of_greatest(const Function& f) {
  constexpr int steps = 400;
  int best = 0;
  for (int k = 1; k <= steps; ++k) {
    if (f(double(k) / steps) > f(double(best) / steps)) best = k;
  }
  const double at = double(best) / steps;
  if (best == 0 || best == steps) return at;
  const double refined = least_between([&](double u) { return -f(u); }, at - 1.0 / steps, at + 1.0 / steps);
  return f(refined) > f(at) ? refined : at;
}

}  // namespace

std::string name_at(double down, LengthUnit unit) {
  return "at " + (unit == LengthUnit::mm ? trimmed(down, 1) : in_unit(down, unit));
}

Outcome<MeasuredSection> measured_at(const job::Job& job, const std::vector<MeasuredSection>& measured, double down,
                                     const std::string& name) {
  const auto gap = gap_at(measured, down);
  if (!gap) return off_the_stations(job, measured, down);
  const MeasuredSection &a = measured[gap->above], &b = measured[gap->below];
  const double w = gap->w;
  MeasuredSection out;
  out.station = name;
  out.down = down;
  out.ahead = mix(a.ahead, b.ahead, w);
  out.chord = mix(a.chord, b.chord, w);
  out.skeg = mix(a.skeg, b.skeg, w);
  out.port = w > 0 ? lofted_side(a.port, b.port, w) : a.port;
  out.starboard = w > 0 ? lofted_side(a.starboard, b.starboard, w) : a.starboard;
  out.readings_from = a.readings_from;
  out.thickness_only = a.thickness_only || b.thickness_only;
  out.one_side_only = a.one_side_only || b.one_side_only;
  out.interpolated = true;
  out.figures = section::figures_of(out, job.reading_error);
  // Without readings of its own the nose radius is the neighbours'.
  const section::Figures &fa = a.figures, &fb = b.figures;
  if (out.skeg == 0) {
    out.figures.leading_edge_radius = mixed_radius(fa.leading_edge_radius, a.chord, fb.leading_edge_radius, b.chord, w);
    out.figures.leading_edge_radius_error = std::hypot((1 - w) * fa.leading_edge_radius_error, w * fb.leading_edge_radius_error);
  }
  return out;
}

Outcome<TargetSection> target_at(const job::Job& job, const std::vector<TargetSection>& targets, double down,
                                 const std::string& name) {
  const auto gap = gap_at(targets, down);
  if (!gap) return off_the_stations(job, targets, down);
  const TargetSection &a = targets[gap->above], &b = targets[gap->below];
  const double w = gap->w;
  TargetSection out;
  if (w == 0) {
    out = a;
    out.station = name;
    out.warnings.clear();
    out.nose_cut = out.tail_cut = std::nullopt;
    return out;
  }
  out.station = name;
  out.down = down;
  out.ahead = mix(a.ahead, b.ahead, w);
  out.leading_edge_x = mix(a.leading_edge_x, b.leading_edge_x, w);
  out.chord = mix(a.chord, b.chord, w);
  out.skeg = mix(a.skeg, b.skeg, w);
  out.left_to = mix(a.left_to, b.left_to, w);
  out.curve = mixed_curve(a.curve, b.curve, w);
  if (!one_family(a, b)) {
    const auto above = std::make_shared<const TargetSection>(a);
    const auto below = std::make_shared<const TargetSection>(b);
    out.port_shape = std::make_shared<const LoftFace>(above, below, w, Face::port);
    out.starboard_shape = std::make_shared<const LoftFace>(above, below, w, Face::starboard);
  }
  fill_in_figures(out);
  if (out.port_shape && out.skeg == 0) {
    out.leading_edge_radius = mixed_radius(a.leading_edge_radius, a.chord, b.leading_edge_radius, b.chord, w);
  }
  return out;
}

ScreedMiss screed_miss(const TargetSection& above, const TargetSection& below) {
  ScreedMiss out;
  out.down = (above.down + below.down) / 2;
  const double taper = below.chord - above.chord;
  for (const Face face : {Face::port, Face::starboard}) {
    const auto miss = [&](double u) {
      return taper * (half_breadth_ratio(below, face, u * u) - half_breadth_ratio(above, face, u * u)) / 4;
    };
    for (const double sign : {1.0, -1.0}) {
      const double u = place_of_greatest([&](double v) { return sign * miss(v); });
      if (std::abs(miss(u)) <= std::abs(out.mm)) continue;
      out.mm = miss(u);
      out.chord_fraction = u * u;
      out.face = face;
    }
  }
  return out;
}

}  // namespace fairblade::target
