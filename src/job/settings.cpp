#include "job/settings.hpp"

#include <array>

#include "base/text.hpp"

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

void read_coat(const Reader& outer, const Node& node, std::size_t index, Job& job) {
  static constexpr std::array<std::string_view, 6> known{"name", "thickness", "layers", "stage", "dry_film_um",
                                                         "volume_solids_percent"};
  if (!outer.object(node, "a coat", known)) return;
  Coat coat;
  Reader reader = outer;
  reader.of = " of coat " + std::to_string(index + 1);
  if (const Node* name = node.find("name")) {
    if (auto read = reader.text(*name, "name")) coat.name = *read;
  } else {
    reader.missing(node, "name", "give the coat a name, as in \"name\": \"barrier coat\"");
  }
  const std::string prefix = "coats[" + std::to_string(index) + "].";
  const Node *thickness = node.find("thickness"), *film = node.find("dry_film_um");
  if (thickness && film) {
    reader.faults.add(reader.at(*film), "both \"thickness\" and \"dry_film_um\"" + reader.of, "keep one of the two");
  } else if (!thickness && !film) {
    reader.faults.add(reader.at(node), "no \"thickness\" and no \"dry_film_um\"" + reader.of,
                      "give the thickness of one layer, or its dry film in micrometres");
  }
  if (thickness) coat.thickness = reader.length(*thickness, "thickness", {0.01, 20});
  if (film) coat.dry_film_um = reader.number(*film, "dry_film_um", {1, 5000}, "micrometres");
  if (const Node* layers = node.find("layers")) {
    if (const auto read = reader.whole(*layers, "layers", 1, 50)) coat.layers = *read;
  } else {
    reader.used_default(prefix + "layers", "1");
  }
  if (const Node* solids = node.find("volume_solids_percent")) {
    coat.volume_solids_percent = reader.number(*solids, "volume_solids_percent", {1, 100}, "%");
  }
  read_stage(reader, node, prefix, coat);
  job.coats.push_back(std::move(coat));
}

/// [a, b] of numbers, each in the range.
std::optional<std::array<double, 2>> pair_of_numbers(const Reader& reader, const Node& node, std::string_view key, Range range,
                                                     bool lengths, std::string_view example) {
  if (node.kind != NodeKind::list || node.items.size() != 2) {
    reader.refuse(node, key, "give two numbers, as in " + std::string(example));
    return std::nullopt;
  }
  std::array<std::optional<double>, 2> read;
  for (std::size_t i = 0; i < 2; ++i) {
    read[i] = lengths ? reader.length(node.items[i], key, range) : reader.number(node.items[i], key, range);
  }
  if (!read[0] || !read[1]) return std::nullopt;
  return std::array<double, 2>{*read[0], *read[1]};
}

/// The object under that key, or nothing where it is missing or wrong; `wrong` tells the two apart.
const Node* part(const Reader& reader, const Node* from, std::string_view key, std::span<const std::string_view> known,
                 bool& wrong) {
  const Node* node = from ? from->find(key) : nullptr;
  wrong = node && !reader.object(*node, in_quotes(key), known);
  return wrong ? nullptr : node;
}

void read_filler(const Reader& reader, const Node* fillers, std::string_view zone, Filler& filler) {
  static constexpr std::array<std::string_view, 5> known{"resin_density", "resin_to_hardener_by_weight", "powder_density",
                                                         "powder_per_100_epoxy", "layer_limit"};
  bool wrong = false;
  const Node* node = part(reader, fillers, zone, known, wrong);
  if (wrong) return;
  const std::string prefix = "fillers." + std::string(zone) + ".";
  reader.setting(node, prefix, "resin_density", filler.resin_density, {0.8, 2}, "kg/L");
  const std::string key = "resin_to_hardener_by_weight";
  if (const Node* ratio = node ? node->find(key) : nullptr) {
    if (const auto read = pair_of_numbers(reader, *ratio, prefix + key, {0.1, 10000}, false, "[100, 38]")) {
      filler.resin_by_weight = (*read)[0];
      filler.hardener_by_weight = (*read)[1];
    }
  } else {
    reader.used_default(prefix + key, shortest(filler.resin_by_weight) + " : " + shortest(filler.hardener_by_weight));
  }
  reader.setting(node, prefix, "powder_density", filler.powder_density, {0.02, 5}, "kg/L");
  reader.setting(node, prefix, "powder_per_100_epoxy", filler.powder_per_100_epoxy, {0, 300}, "by weight");
  reader.length_setting(node, prefix, "layer_limit", filler.layer_limit, {0.5, 100});
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

void read_workshop(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 6> known{"temperature", "humidity_percent", "pot_life", "batch_limit_g",
                                                         "loss_percent", "sanding_allowance"};
  static constexpr std::array<std::string_view, 3> pot_keys{"minutes", "at", "mass_g"};
  bool wrong = false;
  const Node* node = part(reader, &root, "workshop", known, wrong);
  if (wrong) return;
  Workshop& shop = job.workshop;
  const std::string prefix = "workshop.";
  reader.setting(node, prefix, "temperature", shop.temperature, {-10, 50}, "degrees C");
  reader.setting(node, prefix, "humidity_percent", shop.humidity_percent, {1, 100}, "%");
  const Node* pot = part(reader, node, "pot_life", pot_keys, wrong);
  if (!wrong) {
    const std::string in_pot = prefix + "pot_life.";
    reader.setting(pot, in_pot, "minutes", shop.pot_life_minutes, {1, 1000}, "minutes");
    reader.setting(pot, in_pot, "at", shop.pot_life_at, {0, 50}, "degrees C");
    reader.setting(pot, in_pot, "mass_g", shop.pot_life_mass_g, {1, 10000}, "g");
  }
  reader.setting(node, prefix, "batch_limit_g", shop.batch_limit_g, {10, 20000}, "g");
  reader.setting(node, prefix, "loss_percent", shop.loss_percent, {0, 90}, "%");
  reader.length_setting(node, prefix, "sanding_allowance", shop.sanding_allowance, {0, 10});
}

void read_print(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 4> known{"paper", "margin", "overlap", "ruler_reads"};
  static constexpr std::array<std::string_view, 6> papers{"A4", "Letter", "A3", "both", "roll-610", "roll-914"};
  bool wrong = false;
  const Node* node = part(reader, &root, "print", known, wrong);
  if (wrong) return;
  if (const Node* paper = node ? node->find("paper") : nullptr) {
    if (const auto word = reader.word(*paper, "print.paper", papers)) job.print.paper = static_cast<Paper>(*word);
  } else {
    reader.used_default("print.paper", "both");
  }
  reader.length_setting(node, "print.", "margin", job.print.margin, {0, 50});
  reader.length_setting(node, "print.", "overlap", job.print.overlap, {0, 50});
  if (const Node* bars = node ? node->find("ruler_reads") : nullptr) {
    const auto read = pair_of_numbers(reader, *bars, "print.ruler_reads", {80, 120}, true, "[100, 100]");
    if (read) {
      job.print.ruler_across = (*read)[0];
      job.print.ruler_along = (*read)[1];
    }
  } else {
    reader.used_default("print.ruler_reads", "100 mm across, 100 mm along");
  }
}

}  // namespace fairblade::job
