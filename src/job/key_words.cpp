#include "job/key_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace fairblade::job {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 55> words_of_keys{{
    {"units", "mm, cm or in: every length here without a unit of its own"},
    {"reading_error", "how far one reading usually strays, one standard deviation"},
    {"coating_to_strip", "old coating that was measured over and will come off"},
    {"bottom", "how far down the blade ends"},
    {"speed", "knots"},
    {"centre_station", "its trailing edge and the stock give the centre plane"},
    {"target.approach", "full-section or edges-only"},
    {"target.thickness", "least-fill, closest, a share such as 12% or a length such as 50mm"},
    {"target.max_thickness_at", "form, closest, or a fraction of the chord"},
    {"target.leading_edge_radius", "form, a length, or a share of the chord such as 1.8%"},
    {"target.trailing_edge_thickness", "form, or a length"},
    {"target.extend_leading_edge", "a length to build on, or { \"up_to\": ... }"},
    {"target.extend_trailing_edge", "a length to build on, or { \"up_to\": ... }"},
    {"target.keep", "edges-only: the part of the chord that stays"},
    {"target.leading_edge", "shape or leave"},
    {"target.no_cut", "patches: [ { \"down\": [300, 360], \"x\": [0, 120] } ]"},
    {"target.max_removal", "the deepest cut"},
    {"target.spanwise", "fair, straight or as-measured"},
    {"coats", "what goes over the filler, in order"},
    {"unmixed_resin_density", "kg/L"},
    {"hardener_density", "kg/L"},
    {"resin_density", "kg/L, mixed"},
    {"powder_density", "kg/L of the particles"},
    {"powder_per_100_epoxy", "by weight"},
    {"layer_limit", "the deepest pass"},
    {"overcoat_hours", "between passes without sanding"},
    {"workshop.temperature", "degrees C"},
    {"workshop.pot_life", "minutes, at degrees C, of so many grams"},
    {"workshop.batch_limit_g", "the largest pot"},
    {"workshop.loss_percent", "of what is mixed"},
    {"workshop.sanding_allowance", "over the faces that are filled"},
    {"workshop.spread_kg_per_minute", "filler, one pair of hands"},
    {"workshop.paint_m2_per_minute", "roller, one pair of hands"},
    {"workshop.pinhole_litres_per_m2", "to close the filler's pores"},
    {"workshop.coat_tip", "is the lower end coated?"},
    {"workshop.coat_top", "is the upper end coated?"},
    {"workshop.support_patches_m2", "under the blade's supports, coated after the rest"},
    {"workshop.bare_percent", "of the surface that is not filled"},
    {"workshop.start", "time of day"},
    {"workshop.dusk", "time of day: the last coat must be dry"},
    {"zones.leading_edge", "of the chord"},
    {"zones.trailing_edge", "of the chord"},
    {"cover", "filler over the glass"},
    {"water.end_plate", "none, half or full: how far the hull closes the upper end"},
    {"water.helm", "degrees"},
    {"water.heard", "Hz"},
    {"print.paper", "A4, Letter, A3, both, roll-610 or roll-914"},
    {"print.margin", "that the printer leaves"},
    {"print.overlap", "of sheets that are glued"},
    {"print.ruler_reads", "what the 100 mm bars measure, across and along"},
    {"print.clearance", "that a clearance template stands off; 0: none"},
    {"print.positives", "the sections themselves too, to cut round"},
    {"print.split", "templates in two: when-needed, always or never"},
    {"print.pages_of", "templates on pages; none named: of the stage that the filler is shaped at"},
    {"print.gauge_spacing", "between leading-edge gauges"},
}};

}  // namespace

std::string_view words_of(std::string_view path) {
  const auto is = [](std::string_view name) { return [name](const auto& row) { return row.first == name; }; };
  auto found = std::find_if(words_of_keys.begin(), words_of_keys.end(), is(path));
  if (found == words_of_keys.end() && path.starts_with("fillers.")) {
    found = std::find_if(words_of_keys.begin(), words_of_keys.end(), is(path.substr(path.rfind('.') + 1)));
  }
  return found == words_of_keys.end() ? std::string_view() : found->second;
}

std::string_view path_of(std::string_view key) {
  const auto found = std::find_if(words_of_keys.begin(), words_of_keys.end(), [&](const auto& row) {
    const std::size_t dot = row.first.find('.');
    return dot != std::string_view::npos && row.first.substr(dot + 1) == key && !row.first.starts_with("target.");
  });
  return found == words_of_keys.end() ? std::string_view() : found->first;
}

}  // namespace fairblade::job
