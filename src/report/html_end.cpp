// What stands behind a plan: defaults, cautions, sources.
#include "base/cautions.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"

namespace fairblade::report {

std::string defaults_part(const Plan& plan) {
  if (plan.job.defaults.empty()) return html::paragraph("None: the job names everything.");
  std::string out = html::paragraph(
      "The job does not name these, so the usual was taken. They are generic estimates: what your data sheets and your own "
      "trials say is better. Each is a key of the job file.");
  out += "<dl class=\"plain\">\n";
  for (const DefaultUsed& one : plan.job.defaults) {
    std::string key;  // a long one breaks between its words
    for (const char letter : html::text(one.key)) key += letter == '_' ? "_<wbr/>" : std::string(1, letter);
    out += "<dt>" + key + "</dt><dd>" + html::text(one.value) + "</dd>\n";
  }
  return out + "</dl>\n";
}

std::string cautions_part() {
  std::vector<std::string> lines(cautions.begin(), cautions.end());
  lines.emplace_back(
      "Old coating that was measured over and comes off is filler that nobody planned: say so in the job "
      "(\"coating_to_strip\").");
  lines.emplace_back(
      "Leave 5 to 10 mm to skeg and hull after paint, swung from lock to lock, and 50 mm from the leading edge to the propeller "
      "where it can be had (common practice).");
  return html::paragraph(cautions_first) + html::list(lines);
}

std::string sources_part() {
  return html::list({
      "Standard sections: NACA Report 460 (1933), the 4-digit thickness form; NACA Report 492 (1934), its modified forms "
      "(equations repeated in NASA TM X-3284 and TM-4741).",
      "Measured outlines: the nearest form and a shape-preserving cubic through what is left (Fritsch and Carlson, 1980).",
      "Nearest form: Tukey's biweight, so that one slip of the pen does not choose the section.",
      "Litres: areas between the outlines, by Simpson's rule along the blade; \"19 times in 20\" is twice the usual stray of "
      "the litres either way, worked from the readings' error.",
      "Filler: volume of epoxy plus volume of the powder's particles. Pot life halves for each 10 °C (common practice; "
      "published factors run from 1.5 to 2.5), and falls with the cube root of the mass (an estimate, no source).",
      "Glass: volume of fibre plus volume of resin, by the cloth's weight. Paint: 10 times the solids in per cent, divided by "
      "the dry film in µm, is m² to the litre.",
      "Dew point: Magnus formula with the constants of WMO-No. 8. Three degrees above it: ISO 8502-4, and common practice.",
      "Longboard: plywood takes a strain of some 0.5 % (common practice). Flat block: √(1.6 × radius), the chord that rises 0.2 "
      "mm.",
      "Layer limits, loss, spreading rates, pinholes and cores: common practice, no source.",
  });
}

}  // namespace fairblade::report
