#include "job/target_keys.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

using Read = void (*)(const Reader&, std::string_view, const Node&, TargetRequest&);

/// A share of the chord: 0.12 or "12%".
std::optional<double> share(const Node& node) {
  if (node.kind == NodeKind::number) return node.number;
  if (node.kind == NodeKind::text) {
    if (const auto percent = percent_of_text(node.text)) return *percent / 100;
  }
  return std::nullopt;
}

bool is_word(const Node& node, std::string_view word) { return node.kind == NodeKind::text && same_word(node.text, word); }

void read_approach(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  static constexpr std::array<std::string_view, 2> words{"full-section", "edges-only"};
  if (const auto word = reader.word(node, key, words)) target.approach = static_cast<Approach>(*word);
}

/// What a bare thickness was probably meant to be: a share up to 30 %, else mm; in inches, a few inches.
std::string thickness_guess(double value, LengthUnit unit) {
  if (!(value > 0) || value > 1000) return "write a share such as \"12%\" or a length such as \"50mm\"";
  const std::string text = trimmed(value, 3);
  if (value < 1) return "write a share from 0.03 to 0.4, as in \"12%\"";
  if (unit == LengthUnit::inch && value < 4) return "write \"" + text + "in\" if inches are meant, \"" + text + "%\" if a share";
  if (value <= 30) return "write \"" + text + "%\" if that share of the chord is meant, \"" + text + "mm\" if a length";
  return "write \"" + text + "mm\" if " + text + " mm thick is meant";
}

void read_thickness(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  using Kind = Thickness::Kind;
  if (is_word(node, "least-fill")) target.thickness = {Kind::least_fill, 0};
  else if (is_word(node, "closest")) target.thickness = {Kind::closest, 0};
  else if (const auto ratio = share(node)) {
    if (*ratio >= 0.03 && *ratio <= 0.4) target.thickness = {Kind::ratio, *ratio};
    else if (node.kind == NodeKind::number) reader.refuse(node, key, thickness_guess(node.number, reader.unit));
    else reader.refuse(node, key, "give a share from 3% to 40%");
  } else if (node.kind == NodeKind::text) {
    const LengthOfText length = length_of_text(node.text, reader.unit);
    if (length.kind == LengthOfText::Kind::no_unit) {
      reader.refuse(node, key, thickness_guess(*decimal(node.text), reader.unit));
    } else if (length.kind != LengthOfText::Kind::length) {
      static constexpr std::array<std::string_view, 2> words{"least-fill", "closest"};
      const std::string near = nearest_name(node.text, words);
      reader.refuse(node, key,
                    near.empty() ? "use \"least-fill\", \"closest\", a share such as \"12%\" or a length such as \"50mm\""
                                 : "did you mean " + in_quotes(near) + "?");
    } else if (const auto mm = reader.length(node, key, {1, 1000})) {
      target.thickness = {Kind::mm, *mm};
    }
  } else {
    reader.refuse(node, key, "use \"least-fill\", \"closest\", a share such as \"12%\" or a length such as \"50mm\"");
  }
}

void read_max_thickness_at(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  using Kind = MaxThicknessAt::Kind;
  if (is_word(node, "form")) target.max_thickness_at = {Kind::form, 0};
  else if (is_word(node, "closest")) target.max_thickness_at = {Kind::closest, 0};
  else if (const auto at = share(node); at && *at >= 0.2 && *at <= 0.6) target.max_thickness_at = {Kind::fraction, *at};
  else reader.refuse(node, key, "use \"form\", \"closest\" or a fraction of the chord from 0.2 to 0.6");
}

