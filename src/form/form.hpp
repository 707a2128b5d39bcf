// The published forms and the fit of a measured section to them. Product: FittedForm. Verbs: fit_form.
//
// NACA Report 460 (1933): 4-digit thickness form. NACA Report 492 (1934): modified 4-digit form; its equations are
// repeated in NASA TM X-3284 and TM-4741.
#pragma once
#include <string>

#include "section/section.hpp"

namespace fairblade::form {

/// A thickness form of unit chord. With m = 0 it is the plain 4-digit form.
struct Form {
  double thickness_ratio = 0.12;
  double leading_edge_index = 6;  ///< I; only for the modified form
  double max_thickness_at = 0;    ///< m, chord fraction 0.2-0.6; 0: plain form
  bool plain() const { return max_thickness_at == 0; }
};

/// "0012", or "0012-64" for a modified form: rounded to whole per cent, whole index and whole tenths.
std::string name_of(const Form& form);

struct Residual {
  double residual = 0;  ///< mm in half-breadth, measured - form (positive: full)
  double x = 0;
  section::Face face = section::Face::port;
  int line = 0;
};

struct FittedForm {
  Form form;                         ///< plain; chord is the rudder's with its skeg, where there is one
  double thickness_ratio_error = 0;  ///< one standard deviation; negative when there are too few readings to tell
  double rms = 0;                    ///< mm, normal to the curve
  double typical = 0;                ///< mm, median of the normal misses
  Residual worst;                    ///< the greatest, square to the section as rms is
  double centre_shift = 0;           ///< mm to port, of the section's centre line at mid-chord
  double skew_degrees = 0;           ///< of the centre line against the centre plane; positive: trailing edge to port
  std::vector<Residual> suspects;    ///< single readings that the fit set aside, and that no other place explains
  Form modified;
  double modified_rms = 0;  ///< mm
};

/// The nearest forms to a measured section, by Tukey's biweight on the distance normal to the curve; of a place read on both
/// faces on both distances or on their sum and difference, whichever are the likelier: an edge that is out of the form on both
/// faces alike then says nothing about the centre line.
FittedForm fit_form(const section::MeasuredSection& measured, double reading_error);

}  // namespace fairblade::form
