#include "report/words.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/report.hpp"

namespace fairblade::report {

std::string litres(double value) { return value > 0 && value < 0.005 ? "less than 0.01 L" : fixed(value, 2) + " L"; }

std::string grams(double kg) { return fixed(1000 * kg, 0) + " g"; }

std::string capital(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string sentence(std::string words) {
  words = capital(std::move(words));
  if (!words.empty() && words.back() != '.') words += '.';
  return words;
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  const std::string plural = many.empty() ? std::string(one) + "s" : std::string(many);
  return std::to_string(count) + " " + (count == 1 ? std::string(one) : plural);
}

std::string minutes_words(double minutes) {
  const auto whole = static_cast<std::size_t>(std::max(0L, std::lround(minutes)));
  if (whole == 0 && minutes > 0) return "less than a minute";
  if (whole < 100) return counted(whole, "minute");
  return counted(whole / 60, "hour") + (whole % 60 > 0 ? " " + counted(whole % 60, "minute") : "");
}

std::string hours_words(const job::Window& window) { return trimmed(window.from, 2) + " to " + trimmed(window.to, 2) + " hours"; }

std::string listed(const std::vector<std::string>& names, std::size_t most) {
  std::string out;
  const std::size_t shown = std::min(names.size(), most);
  for (std::size_t k = 0; k < shown; ++k) {
    const bool last = k + 1 == names.size();
    out += (k == 0 ? "" : last ? " and " : ", ") + on_one_line(names[k]);
  }
  if (shown < names.size()) out += " and " + std::to_string(names.size() - shown) + " more";
  return out;
}

std::string of_stations(const Plan& plan, const std::vector<std::size_t>& which) {
  std::vector<std::string> names;
  for (const std::size_t k : which) names.push_back(plan.measured[k].station);
  return (names.size() == 1 ? "station " : "stations ") + listed(names, 6);
}

std::string from_to(double low, double high, LengthUnit unit) {
  const std::string a = both_units(low, unit), b = both_units(high, unit);
  return a == b ? a : number_in_unit(low, LengthUnit::mm) + " to " + b;
}

std::string range_words(double low, double high) { return "19 times in 20 between " + fixed(low, 2) + " and " + litres(high); }

std::string aft_words(double x, LengthUnit unit) {
  constexpr double nothing = 0.05;  // mm: prints as 0.0
  if (x <= -nothing) return both_units(-x, unit) + " ahead of the old leading edge";
  if (x < nothing) return "at the leading edge";
  return both_units(x, unit) + " aft of the leading edge";
}

std::string deepest_place(const Plan& plan, bool removal) {
  const fill::Deepest* worst = nullptr;
  std::size_t at = 0;
  for (std::size_t k = 0; k < plan.changes.size(); ++k) {
    const fill::Deepest& one = removal ? plan.changes[k].removal : plan.changes[k].add;
    if (one.depth > 0 && (!worst || one.depth > worst->depth)) worst = &one, at = k;
  }
  if (!worst) return "none";
  return both_units(worst->depth, plan.job.units) + " at station " + on_one_line(plan.changes[at].station) + ", " +
         aft_words(worst->x, plan.job.units) + ", " + side_words(plan.measured[at], worst->face);
}

namespace {

bool coats_alike(const fill::BeforeCoats& before) { return std::abs(before.over_filler - before.over_old) < 1e-6; }

}  // namespace

std::string under_coats_words(const Plan& plan) {
  const auto& before = plan.work.before_coats;
  if (!before) return {};
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  const std::string all = "Depths are counted to the finished surface. Under the coats ";
  const bool leaves = std::any_of(plan.targets.begin(), plan.targets.end(), [](const auto& one) { return one.left_to > 0; });
  const std::string left_out = leaves ? " but where the leading edge is left" : "";
  if (coats_alike(*before)) {
    return all + "the blade is shaped " + length(before->over_old) + " deeper all over" + left_out +
           ": add that much less, take off that much more, as the templates marked \"bare\" have it.";
  }
  return all + "filler is shaped " + length(before->over_filler) +
         " deeper, as the templates marked \"bare\" have it: add that much less. Old surface that gets no filler has to stand " +
         length(before->over_old) + " deeper" + left_out + ".";
}

std::string map_under_coats_words(const Plan& plan) {
  const auto& before = plan.work.before_coats;
  if (!before) return {};
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  if (coats_alike(*before)) {
    return "Depths are to the surface that is shaped under the coats, " + length(before->over_old) +
           " inside the finished one, as the templates marked \"bare\" have it.";
  }
  return "Depths are to what is shaped under the coats: filler " + length(before->over_filler) +
         " inside the finished surface, as the templates marked \"bare\" have it, old surface " + length(before->over_old) + ".";
}

std::string before_coats_words(const Plan& plan) {
  const fill::BeforeCoats& before = *plan.work.before_coats;
  const auto length = [&](double mm) { return both_units(mm, plan.job.units); };
  const std::string all =
      "before the coats, " + (coats_alike(before) ? length(before.over_old) + " a side over old surface and filler alike, "
                                                  : length(before.over_filler) + " a side over filler and " +
                                                        length(before.over_old) + " over old surface, ");
  if (before.deepest <= fill::no_filler) return all + "nothing has to come off";
  return all + litres(before.remove) + " to take off" +
         (before.beyond >= 0.005 ? " (and " + litres(before.beyond) + " above and below the stations)" : "") + ", up to " +
         both_units(before.deepest, plan.job.units) + " deep at station " + on_one_line(plan.changes[before.station].station);
}

std::size_t batches_in(const Plan& plan, fill::Zone zone) {
  std::size_t out = 0;
  for (const auto& pass : plan.work.batches) out += pass.zone == zone ? static_cast<std::size_t>(pass.count) : 0;
  return out;
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
    out += "; a modified form, " + form::name_of(fitted.modified) + ", comes nearer (it misses by " +
           length(fitted.modified_rms) + " on the whole, the plain one by " + length(fitted.rms) + ")";
  }
  // Noise alone makes two sides differ by sqrt(2) reading errors.
  if (measured.figures.lopsided > 2.5 * plan.job.reading_error) {
    out += "; port and starboard differ by " + length(measured.figures.lopsided) + " over the whole chord";
  }
  return out;
}

std::vector<std::string> not_included(const Plan& plan) {
  std::vector<std::string> out;
  const double last = plan.measured.back().down;
  if (!plan.job.bottom) {
    out.push_back("what lies below the last station, at " + both_units(last, plan.job.units) + ": the job gives no \"bottom\"");
  }
  if (plan.work.sawn_off >= 0.005) {
    out.push_back("what is built past the trailing edge's saw line and sawn off again: " + litres(plan.work.sawn_off) +
                  " of paste");
  }
  if (plan.job.coats.empty() && !plan.job.nose_glass) out.push_back("glass and paint: the job names no \"coats\"");
  return out;
}

}  // namespace fairblade::report