void read_radius(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  using Kind = LeadingEdgeRadius::Kind;
  constexpr Range percent{0.05, 20}, mm{0.1, 500};
  if (is_word(node, "form")) {
    target.leading_edge_radius = {Kind::form, 0};
  } else if (node.kind == NodeKind::object) {
    static constexpr std::array<std::string_view, 1> known{"percent_chord"};
    if (!reader.object(node, "\"leading_edge_radius\"", known)) return;
    const Node* value = node.find("percent_chord");
    if (!value && node.keys.empty()) reader.refuse(node, key, "write { \"percent_chord\": 1.8 }");
    if (!value) return;
    if (const auto read = reader.number(*value, "percent_chord", percent, "% of the chord")) {
      target.leading_edge_radius = {Kind::percent_chord, *read};
    }
  } else if (node.kind == NodeKind::text && percent_of_text(node.text)) {
    const double read = *percent_of_text(node.text);
    if (read >= percent.low && read <= percent.high) target.leading_edge_radius = {Kind::percent_chord, read};
    else reader.refuse(node, key, "give 0.05% to 20% of the chord");
  } else if (node.kind == NodeKind::text && length_of_text(node.text, reader.unit).kind == LengthOfText::Kind::not_a_length) {
    reader.refuse(node, key, "use \"form\", a length, or { \"percent_chord\": 1.8 }");
  } else if (const auto length = reader.length(node, key, mm)) {
    target.leading_edge_radius = {Kind::mm, *length};
  }
}

void read_trailing_edge(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  using Kind = TrailingEdgeThickness::Kind;
  if (is_word(node, "form")) target.trailing_edge_thickness = {Kind::form, 0};
  else if (const auto mm = reader.length(node, key, {0, 200})) target.trailing_edge_thickness = {Kind::mm, *mm};
}

void read_extension(const Reader& reader, std::string_view key, const Node& node, Extension& out) {
  constexpr Range range{0, 1000};
  if (node.kind == NodeKind::object) {
    static constexpr std::array<std::string_view, 1> known{"up_to"};
    if (!reader.object(node, in_quotes(key), known)) return;
    const Node* value = node.find("up_to");
    if (!value && node.keys.empty()) reader.refuse(node, key, "write { \"up_to\": 15 }");
    if (!value) return;
    if (const auto mm = reader.length(*value, "up_to", range)) out = {true, *mm};
    return;
  }
  // On a command line or in a CSV there are no braces: "up_to 15", "up-to 15".
  if (node.loose && node.kind == NodeKind::text && node.text.size() > 6 &&
      (same_word(node.text.substr(0, 5), "up_to") || same_word(node.text.substr(0, 5), "up-to"))) {
    if (const auto mm = reader.length(node_of_text(node.text.substr(6), node.line), key, range)) out = {true, *mm};
    return;
  }
  if (node.kind == NodeKind::text && !has_letter_for_digit(node.text) &&
      length_of_text(node.text, reader.unit).kind == LengthOfText::Kind::not_a_length) {
    return reader.refuse(node, key,
                         node.loose ? "give a length, or \"up_to 15\" for the most that may be chosen"
                                    : "give a length, or { \"up_to\": 15 } for the most that may be chosen");
  }
  if (const auto mm = reader.length(node, key, range)) out = {false, *mm};
}

void read_extend_leading(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  read_extension(reader, key, node, target.extend_leading_edge);
}
void read_extend_trailing(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  read_extension(reader, key, node, target.extend_trailing_edge);
}

std::optional<ChordPlace> chord_place(const Reader& reader, std::string_view key, const Node& node) {
  if (const auto fraction = share(node)) {
    if (*fraction >= 0 && *fraction <= 1) return ChordPlace{false, *fraction};
    reader.refuse(node, key, "give a fraction of the chord from 0 to 1, or a length such as \"60mm\"");
  } else if (const auto mm = reader.length(node, key, {0, 5000})) {
    return ChordPlace{true, *mm};
  }
  return std::nullopt;
}

