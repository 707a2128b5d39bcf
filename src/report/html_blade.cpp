// What was measured and what is wrong with it; the target and why.
#include <algorithm>

#include "base/text.hpp"
#include "report/along.hpp"
#include "report/findings.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/why.hpp"
#include "report/words.hpp"

namespace fairblade::report {
namespace {

constexpr std::size_t most_stations = 24;  // a page a station is a book at a hundred

std::string percent(double fraction) { return fixed(100 * fraction, 1) + " %"; }

std::string how_measured(const Plan& plan) {
  std::size_t readings = 0;
  for (const auto& measured : plan.measured) readings += measured.points.size();
  std::string out = counted(plan.measured.size(), "station") + ", " + counted(readings, "place") +
                    " read on the surface. One reading usually strays by " + both_units(plan.job.reading_error, plan.job.units) +
                    " (\"reading_error\" in the job): no number below is better than its readings.";
  if (plan.job.coating_to_strip > 0) {
    out += " " + both_units(plan.job.coating_to_strip, plan.job.units) +
           " of old coating was measured over and has been taken off every reading.";
  }
  return out;
}

std::vector<std::string> sentences(std::vector<std::string> words) {
  for (std::string& one : words) one = sentence(std::move(one));
  return words;
}

/// A nose that no circle within the blade touches is flat or nearly so, and its circle says nothing.
html::Cell radius_cell(double radius, double thickest, double skeg, LengthUnit unit) {
  if (skeg > 0) return html::words("skeg ahead");
  if (radius > thickest / 2) return html::words("flat");
  return html::length(radius, unit);
}

std::string measured_table(const Plan& plan) {
  const LengthUnit unit = plan.job.units;
  html::Table table("The blade as it is",
                    {"Station", "Below the top (mm)", "Chord (mm)", "Greatest thickness (mm)", "that far aft (of the chord)",
                     "Nose radius (mm)", "Trailing edge (mm)", "Sides differ by (mm)", "Nearest standard section"});
  for (const std::size_t k : stations_shown(plan)) {
    const auto& one = plan.measured[k];
    table.row({html::words(one.station), html::length(one.down, unit), html::length(one.chord, unit),
               html::length(one.figures.max_thickness, unit), html::number(percent(one.figures.max_thickness_at)),
               radius_cell(one.figures.leading_edge_radius, one.figures.max_thickness, one.skeg, unit),
               html::length(one.figures.trailing_edge_thickness, unit),
               one.thickness_only || one.one_side_only ? html::words("not read") : html::length(one.figures.lopsided, unit),
               html::words(nearest_form(plan, k))});
  }
  return table.html();
}

}  // namespace

std::vector<std::size_t> stations_shown(const Plan& plan) {
  std::vector<std::size_t> out;
  const std::size_t all = plan.measured.size();
  const auto deepest = [&](bool removal) {
    const auto depth = [&](const fill::StationChange& one) { return removal ? one.removal.depth : one.add.depth; };
    const auto found = std::max_element(plan.changes.begin(), plan.changes.end(),
                                        [&](const auto& a, const auto& b) { return depth(a) < depth(b); });
    return static_cast<std::size_t>(found - plan.changes.begin());
  };
  for (std::size_t k = 0; k < std::min(all, most_stations - 2); ++k) {
    out.push_back(all <= most_stations ? k : k * (all - 1) / (most_stations - 3));
  }
  if (all > most_stations) {
    out.push_back(deepest(true));
    out.push_back(deepest(false));
  } else {
    for (std::size_t k = out.size(); k < all; ++k) out.push_back(k);
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

std::string measured_part(const Plan& plan, const check::Findings& findings) {
  std::string out = html::paragraph(how_measured(plan));
  const auto shown = stations_shown(plan);
  if (shown.size() < plan.measured.size()) {
    out += html::paragraph(counted(shown.size(), "station") + " of " + std::to_string(plan.measured.size()) +
                           " are shown here, the deepest changes among them; all are in plan.json and offsets.csv.");
  }
  out += measured_table(plan);
  out += html::paragraph(
      "The standard sections are named by their thickness: a 0012 is 12 % of its chord thick. \"Far\" behind the name means "
      "that the blade is none of them, and the nearest is named for want of a better.",
      "aside");
  const auto found = findings_sentences(plan.job, findings);
  if (!found.empty()) out += html::subheading("What the readings say of each other") + html::list(found);
  std::vector<std::string> near;
  for (const std::size_t k : shown) near.push_back("station " + plan.measured[k].station + ": " + nearness(plan, k));
  out += html::subheading("How near it is to a standard section") + html::list(sentences(near));
  const auto wrong = of_the_blade(plan);
  if (wrong.empty()) return out;
  return out + html::subheading("Twist, and one side against the other") + html::list(sentences(wrong));
}

std::string target_part(const Plan& plan) {
  const LengthUnit unit = plan.job.units;
  std::string out = html::list(sentences(why_this_target(plan)));
  const bool skeg = std::any_of(plan.targets.begin(), plan.targets.end(), [](const auto& one) { return one.skeg > 0; });
  const std::string of = skeg ? " (of skeg and rudder)" : " (of the chord)";
  html::Table table("What each station becomes", {"Station", "Chord (mm)", "Thickness" + of, "Greatest thickness (mm)",
                                                  "that far aft" + of, "Nose radius (mm)", "Trailing edge (mm)"});
  for (const std::size_t k : stations_shown(plan)) {
    const auto& one = plan.targets[k];
    const double thickest = target::greatest_thickness(one);
    table.row({html::words(one.station), html::length(one.chord, unit), html::number(percent(one.thickness_ratio)),
               html::length(thickest, unit), html::number(percent(one.max_thickness_at)),
               radius_cell(one.leading_edge_radius, thickest, one.skeg, unit), html::length(one.trailing_edge_thickness, unit)});
  }
  out += table.html();
  return out + html::list(sentences(of_the_target(plan)));
}

}  // namespace fairblade::report
