#include "report/water_json.hpp"

#include "report/json_values.hpp"

namespace fairblade::report {
namespace {

Json band_json(const std::optional<flow::Band>& band) { return band ? Json{band->low, band->high} : Json(nullptr); }
Json why(const std::string& words) { return words.empty() ? Json(nullptr) : Json(words); }

Json blade_json(const flow::BladeWater& blade) {
  Json out = {{"known", blade.known}, {"why_not", why(blade.why_not)},  {"area", blade.area},
              {"span", blade.span},   {"mean_chord", blade.mean_chord}, {"balance_percent", maybe(blade.balance_percent)}};
  if (!blade.known) return out;
  out["geometric_aspect"] = blade.geometric_aspect;
  out["effective_aspect"] = blade.effective_aspect;
  out["sweep_degrees"] = blade.sweep_degrees;
  out["lift_slope"] = blade.lift_slope;
  out["centre_of_pressure"] = blade.centre_of_pressure;
  out["lever"] = maybe(blade.lever);
  out["class_lever_ahead"] = maybe(blade.class_lever_ahead);
  out["class_lever_astern"] = maybe(blade.class_lever_astern);
  out["force"] = blade.load.force;
  out["torque"] = maybe(blade.load.torque);
  return out;
}

// A list over helm for each quantity.
Json angles_json(const std::vector<flow::AtAngle>& angles) {
  Json out = {{"helm", Json::array()}};
  for (const flow::AtAngle& at : angles) {
    out["helm"].push_back(at.degrees);
    out["lift"].push_back(at.lift);
    out["normal"].push_back(at.normal);
    out["axial"].push_back(at.axial);
    out["moment"].push_back(at.moment);
    out["centre_of_pressure"].push_back(maybe(at.centre_of_pressure));
    out["lowest_pressure"].push_back(at.lowest_pressure);
    out["lowest_at"].push_back(at.lowest_at);
    out["suction"].push_back(at.suction);
    out["suction_at"].push_back(at.suction_at);
  }
  return out;
}

Json face_json(const std::vector<flow::CpPoint>& face) {
  Json x = Json::array(), cp = Json::array();
  for (const flow::CpPoint& p : face) {
    x.push_back(p.x);
    cp.push_back(p.cp);
  }
  return {{"x", x}, {"cp", cp}};
}

Json section_json(const flow::SectionWater& section, double helm) {
  Json out = {{"known", section.known}, {"why_not", why(section.why_not)}};
  if (!section.known) return out;
  const bool sides = section.sides_known;
  out["lift_slope"] = section.lift_slope;
  out["lift_at_zero_helm"] = sides ? Json(section.lift_at_zero_helm) : Json(nullptr);
  out["helm_to_cancel"] = sides ? Json(section.helm_to_cancel) : Json(nullptr);
  out["helm_effect"] = section.helm_effect;
  out["parted"] = section.parted;
  out["to_port"] = angles_json(section.to_port);
  out["to_starboard"] = angles_json(section.to_starboard);
  const flow::CpCurve curve = flow::cp_curve(*section.flow, helm);
  out["pressure"] = {{"helm", helm}, {"port", face_json(curve.port)}, {"starboard", face_json(curve.starboard)}};
  return out;
}

Json nose_json(const flow::NoseComparison& nose) {
  if (!nose.known) return {{"known", false}, {"why_not", why(nose.why_not)}};
  return {{"known", true},
          {"suction_before", nose.before},
          {"suction_after", nose.after},
          {"ratio", nose.ratio},
          {"same_suction_helm", maybe(nose.same_suction_helm)},
          {"sure_helm", maybe(nose.sure_helm)},
          {"reading_error_excess", nose.feigned.known ? Json(nose.feigned.excess) : Json(nullptr)},
          {"reading_error", nose.feigned.known ? Json(nose.feigned.suction_error) : Json(nullptr)}};
}

Json tone_json(const flow::Tone& tone) {
  return {{"thickness", tone.edge.thickness},
          {"solid_angle", tone.edge.solid_angle},
          {"hertz", band_json(tone.frequency)},
          {"humming_knots", band_json(tone.humming)}};
}

Json meaning_json(const flow::Meaning& meaning) {
  return {{"stall", meaning.stall},
          {"hum", meaning.hum},
          {"helm", meaning.helm},
          {"pull", why(meaning.pull)},
          {"verdict", meaning.verdict},
          {"stall_gain", meaning.stall_gain},
          {"stall_loss", meaning.stall_loss},
          {"hum_change", meaning.hum_change},
          {"helm_change", meaning.helm_change},
          {"pull_gain", meaning.pull_gain}};
}

std::string head_of(const flow::Water& water) {
  Json out = {
      {"knots", water.knots},
      {"helm", water.helm},
      {"end_plate", flow::name_of(water.end_plate)},
      {"heard_hz", maybe(water.heard)},
      {"meaning", meaning_json(water.meaning)},
      {"blade", {{"before", blade_json(water.blade_before)}, {"after", blade_json(water.blade_after)}}},
      {"pull", {{"before", maybe(water.cancel_before)}, {"after", maybe(water.cancel_after)}, {"error", water.cancel_error}}},
      {"edge_options", Json::array()},
      {"limits", water.limits}};
  for (const flow::EdgeOption& option : water.edge_options) {
    out["edge_options"].push_back({{"name", option.name}, {"words", option.words}, {"hertz", band_json(option.frequency)}});
  }
  return left_open(out) + " \"stations\": [";
}

std::string station_of(const flow::Water& water, std::size_t k) {
  const flow::StationWater& station = water.stations[k];
  const Json out = {{"name", station.station},
                    {"weight", station.weight},
                    {"nose", nose_json(station.nose)},
                    {"edge", {{"before", tone_json(station.tone_before)}, {"after", tone_json(station.tone_after)}}},
                    {"before", section_json(station.before, water.helm)},
                    {"after", section_json(station.after, water.helm)}};
  return (k > 0 ? ",\n" : "\n") + dumped(out);
}

}  // namespace

Pieces water_json(const flow::Water& water) {
  const std::size_t stations = water.stations.size();
  return {stations + 2, [&water, stations](std::size_t k) {
            return k == 0 ? head_of(water) : k <= stations ? station_of(water, k - 1) : stations > 0 ? "\n]}" : "]}";
          }};
}

}  // namespace fairblade::report
