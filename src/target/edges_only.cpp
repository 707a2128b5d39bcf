#include "target/edges_only.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/geometry.hpp"
#include "base/numerics.hpp"
#include "target/edge_sites.hpp"

namespace fairblade::target {
namespace {

using section::MeasuredSection;

// One face: rebuilt nose, measured side, rebuilt tail.
class EdgedFace final : public FaceShape {
 public:
  EdgedFace(const section::Side& side, const EdgesWish& wish, const NoseCurve& nose, double nose_offset, const TailCurve& tail)
      : side_(side), wish_(wish), nose_(nose), nose_offset_(nose_offset), tail_(tail) {}

  double at(double x) const override {
    if (wish_.nose && x < wish_.keep_from) return nose_offset_ + nose_.at(x + wish_.extend_leading);
    if (wish_.tail && x > wish_.keep_to) return tail_.at(x - wish_.keep_to);
    return side_.at(x);
  }
  double slope(double x) const override {
    if (wish_.nose && x < wish_.keep_from) return nose_.slope(x + wish_.extend_leading);
    if (wish_.tail && x > wish_.keep_to) return tail_.slope(x - wish_.keep_to);
    return side_.slope(x);
  }

 private:
  section::Side side_;
  EdgesWish wish_;
  NoseCurve nose_;
  double nose_offset_;  // half-breadth of the leading edge on this face: its centre, to port or to starboard
  TailCurve tail_;
};

Joint joint_of(const section::Side& side, const BodyPoint& point, double x) {
  return {x, point.half_breadth, point.slope, point.second, point.half_breadth - side.at(x)};
}

void read_off_figures(const MeasuredSection& measured, const EdgesWish& wish, TargetSection& out) {
  fill_in_figures(out);
  out.leading_edge_radius = wish.nose ? wish.radius : measured.figures.leading_edge_radius;
}

std::optional<Fault> refuse_wish(const Blade& blade, const EdgesWish& wish) {
  const auto place = [&](const char* key) { return place_of(blade.station, {key}); };
  const std::string who = "station " + blade.station.name + ": ";
  const auto mm = [&](double v) { return in_unit(v, blade.job.units); };
  if (!(wish.keep_from < wish.keep_to) || wish.keep_from < 0 || wish.keep_to > blade.measured.chord * (1 + 1e-9)) {
    return Fault{place("keep"),
                 who + "the kept part runs from " + mm(wish.keep_from) + " to " + mm(wish.keep_to) + " on a chord of " +
                     mm(blade.measured.chord),
                 "keep a part between the leading and the trailing edge, the smaller place first"};
  }
  if (!wish.nose && wish.extend_leading > 0) {
    return Fault{place("extend_leading_edge"),
                 who + "the leading edge stays as it is, so it cannot be built forward by " + mm(wish.extend_leading),
                 "ask for no extension, or for a leading edge that is shaped"};
  }
  return std::nullopt;
}

}  // namespace

EdgesWish edges_wish(const job::Station& station, const MeasuredSection& measured, const form::FittedForm& fitted,
                     double extend_leading, double extend_trailing) {
  const job::TargetRequest& request = station.target;
  const auto mm = [&](const job::ChordPlace& place) { return place.in_mm ? place.value : place.value * measured.chord; };
  EdgesWish out;
  out.extend_leading = extend_leading;
  out.extend_trailing = extend_trailing;
  out.keep_from = mm(request.keep_from);
  out.keep_to = mm(request.keep_to);
  const form::SectionCurve own{form::Form{fitted.form.thickness_ratio, 6, 0}};
  switch (request.leading_edge_radius.kind) {
    case job::LeadingEdgeRadius::Kind::form: out.radius = (measured.chord + measured.skeg) * own.radius(); break;
    case job::LeadingEdgeRadius::Kind::mm: out.radius = request.leading_edge_radius.value; break;
    case job::LeadingEdgeRadius::Kind::percent_chord:
      out.radius = request.leading_edge_radius.value / 100 * (measured.chord + extend_leading + extend_trailing);
      break;
  }
  const bool of_form = request.trailing_edge_thickness.kind == job::TrailingEdgeThickness::Kind::form;
  out.edge = of_form ? (measured.chord + measured.skeg) * own.edge() : request.trailing_edge_thickness.value;
  const double nothing = 1e-6 * measured.chord;
  out.nose = request.leading_edge == job::LeadingEdgeWork::shape && measured.skeg <= 0 && out.keep_from > nothing;
  out.tail = measured.chord + extend_trailing - out.keep_to > nothing;
  return out;
}

EdgesWish edges_wish(const job::Station& station, const MeasuredSection& measured, const form::FittedForm& fitted) {
  const auto fixed_mm = [](const job::Extension& extension) { return extension.up_to ? 0.0 : extension.mm; };
  return edges_wish(station, measured, fitted, fixed_mm(station.target.extend_leading_edge),
                    fixed_mm(station.target.extend_trailing_edge));
}

Outcome<TargetSection> plan_edges_only(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                                       const form::FittedForm& fitted, const EdgesWish& wish, bool with_remedies) {
  const Blade blade{job, station, measured, fitted};
  if (auto fault = refuse_wish(blade, wish)) return *fault;
  const KeptBody body = blade.body(wish);
  std::vector<Fault> faults;
  Joints joints;
  std::array<NoseCurve, 2> nose;
  double centre = 0;
  if (wish.nose) {
    const NoseSite site = nose_site(blade, body, wish);
    if (!site.fair(wish.radius)) faults.push_back(with_remedies ? refuse_nose(blade, site, wish) : Fault{});
    centre = site.centre;
    nose = {NoseCurve(site.joint[0], site.length, wish.radius), NoseCurve(site.joint[1], site.length, wish.radius)};
    joints.nose = {joint_of(measured.port, body.at(Face::port, wish.keep_from), wish.keep_from),
                   joint_of(measured.starboard, body.at(Face::starboard, wish.keep_from), wish.keep_from)};
  }
  std::array<TailCurve, 2> tail;
  if (wish.tail) {
    const TailSite site = tail_site(blade, body, wish);
    if (!site.fair(wish.edge)) faults.push_back(with_remedies ? refuse_tail(blade, site, wish) : Fault{});
    tail = {site.curve(Face::port, wish.edge), site.curve(Face::starboard, wish.edge)};
    joints.tail = {joint_of(measured.port, site.joint[0], wish.keep_to),
                   joint_of(measured.starboard, site.joint[1], wish.keep_to)};
  }
  if (!faults.empty()) return faults;

  TargetSection out;
  out.station = measured.station;
  out.down = measured.down;
  if (measured.ahead) out.ahead = *measured.ahead + wish.extend_leading;
  out.leading_edge_x = -wish.extend_leading;
  out.chord = measured.chord + wish.extend_leading + wish.extend_trailing;
  out.skeg = measured.skeg;
  out.curve = form::SectionCurve(fitted.form);
  out.joints = joints;
  out.port_shape = std::make_shared<EdgedFace>(measured.port, wish, nose[0], centre, tail[0]);
  out.starboard_shape = std::make_shared<EdgedFace>(measured.starboard, wish, nose[1], -centre, tail[1]);
  read_off_figures(measured, wish, out);
  return out;
}

Outcome<TargetSection> plan_edges_only(const job::Job& job, const job::Station& station, const MeasuredSection& measured,
                                       const form::FittedForm& fitted) {
  return plan_edges_only(job, station, measured, fitted, edges_wish(station, measured, fitted));
}

}  // namespace fairblade::target
