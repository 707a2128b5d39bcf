#include "target/form_offsets.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "target/fairness.hpp"

namespace fairblade::target {
namespace {

/// The places of the printed tables (NACA Report 460), with more of them at the nose; per cent of the chord.
constexpr std::array<double, 22> places{0,  0.25, 0.5, 1.25, 2.5, 5,  7.5, 10, 15, 20, 25,
                                        30, 35,   40,  50,   60,  70, 80,  85, 90, 95, 100};

/// Without the "station ...: " that a blade's message begins with.
std::string without_station(const std::string& text, const std::string& station) {
  const std::string begin = "station " + station + ": ";
  return text.starts_with(begin) ? text.substr(begin.size()) : text;
}

std::string name_of(const FormAsked& asked) {
  std::string out = form::name_of(asked.form);
  const double whole = std::round(100 * asked.form.thickness_ratio);
  if (std::abs(100 * asked.form.thickness_ratio - whole) > 1e-9) out = trimmed(100 * asked.form.thickness_ratio, 4) + "% form";
  if (asked.radius) out += ", leading-edge radius " + in_unit(*asked.radius, asked.units);
  if (asked.edge) out += ", trailing edge " + in_unit(*asked.edge, asked.units);
  return out;
}

std::vector<FormOffset> rows_of(const FormAsked& asked, const TargetSection& section) {
  std::vector<double> x;
  for (const double percent : places) x.push_back(percent / 100 * asked.chord);
  x.insert(x.end(), asked.more_places.begin(), asked.more_places.end());
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end(), [](double a, double b) { return b - a < 1e-6; }), x.end());
  std::vector<FormOffset> out;
  for (const double place : x) out.push_back({place, asked.chord * section.curve.at(place / asked.chord)});
  return out;
}

}  // namespace

Outcome<FormOffsets> offsets_of(const FormAsked& asked) {
  FormOffsets out;
  out.asked = asked;
  const double chord = asked.chord;
  const auto in_chords = [&](const std::optional<double>& mm) { return mm ? std::optional(*mm / chord) : std::nullopt; };
  out.section.station = form::name_of(asked.form);
  out.section.chord = chord;
  out.section.curve = form::SectionCurve(asked.form, in_chords(asked.radius), in_chords(asked.edge));
  // Judged as a station's target is; the places are the options'.
  job::Job job;
  job.units = asked.units;
  job::Station station;
  station.name = out.section.station;
  station.place = {"FORM", 0};
  station.target.places = {{"leading_edge_radius", {"--leading-edge-radius", 0}},
                           {"trailing_edge_thickness", {"--trailing-edge-thickness", 0}}};
  auto fault = judge_curve(job, station, out.section.curve, chord, out.warnings);
  if (fault) {
    fault->what = without_station(fault->what, station.name);
    return *fault;
  }
  for (Warning& one : out.warnings) one.where = out.section.station;
  fill_in_figures(out.section);
  const form::SectionCurve own(asked.form);
  out.own_radius = own.radius() * chord;
  out.own_edge = own.edge() * chord;
  out.max_thickness = 2 * chord * out.section.curve.at(out.section.curve.max_thickness_at());
  out.name = name_of(asked);
  out.rows = rows_of(asked, out.section);
  return out;
}

}  // namespace fairblade::target
