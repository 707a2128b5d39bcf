#include "report/words.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace fairblade::report {

std::string both_units(double mm, LengthUnit unit) {
  const std::string metric = in_unit(mm, LengthUnit::mm);
  return unit == LengthUnit::mm ? metric : metric + " (" + in_unit(mm, unit) + ")";
}

std::string side_words(const section::MeasuredSection& measured, section::Face face) {
  return measured.thickness_only ? "both sides" : section::name_of(face);
}

namespace {

// Limits of the words by rms miss, as shares of the chord; a half per cent is what a fairing batten shows (common
// practice, no source). Below one and a half reading errors no reading can tell the blade from the form.
constexpr double near_share = 0.005, loose_share = 0.015, told_apart = 1.5;

bool far_off(const form::FittedForm& fitted, const section::MeasuredSection& measured, double reading_error) {
  return fitted.rms > std::max(told_apart * reading_error, loose_share * measured.chord);
}

std::string verdict(const form::FittedForm& fitted, const section::MeasuredSection& measured, double reading_error) {
  const std::string name = form::name_of(fitted.form);
  if (far_off(fitted, measured, reading_error)) return "no standard section: even the nearest, a " + name + ", is far off";
  if (fitted.rms <= told_apart * reading_error) return "a " + name + ", as far as these readings can tell";
  return (fitted.rms <= near_share * measured.chord ? "near a " : "only loosely a ") + name;
}

}  // namespace

std::string nearest_form(const Plan& plan, std::size_t station) {
  const auto& fitted = plan.fitted[station];
  return form::name_of(fitted.form) + (far_off(fitted, plan.measured[station], plan.job.reading_error) ? ", far" : "");
}

std::string nearness(const Plan& plan, std::size_t station) {
  const auto& fitted = plan.fitted[station];
  const auto& measured = plan.measured[station];
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  std::string out = verdict(fitted, measured, plan.job.reading_error) + "; half of the readings miss it by less than " +
                    length(fitted.typical) + ", the worst is " + length(std::abs(fitted.worst.residual)) +
                    (fitted.worst.residual < 0 ? " hollow" : " full") + " at x " + length(fitted.worst.x) + ", " +
                    side_words(measured, fitted.worst.face);
  // Another place of greatest thickness is worth naming where it takes away a third of the miss or more.
  if (fitted.rms > told_apart * plan.job.reading_error && fitted.modified_rms < 2.0 / 3 * fitted.rms) {
    out += "; a modified form, " + form::name_of(fitted.modified) + ", comes nearer (rms " + length(fitted.modified_rms) +
           " against " + length(fitted.rms) + ")";
  }
  // Noise alone makes two sides differ by sqrt(2) reading errors.
  if (measured.figures.lopsided > 2.5 * plan.job.reading_error) {
    out += "; port and starboard differ by " + length(measured.figures.lopsided) + " (root mean square)";
  }
  return out;
}

std::vector<std::string> not_included(const Plan& plan) {
  std::vector<std::string> out;
  const double last = plan.measured.back().down;
  if (!plan.job.bottom) {
    out.push_back("what lies below the last station, at " + both_units(last, plan.job.units) +
                  ": the job gives no \"bottom\"");
  }
  out.push_back("glass and paint");
  return out;
}

}  // namespace fairblade::report