void read_keep(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  if (node.kind != NodeKind::list || node.items.size() != 2) {
    return reader.refuse(node, key, "give where the kept part begins and ends, as in [0.20, 0.75]");
  }
  const auto from = chord_place(reader, key, node.items[0]), to = chord_place(reader, key, node.items[1]);
  if (!from || !to) return;
  if (from->in_mm == to->in_mm && from->value >= to->value) {
    return reader.faults.add(reader.at(node), reader.named(key) + " ends before it begins", "put the smaller value first");
  }
  target.keep_from = *from;
  target.keep_to = *to;
}

void read_leading_edge(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  static constexpr std::array<std::string_view, 2> words{"shape", "leave"};
  if (const auto word = reader.word(node, key, words)) target.leading_edge = static_cast<LeadingEdgeWork>(*word);
}

bool read_span(const Reader& reader, std::string_view key, const Node* from, const Node* to, Range range, double& low,
               double& high) {
  const auto a = reader.length(*from, key, range), b = reader.length(*to, key, range);
  if (!a || !b) return false;
  if (*a >= *b) {
    reader.faults.add(reader.at(*from), reader.named(key) + " ends before it begins", "put the smaller value first");
    return false;
  }
  low = *a;
  high = *b;
  return true;
}

void read_no_cut(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  constexpr Range down{-20000, 20000}, x{-1000, 6000};
  if (node.loose) {  // no braces on a command line or in a CSV: down from, down to, x from, x to
    if (node.kind != NodeKind::list || node.items.size() != 4)
      return reader.refuse(node, key, "give four lengths: down from, down to, x from, x to");
    NoCut patch;
    const auto* i = node.items.data();
    const bool ok = read_span(reader, key, i, i + 1, down, patch.down_from, patch.down_to);
    if (read_span(reader, key, i + 2, i + 3, x, patch.x_from, patch.x_to) && ok) target.no_cut = {patch};
    return;
  }
  constexpr std::string_view example = "[ { \"down\": [300, 360], \"x\": [0, 120] } ]";
  if (!reader.list(node, key, example)) return;
  target.no_cut.clear();
  for (const Node& item : node.items) {
    static constexpr std::array<std::string_view, 2> known{"down", "x"};
    if (!reader.object(item, "\"no_cut\"", known)) continue;
    const Node *d = item.find("down"), *c = item.find("x");
    const auto pair = [](const Node* n) { return n && n->kind == NodeKind::list && n->items.size() == 2; };
    if (!pair(d) || !pair(c)) {
      reader.refuse(item, key, "give both ends of \"down\" and \"x\", as in " + std::string(example));
      continue;
    }
    NoCut patch;
    const bool ok = read_span(reader, "no_cut.down", &d->items[0], &d->items[1], down, patch.down_from, patch.down_to);
    if (read_span(reader, "no_cut.x", &c->items[0], &c->items[1], x, patch.x_from, patch.x_to) && ok)
      target.no_cut.push_back(patch);
  }
}

void read_max_removal(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  if (const auto mm = reader.length(node, key, {0, 100})) target.max_removal = *mm;
}

void read_spanwise(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  static constexpr std::array<std::string_view, 3> words{"fair", "straight", "as-measured"};
  if (const auto word = reader.word(node, key, words)) target.spanwise = static_cast<Spanwise>(*word);
}

struct TargetKey {
  std::string_view name;
  std::string_view default_text;
  Read read;
};
// The defaults' values stand in TargetRequest; this is how they are told.
constexpr std::array<TargetKey, 12> table{{
    {"approach", "full-section", read_approach},
    {"thickness", "least-fill", read_thickness},
    {"max_thickness_at", "form", read_max_thickness_at},
    {"leading_edge_radius", "form", read_radius},
    {"trailing_edge_thickness", "form", read_trailing_edge},
    {"extend_leading_edge", "0 mm", read_extend_leading},
    {"extend_trailing_edge", "0 mm", read_extend_trailing},
    {"keep", "0.2 to 0.75 of the chord", read_keep},
    {"leading_edge", "shape", read_leading_edge},
    {"no_cut", "none", read_no_cut},
    {"max_removal", "1 mm", read_max_removal},
    {"spanwise", "fair", read_spanwise},
}};

}  // namespace

