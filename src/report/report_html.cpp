// report.html: the parts in their order, under one style.
#include "base/text.hpp"
#include "report/findings.hpp"
#include "report/five.hpp"
#include "report/html.hpp"
#include "report/html_parts.hpp"
#include "report/layout.hpp"
#include "report/page_style.hpp"

namespace fairblade::report {
namespace {

std::string five_part(const Plan& plan) {
  std::string out = "<dl class=\"five\">\n";
  for (const Number& one : five_numbers(plan)) {
    out += "<div><dt>" + html::text(one.what) + "</dt><dd><span class=\"value\">" + html::text(one.value) + "</span>";
    if (!one.note.empty()) out += "<br/><small>" + html::text(one.note) + "</small>";
    out += "</dd></div>\n";
  }
  return out + "</dl>\n";
}

std::string warnings_part(const Plan& plan) {
  const auto warnings = warnings_for_people(plan);
  if (warnings.empty()) return html::paragraph("Nothing in this job needs a decision before work begins.");
  std::string out = "<ul class=\"warnings\">\n";
  for (const Warning& one : warnings) {
    out += "<li><strong>" + html::text(one.where == "job" ? "The job" : one.where) + ":</strong> " + html::text(one.text) +
           ".</li>\n";
  }
  return out + "</ul>\n";
}

std::string slips_part(const Plan& plan, const check::Findings& findings) {
  std::string out;
  const auto tell = [&](const std::vector<std::string>& lines, const char* heading) {
    if (lines.empty()) return;
    out += html::paragraph(heading) + "<ul class=\"warnings\">\n";
    for (const std::string& line : lines) out += "<li>" + html::text(line) + "</li>\n";
    out += "</ul>\n";
  };
  tell(slip_lines(plan.job, findings),
       "Almost certainly wrong in the readings. All that follows hangs on it: do nothing before.");
  tell(likely_slip_lines(plan.job, findings), "Likely wrong in the readings: look again before you fill.");
  return out;
}

std::string map_part(const ReportPictures& pictures) {
  std::string out;
  for (std::size_t k = 0; k < pictures.maps.size(); ++k) {
    const std::string narrow = k < pictures.narrow_maps.size() ? pictures.narrow_maps[k].svg : std::string();
    out += html::whole_blade(pictures.maps[k].svg, narrow, "m" + std::to_string(k) + "-", pictures.maps[k].title);
  }
  return out;
}

struct Part {
  const char* id;
  const char* heading;
  std::string html;
  bool new_page = false;
};

std::vector<Part> parts_of(const Plan& plan, const ReportPictures& pictures, const check::Findings& findings) {
  return {{"again", "Measure these again first", slips_part(plan, findings)},
          {"numbers", "The five numbers that matter", five_part(plan)},
          {"warnings", "Decide these first", warnings_part(plan)},
          {"measured", "What was measured, and what is wrong with it", measured_part(plan, findings)},
          {"target", "The target, and why", target_part(plan)},
          {"map", "Where to fill and where to cut", map_part(pictures)},
          {"stations", "Station by station", stations_part(plan, pictures)},
          {"litres", "How much filler", litres_part(plan)},
          {"mix", "What to weigh", mix_part(plan)},
          {"passes", "How it goes on: passes", passes_part(plan)},
          {"batches", "How it is mixed: batches", batches_part(plan)},
          {"coats", "Coats, and the surface under them", coats_part(plan)},
          {"shopping", "Shopping list", shopping_part(plan)},
          {"order", "Order of work", order_part(plan), true},
          {"water", "Before and after in the water", water_part(plan, pictures)},
          {"cautions", "Cautions", cautions_part(), true},
          {"defaults", "What was taken for granted", defaults_part(plan)},
          {"sources", "Sources", sources_part()}};
}

}  // namespace

std::string report_html(const Plan& plan, const ReportPictures& pictures, const check::Findings& findings) {
  const std::string name = html::text(plan.job.name);
  std::string out =
      "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>" +
      name + ": refit plan</title>\n<style>" + page_style(plan.job.print.paper) + "</style>\n</head>\n<body>\n<header>\n<h1>" +
      name + "</h1>\n";
  out += html::paragraph("Plan for refitting the rudder's blade, made by fairblade " + std::string(FAIRBLADE_VERSION) +
                         " from the readings in " + plan.job.file + ". x runs aft from the leading edge as measured.");
  std::string contents, body;
  for (const Part& part : parts_of(plan, pictures, findings)) {
    if (part.html.empty()) continue;
    contents += "<li><a href=\"#" + std::string(part.id) + "\">" + html::text(part.heading) + "</a></li>\n";
    body += html::part(part.id, part.heading, part.html, part.new_page);
  }
  return out + "</header>\n<nav aria-label=\"Contents\">\n<ul>\n" + contents + "</ul>\n</nav>\n<main>\n" + body +
         "</main>\n</body>\n</html>\n";
}

}  // namespace fairblade::report
