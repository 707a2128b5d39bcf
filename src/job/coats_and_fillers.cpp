#include <cmath>

#include "base/text.hpp"
#include "job/settings.hpp"

namespace fairblade::job {
namespace {

void read_stage(const Reader& reader, const Node& node, const std::string& prefix, Coat& coat) {
  static constexpr std::array<std::string_view, 2> stages{"glass", "paint"};
  if (const Node* stage = node.find("stage")) {
    if (const auto word = reader.word(*stage, "stage", stages)) coat.stage = stages[*word];
  } else {
    coat.stage = coat.thickness ? "glass" : "paint";  // a thickness a layer is how glass is told, a dry film paint
    reader.used_default(prefix + "stage", coat.stage);
  }
}

double layer_of(const Cloth& cloth) {
  return glass_layer(cloth.g_per_m2, cloth.fibre_weight_percent / 100, cloth.fibre_density, mixed_epoxy_density);
}

void read_build(const Reader& reader, const Node& node, Coat& coat) {
  const Node *thickness = node.find("thickness"), *film = node.find("dry_film_um");
  if (thickness && film) {
    reader.faults.add(reader.at(*film), "both \"thickness\" and \"dry_film_um\"" + reader.of, "keep one of the two");
  } else if (!thickness && !film && !node.find("cloth")) {
    reader.faults.add(reader.at(node), "no \"thickness\" and no \"dry_film_um\"" + reader.of,
                      "give the thickness of one layer, or its dry film in micrometres");
  }
  if (thickness) coat.thickness = reader.length(*thickness, "thickness", {0.01, 20});
  if (film) coat.dry_film_um = reader.number(*film, "dry_film_um", {1, 5000}, "micrometres");
  if (!thickness && !film && coat.cloth) coat.thickness = layer_of(*coat.cloth);
}

void optional_number(const Reader& reader, const Node& node, std::string_view key, std::optional<double>& value, Range range,
                     std::string_view unit) {
  if (const Node* given = node.find(key)) value = reader.number(*given, key, range, unit);
}

void read_working_time(const Reader& reader, const Node& node, const std::string& prefix, Coat& coat) {
  static constexpr std::array<std::string_view, 2> known{"minutes", "at"};
  bool wrong = false;
  const Node* given = part(reader, &node, "working_time", known, wrong);
  if (!given) return;
  const Node* minutes = given->find("minutes");
  if (!minutes) return reader.missing(*given, "working_time.minutes", "say how long a mix can be worked");
  WorkingTime out;
  const auto read = reader.number(*minutes, "working_time.minutes", {1, 10000}, "minutes");
  reader.setting(given, prefix + "working_time.", "at", out.at, {0, 50}, "degrees C");
  if (!read) return;
  out.minutes = *read;
  coat.working_time = out;
}

void read_product(const Reader& reader, const Node& node, const std::string& prefix, Coat& coat) {
  static constexpr std::array<std::string_view, 4> parts{"all", "filled", "bare", "old"};
  if (const Node* on = node.find("on")) {
    if (const auto word = reader.word(*on, "on", parts)) coat.on = static_cast<CoatedPart>(*word);
  } else {
    reader.used_default(prefix + "on", "all");
  }
  optional_number(reader, node, "volume_solids_percent", coat.volume_solids_percent, {1, 100}, "%");
  optional_number(reader, node, "spreading_rate", coat.spreading_rate, {0.1, 100}, "m2/L");
  optional_number(reader, node, "density", coat.density, {0.5, 5}, "kg/L");
  optional_number(reader, node, "thinner_percent", coat.thinner_percent, {0, 50}, "%");
  optional_number(reader, node, "life_years", coat.life_years, {0.1, 100}, "years");
  if (const Node* pack = node.find("pack")) coat.pack = read_pack(reader, *pack, "pack", "litres", "L");
  if (const Node* ratio = node.find("parts_by_weight")) {
    coat.parts_by_weight = pair_of_numbers(reader, *ratio, "parts_by_weight", {0.01, 10000}, "[4, 1]");
  }
  if (const Node* hours = node.find("recoat_hours")) coat.recoat = read_window(reader, *hours, "recoat_hours");
  if (const Node* day = node.find("one_day")) coat.one_day = reader.truth(*day, "one_day").value_or(false);
  read_working_time(reader, node, prefix, coat);
}

void read_coat(const Reader& outer, const Node& node, std::size_t index, Job& job) {
  static constexpr std::array<std::string_view, 17> known{
      "name",         "thickness",      "layers",    "stage",   "dry_film_um",     "volume_solids_percent", "on",
      "cloth",        "spreading_rate", "pack",      "density", "parts_by_weight", "thinner_percent",       "working_time",
      "recoat_hours", "one_day",        "life_years"};
  if (!outer.object(node, "a coat", known)) return;
  Coat coat;
  coat.line = node.line;
  Reader reader = outer;
  reader.of = " of coat " + std::to_string(index + 1);
  if (const Node* name = node.find("name")) {
    if (auto read = reader.text(*name, "name")) coat.name = *read;
  } else {
    reader.missing(node, "name", "give the coat a name, as in \"name\": \"barrier coat\"");
  }
  const std::string prefix = "coats[" + std::to_string(index) + "].";
  if (const Node* cloth = node.find("cloth")) coat.cloth = read_cloth(reader, *cloth, "cloth", prefix + "cloth");
  read_build(reader, node, coat);
  if (const Node* layers = node.find("layers")) {
    if (const auto read = reader.whole(*layers, "layers", 1, 50)) coat.layers = *read;
  } else {
    reader.used_default(prefix + "layers", "1");
  }
  read_stage(reader, node, prefix, coat);
  read_product(reader, node, prefix, coat);
  if (coat.one_day && !coat.recoat && !node.find("recoat_hours")) {
    reader.faults.add(reader.at(node), "\"one_day\" without \"recoat_hours\"" + reader.of,
                      "give how long to wait before the next layer, and how long at most, as in [0.5, 3]");
  }
  job.coats.push_back(std::move(coat));
}

void read_ratio(const Reader& reader, const Node* node, const std::string& prefix, Filler& filler) {
  const std::string weight = "resin_to_hardener_by_weight", volume = "resin_to_hardener_by_volume";
  const Node* by_weight = node ? node->find(weight) : nullptr;
  const Node* by_volume = node ? node->find(volume) : nullptr;
  if (by_weight && by_volume) {
    return reader.faults.add(reader.at(*by_volume), "both " + in_quotes(weight) + " and " + in_quotes(volume),
                             "keep one of the two");
  }
  if (!by_weight && !by_volume) {
    return reader.used_default(prefix + weight, shortest(filler.resin_by_weight) + " : " + shortest(filler.hardener_by_weight));
  }
  const auto read = pair_of_numbers(reader, by_weight ? *by_weight : *by_volume, prefix + (by_weight ? weight : volume),
                                    {0.1, 10000}, by_weight ? "[100, 38]" : "[2, 1]");
  if (!read) return;
  filler.ratio_by_volume = by_volume != nullptr;
  filler.resin_by_weight = (*read)[0] * (by_volume ? filler.unmixed_resin_density : 1);
  filler.hardener_by_weight = (*read)[1] * (by_volume ? filler.hardener_density : 1);
}

void read_filler(const Reader& reader, const Node* fillers, std::string_view zone, Filler& filler) {
  static constexpr std::array<std::string_view, 10> known{"resin_density",         "resin_to_hardener_by_weight",
                                                          "powder_density",        "powder_per_100_epoxy",
                                                          "layer_limit",           "resin_to_hardener_by_volume",
                                                          "unmixed_resin_density", "hardener_density",
                                                          "overcoat_hours",        "sand_after_hours"};
  bool wrong = false;
  const Node* node = part(reader, fillers, zone, known, wrong);
  if (wrong) return;
  const std::string prefix = "fillers." + std::string(zone) + ".";
  const auto given = [&](std::string_view key) { return node && node->find(key); };
  reader.setting(node, prefix, "unmixed_resin_density", filler.unmixed_resin_density, {0.8, 2}, "kg/L");
  reader.setting(node, prefix, "hardener_density", filler.hardener_density, {0.7, 2}, "kg/L");
  filler.parts_estimated = !given("unmixed_resin_density") || !given("hardener_density");
  read_ratio(reader, node, prefix, filler);
  if (!filler.parts_estimated && !given("resin_density")) {  // the two parts' own densities tell more than the default
    const double r = filler.resin_by_weight, h = filler.hardener_by_weight;
    const double mixed = (r + h) / (r / filler.unmixed_resin_density + h / filler.hardener_density);
    filler.resin_density = std::round(mixed * 1e6) / 1e6;  // it is listed as a default, for people to read
  }
  reader.setting(node, prefix, "resin_density", filler.resin_density, {0.8, 2}, "kg/L");
  reader.setting(node, prefix, "powder_density", filler.powder_density, {0.02, 5}, "kg/L");
  reader.setting(node, prefix, "powder_per_100_epoxy", filler.powder_per_100_epoxy, {0, 300}, "by weight");
  reader.length_setting(node, prefix, "layer_limit", filler.layer_limit, {0.5, 100});
  if (given("overcoat_hours")) filler.overcoat = read_window(reader, *node->find("overcoat_hours"), prefix + "overcoat_hours");
  if (given("sand_after_hours")) {
    filler.sand_after_hours = reader.number(*node->find("sand_after_hours"), prefix + "sand_after_hours", {0.1, 1000}, "hours");
  }
}

}  // namespace

void read_coats(const Reader& reader, const Node& root, Job& job) {
  const Node* node = root.find("coats");
  if (!node) return reader.used_default("coats", "none");
  if (!reader.list(*node, "coats", "[ { \"name\": \"barrier coat\", \"dry_film_um\": 60, \"layers\": 4 } ]")) return;
  for (std::size_t i = 0; i < node->items.size() && !reader.faults.full(); ++i) read_coat(reader, node->items[i], i, job);
}

void read_fillers(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 2> known{"edges", "faces"};
  bool wrong = false;
  const Node* node = part(reader, &root, "fillers", known, wrong);
  if (wrong) return;
  read_filler(reader, node, "edges", job.edges);
  read_filler(reader, node, "faces", job.faces);
}

}  // namespace fairblade::job