std::span<const std::string_view> target_keys() {
  static constexpr auto names = [] {
    std::array<std::string_view, table.size()> out{};
    for (std::size_t i = 0; i < table.size(); ++i) out[i] = table[i].name;
    return out;
  }();
  return names;
}

Node node_of_option(std::string_view key, std::string_view text, int line) {
  const bool list = key == "keep" || key == "no_cut";
  return list ? node_of_list_text(text, line) : node_of_text(text, line);
}

std::string_view target_default(std::string_view key) {
  const auto row = std::find_if(table.begin(), table.end(), [&](const TargetKey& k) { return k.name == key; });
  return row == table.end() ? "" : row->default_text;
}

void read_target_key(const Reader& reader, std::string_view key, const Node& node, TargetRequest& target) {
  const auto row = std::find_if(table.begin(), table.end(), [&](const TargetKey& k) { return k.name == key; });
  if (row == table.end()) return;
  row->read(reader, key, node, target);
  target.places[std::string(key)] = reader.at(node);
}

void read_target_keys(const Reader& reader, const Node& object, TargetRequest& target) {
  for (const TargetKey& key : table) {
    if (const Node* node = object.find(key.name)) read_target_key(reader, key.name, *node, target);
  }
}

void check_against_chord(const Station& station, LengthUnit unit, Faults& faults, std::vector<std::string>& told) {
  const TargetRequest& target = station.target;
  const auto place = [&](const char* key) {
    const auto found = target.places.find(key);
    return found == target.places.end() ? station.place : found->second;
  };
  const auto refuse = [&](const char* key, const std::string& what, const std::string& remedy) {
    const std::string once = place(key).file + ":" + std::to_string(place(key).line) + key;
    if (std::find(told.begin(), told.end(), once) != told.end()) return;
    told.push_back(once);
    faults.add(place(key), in_quotes(key) + " " + what + " of station " + station.name, remedy);
  };
  constexpr double in_binary = 1e-9;  // of a bound: an inch's figures are no binary ones
  const auto too_long = [&](const char* key, double mm, double share, const char* share_text) {
    if (mm <= share * station.chord * (1 + in_binary)) return;
    refuse(key, "of " + in_unit(mm, unit) + " is more than " + share_text + " of the " + in_unit(station.chord, unit) + " chord",
           "give at most " + in_unit(last_figure_down(share * station.chord, unit), unit));
  };
  if (target.thickness.kind == Thickness::Kind::mm) too_long("thickness", target.thickness.value, 0.4, "40%");
  if (target.thickness.kind == Thickness::Kind::mm && target.thickness.value < 0.03 * station.chord * (1 - in_binary)) {
    refuse("thickness",
           "of " + in_unit(target.thickness.value, unit) + " is less than 3% of the " + in_unit(station.chord, unit) + " chord",
           "give " + in_unit(last_figure_up(0.03 * station.chord, unit), unit) + " at least");
  }
  if (target.leading_edge_radius.kind == LeadingEdgeRadius::Kind::mm) {
    too_long("leading_edge_radius", target.leading_edge_radius.value, 0.2, "20%");
  }
  if (target.trailing_edge_thickness.kind == TrailingEdgeThickness::Kind::mm) {
    too_long("trailing_edge_thickness", target.trailing_edge_thickness.value, 0.3, "30%");
  }
  const auto mm = [&](const ChordPlace& p) { return p.in_mm ? p.value : p.value * station.chord; };
  if (mm(target.keep_to) > station.chord * (1 + 1e-9)) {
    refuse("keep", "ends beyond the " + in_unit(station.chord, unit) + " chord", "end it at or ahead of the trailing edge");
  } else if (mm(target.keep_from) >= mm(target.keep_to)) {
    refuse("keep", "ends before it begins on the " + in_unit(station.chord, unit) + " chord", "put the smaller place first");
  }
}

}  // namespace fairblade::job
