// Private to the target room. Product: the fair line of the body that is kept, at the joints of the rebuilt edges.
// Verbs: KeptBody::at. Units: mm, mm aft of the measured leading edge.
//
// Ordinate, slope and curvature come from the fitted form (with its centre line) plus a smoothed residual, never from
// the interpolant, whose second derivative is noise. The residual of each face is smoothed in two steps, to the smaller
// of the reading error and the data's own noise: first a shift, a lean and a share of the form, held as small as that
// noise allows (ridge); only where these do not suffice, a smoothing spline on top (minimal integral of y''², Reinsch
// 1967, with the three left free). So exact forms and exact flats are met exactly and noise on a form bends nothing.
// The data's own noise: contrasts of four readings running that a shift, a lean and a form cannot make.
#pragma once
#include <array>
#include <vector>

#include "form/form.hpp"
#include "section/section.hpp"

namespace fairblade::target {

struct BodyPoint {
  double half_breadth = 0, slope = 0;
  double second = 0;  ///< d²y/dx², 1/mm; held to at most 0
};

class KeptBody {
 public:
  /// Uses the readings between `from` and `to`, and the next one outside where the end lies between two readings.
  KeptBody(const section::MeasuredSection& measured, const form::FittedForm& fitted, double reading_error, double from,
           double to);
  BodyPoint at(section::Face face, double x) const;  ///< x > 0
  double noise() const { return noise_; }            ///< mm, to which the residual was smoothed

 private:
  struct Residual {
    std::vector<double> x, y;  // what is smoothed
    std::array<double, 3> drift{};
    std::vector<double> bend;  // of |d|³ at each x; empty without a spline
  };
  void gather(const section::MeasuredSection& measured, const form::FittedForm& fitted, section::Face face);
  double own_noise() const;
  void smooth(Residual& face) const;
  bool smooth_by_drift(Residual& face) const;
  void smooth_by_spline(Residual& face) const;
  std::array<double, 3> basis(double x) const;
  double place(double x) const { return (x + skeg_) / chord_; }
  double fitted_at(section::Face face, double x) const;
  const Residual& of(section::Face face) const { return faces_[face == section::Face::port ? 0 : 1]; }

  double chord_, skeg_;               // of the whole section, and the part of it that is fixed skeg
  double from_, to_, middle_, half_;  // the window and its scale
  double thickness_, shift_, lean_;   // of the fitted form: ratio, mm, mm per mm
  double noise_ = 0;
  std::array<Residual, 2> faces_;
};

}  // namespace fairblade::target
