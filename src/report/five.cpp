#include "report/five.hpp"

#include <algorithm>
#include <functional>

#include "base/text.hpp"
#include "report/layout.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

// "12.1 to 12.4", or one number where both ends are alike.
std::string from_to(const Plan& plan, int decimals, const std::function<double(std::size_t)>& value) {
  double low = value(0), high = low;
  for (std::size_t k = 1; k < plan.measured.size(); ++k) {
    low = std::min(low, value(k));
    high = std::max(high, value(k));
  }
  return fixed_range(low, high, decimals);
}

// Lengths from one end to the other, both ends in both units.
std::string lengths_from_to(const Plan& plan, const std::function<double(std::size_t)>& mm) {
  std::string metric = from_to(plan, 1, mm) + " mm";
  if (plan.job.units == LengthUnit::mm) return metric;
  const double unit = millimetres_in(plan.job.units);
  const int decimals = plan.job.units == LengthUnit::cm ? 2 : 3;
  return metric + " (" + from_to(plan, decimals, [&](std::size_t k) { return mm(k) / unit; }) + " " +
         std::string(name_of(plan.job.units)) + ")";
}

Number to_mix(const Plan& plan) {
  const fill::ZoneAmount& whole = plan.work.zones.whole;
  if (!(whole.to_mix >= 0.005)) return {"Filler to mix", litres(whole.to_mix), "nothing is filled"};
  return {"Filler to mix", litres(whole.to_mix),
          litres(whole.filler) + " of it stays on the blade, " + litres(whole.sanding) + " is sanded off, " + litres(whole.loss) +
              " is lost in pots"};
}

std::string before_coats_note(const Plan& plan) {
  const auto& before = plan.work.before_coats;
  return before && before->deepest > fill::no_filler ? both_units(before->deepest, plan.job.units) + " before the coats go on"
                                                     : "";
}

Number thickness(const Plan& plan) {
  std::vector<std::string> forms;
  std::size_t far = 0;
  for (std::size_t k = 0; k < plan.measured.size(); ++k) {
    const std::string name = form::name_of(plan.fitted[k].form);
    far += nearest_form(plan, k) != name ? 1 : 0;
    if (std::find(forms.begin(), forms.end(), name) == forms.end()) forms.push_back(name);
  }
  const auto share = [&](std::size_t k, double thickness, double chord) {
    return 100 * thickness / (chord + plan.measured[k].skeg);  // a skeg and its rudder make one section
  };
  const std::string now =
      from_to(plan, 1, [&](std::size_t k) { return share(k, plan.measured[k].figures.max_thickness, plan.measured[k].chord); });
  const std::string then = from_to(
      plan, 1, [&](std::size_t k) { return share(k, target::greatest_thickness(plan.targets[k]), plan.targets[k].chord); });
  const bool skeg = std::any_of(plan.measured.begin(), plan.measured.end(), [](const auto& one) { return one.skeg > 0; });
  return {skeg ? "Thickness of the rudder, in per cent of skeg and rudder together" : "Thickness, in per cent of the chord",
          now + " % now, " + then + " % then",
          "nearest standard " + std::string(forms.size() == 1 ? "section " : "sections ") + listed(forms, 6) +
              (far == 0                      ? ""
               : far == plan.measured.size() ? ", and far from that"
                                             : ", at some stations far from that")};
}

Number balance_or_edge(const Plan& plan) {
  const auto edges = [&](const std::function<double(std::size_t)>& mm) { return lengths_from_to(plan, mm); };
  const std::string now = edges([&](std::size_t k) { return plan.measured[k].figures.trailing_edge_thickness; });
  const std::string then = edges([&](std::size_t k) { return plan.targets[k].trailing_edge_thickness; });
  const auto &before = plan.before.balance_percent, &after = plan.after.balance_percent;
  if (before && after && (*before > 0 || *after > 0)) {
    return {"Area ahead of the stock", fixed(*before, 1) + " % now, " + fixed(*after, 1) + " % then",
            "trailing edge " + now + " now, " + then + " then"};
  }
  return {"Trailing edge", now + " now, " + then + " then", ""};
}

}  // namespace

std::array<Number, 5> five_numbers(const Plan& plan) {
  return {to_mix(plan),
          {"Deepest to add", deepest_place(plan, false), ""},
          {"Deepest to take off", deepest_place(plan, true), before_coats_note(plan)},
          thickness(plan),
          balance_or_edge(plan)};
}

std::string five_lines(const Plan& plan) {
  std::string out = "\nThe five numbers that matter\n";
  for (const Number& one : five_numbers(plan)) {
    out += wrapped("  " + one.what + ": " + one.value + (one.note.empty() ? "" : "; " + one.note), 4);
  }
  return out;
}

}  // namespace fairblade::report
