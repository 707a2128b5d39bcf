#include "target/edge_sites.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fairblade::target {
namespace {

// Where the leading edge stands off the centre plane. Half the difference of two readings strays by 0.7 of their
// error, the fitted line at its end by some 0.4: both thresholds are beyond 2.5 of that.
double nose_centre(const Blade& blade, double extend) {
  const double error = blade.job.reading_error;
  std::optional<double> port, starboard;  // a nose is only rebuilt where no skeg stands ahead
  for (const auto& point : blade.measured.points) {
    if (point.x > 0) break;
    (point.face == Face::port ? port : starboard) = point.half_breadth;
  }
  if (port && starboard) {
    const double centre = (*port - *starboard) / 2;
    return std::abs(centre) > 2 * error ? centre : 0;
  }
  const double lean = std::tan(blade.fitted.skew_degrees * std::numbers::pi / 180);
  const double centre = blade.fitted.centre_shift + lean * (-extend - blade.measured.chord / 2);
  return std::abs(centre) > error ? centre : 0;
}

}  // namespace

bool NoseSite::fair(double radius) const {
  return length > 0 && NoseCurve(joint[0], length, radius).fair() && NoseCurve(joint[1], length, radius).fair();
}

std::optional<Radii> NoseSite::radii() const {
  const auto port = fair_radii(joint[0], length), starboard = fair_radii(joint[1], length);
  if (!port || !starboard) return std::nullopt;
  const Radii both{std::max(port->least, starboard->least), std::min(port->most, starboard->most)};
  if (both.least > both.most) return std::nullopt;
  return both;
}

NoseSite nose_site(const Blade& blade, const KeptBody& body, const EdgesWish& wish) {
  NoseSite out;
  out.length = wish.keep_from + wish.extend_leading;
  out.centre = nose_centre(blade, wish.extend_leading);
  out.joint = {body.at(Face::port, wish.keep_from), body.at(Face::starboard, wish.keep_from)};
  out.joint[0].half_breadth -= out.centre;
  out.joint[1].half_breadth += out.centre;
  return out;
}

TailCurve TailSite::curve(Face face, double edge) const {
  const BodyPoint& from = joint[face == Face::port ? 0 : 1];
  return {from, length, std::min(edge / 2 + section::sign_of(face) * middle, TailCurve::tangent(from, length))};
}

TailSite tail_site(const Blade& blade, const KeptBody& body, const EdgesWish& wish) {
  TailSite out;
  out.length = blade.trailing_edge(wish) - wish.keep_to;
  out.joint = {body.at(Face::port, wish.keep_to), body.at(Face::starboard, wish.keep_to)};
  const double port = TailCurve::tangent(out.joint[0], out.length);
  const double starboard = TailCurve::tangent(out.joint[1], out.length);
  out.run_out = port + starboard;
  out.middle = (port - starboard) / 2;
  if (std::abs(out.middle) < blade.job.reading_error) {
    // On the centre plane, as far as neither side becomes hollow.
    const double room = std::max(0.0, (out.run_out - wish.edge) / 2);
    out.middle = std::clamp(0.0, out.middle - room, out.middle + room);
  }
  return out;
}

bool nose_fair(const Blade& blade, const EdgesWish& wish) { return nose_site(blade, blade.body(wish), wish).fair(wish.radius); }

bool tail_fair(const Blade& blade, const EdgesWish& wish) { return tail_site(blade, blade.body(wish), wish).fair(wish.edge); }

}  // namespace fairblade::target
