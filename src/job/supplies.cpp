// Packs, windows and cloth: the small parts that coats and fillers are told in.
#include "base/text.hpp"
#include "job/settings.hpp"

namespace fairblade::job {

std::optional<Window> read_window(const Reader& reader, const Node& node, std::string_view key) {
  const auto read = pair_of_numbers(reader, node, key, {0, 10000}, "[6, 24]");
  if (!read) return std::nullopt;
  if ((*read)[1] > (*read)[0]) return Window{(*read)[0], (*read)[1]};
  reader.faults.add(reader.at(node), reader.named(key) + " ends before it begins", "put the smaller value first");
  return std::nullopt;
}

std::optional<Pack> read_pack(const Reader& reader, const Node& node, const std::string& key, std::string_view size_key,
                              std::string_view unit) {
  const std::array<std::string_view, 2> known{size_key, "price"};
  if (!reader.object(node, in_quotes(key) + reader.of, known)) return std::nullopt;
  const Node* size = node.find(size_key);
  const std::string full = key + "." + std::string(size_key);
  if (!size) {
    reader.missing(node, full, "say how much is in a pack, as in { \"" + std::string(size_key) + "\": 0.75 }");
    return std::nullopt;
  }
  const auto amount = reader.number(*size, full, {0.001, 1000}, unit);
  Pack out{amount.value_or(1), std::nullopt};
  if (const Node* price = node.find("price")) out.price = reader.number(*price, key + ".price", {0, 1e6});
  if (!amount) return std::nullopt;
  return out;
}

std::optional<Cloth> read_cloth(const Reader& reader, const Node& node, const std::string& key, const std::string& listed) {
  static constexpr std::array<std::string_view, 5> known{"g_per_m2", "width", "fibre_weight_percent", "fibre_density",
                                                         "price_per_m"};
  if (!reader.object(node, in_quotes(key) + reader.of, known)) return std::nullopt;
  Cloth out;
  const std::string prefix = key + ".";
  std::optional<double> weight;
  if (const Node* given = node.find("g_per_m2")) weight = reader.number(*given, prefix + "g_per_m2", {10, 3000}, "g/m2");
  else reader.missing(node, prefix + "g_per_m2", "give the cloth's weight, as in { \"g_per_m2\": 300 }");
  Reader judge = reader;  // a fault names the key within its coat, a default the coat too
  judge.defaults = nullptr;
  judge.length_setting(&node, prefix, "width", out.width, {10, 5000});
  judge.setting(&node, prefix, "fibre_weight_percent", out.fibre_weight_percent, {10, 90}, "%");
  judge.setting(&node, prefix, "fibre_density", out.fibre_density, {0.5, 5}, "kg/L");
  const auto list_if_default = [&](const std::string& one, const std::string& value) {
    if (!node.find(one)) reader.used_default(listed + "." + one, value);
  };
  list_if_default("width", shortest(out.width) + " mm");
  list_if_default("fibre_weight_percent", shortest(out.fibre_weight_percent) + " %");
  list_if_default("fibre_density", shortest(out.fibre_density) + " kg/L");
  if (const Node* price = node.find("price_per_m")) out.price_per_m = reader.number(*price, prefix + "price_per_m", {0, 1e6});
  if (!weight) return std::nullopt;
  out.g_per_m2 = *weight;
  return out;
}

void read_nose_glass(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 2> known{"cloth", "cover"};
  bool wrong = false;
  const Node* node = part(reader, &root, "nose_glass", known, wrong);
  if (!node) return;
  NoseGlass out;
  const Node* cloth = node->find("cloth");
  if (!cloth) return reader.missing(*node, "nose_glass.cloth", "describe the cloth, as in { \"g_per_m2\": 300 }");
  reader.length_setting(node, "nose_glass.", "cover", out.cover, {0, 50});
  if (const auto read = read_cloth(reader, *cloth, "nose_glass.cloth", "nose_glass.cloth")) {
    out.cloth = *read;
    job.nose_glass = out;
  }
}

void read_packs(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 5> known{"resin", "hardener", "edges_powder", "faces_powder", "currency"};
  bool wrong = false;
  const Node* node = part(reader, &root, "packs", known, wrong);
  if (!node) return;
  const std::array<std::optional<Pack>*, 4> packs{&job.packs.resin, &job.packs.hardener, &job.packs.edges_powder,
                                                  &job.packs.faces_powder};
  for (std::size_t k = 0; k < packs.size(); ++k) {
    if (const Node* pack = node->find(known[k])) {
      *packs[k] = read_pack(reader, *pack, "packs." + std::string(known[k]), "kg", "kg");
    }
  }
  if (const Node* currency = node->find("currency")) {
    if (auto read = reader.text(*currency, "packs.currency")) job.packs.currency = *read;
  }
}

void read_compared_coatings(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 3> known{"name", "price", "life_years"};
  const std::string example = "[ { \"name\": \"one\", \"price\": 40, \"life_years\": 2 }, { ... } ]";
  const Node* node = root.find("compare_coatings");
  if (!node || !reader.list(*node, "compare_coatings", example)) return;
  if (node->items.size() != 2) {
    return reader.faults.add(reader.at(*node), "\"compare_coatings\" has " + std::to_string(node->items.size()) + " coatings",
                             "give two, as in " + example);
  }
  std::vector<ComparedCoating> out;
  for (const Node& item : node->items) {
    if (!reader.object(item, "a compared coating", known)) return;
    ComparedCoating one;
    bool whole = true;
    for (const std::string_view key : known) {
      if (item.find(key)) continue;
      reader.missing(item, "compare_coatings." + std::string(key), "give each of the two a name, a price and a life_years");
      whole = false;
    }
    if (!whole) return;
    if (const auto name = reader.text(*item.find("name"), "compare_coatings.name")) one.name = *name;
    one.price = reader.number(*item.find("price"), "compare_coatings.price", {0.01, 1e6}).value_or(1);
    one.life_years = reader.number(*item.find("life_years"), "compare_coatings.life_years", {0.1, 100}, "years").value_or(1);
    out.push_back(std::move(one));
  }
  job.compare_coatings = std::move(out);
}

}  // namespace fairblade::job
