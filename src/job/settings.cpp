#include "job/settings.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {

namespace {

bool is_pair(const Reader& reader, const Node& node, std::string_view key, std::string_view example) {
  const bool is = node.kind == NodeKind::list && node.items.size() == 2;
  if (!is) reader.refuse(node, key, "give two numbers, as in " + std::string(example));
  return is;
}

}  // namespace

std::optional<std::array<double, 2>> pair_of_numbers(const Reader& reader, const Node& node, std::string_view key, Range range,
                                                     std::string_view example) {
  if (!is_pair(reader, node, key, example)) return std::nullopt;
  std::array<std::optional<double>, 2> read;
  for (std::size_t i = 0; i < 2; ++i) read[i] = reader.number(node.items[i], key, range);
  if (!read[0] || !read[1]) return std::nullopt;
  return std::array<double, 2>{*read[0], *read[1]};
}

const Node* part(const Reader& reader, const Node* from, std::string_view key, std::span<const std::string_view> known,
                 bool& wrong) {
  const Node* node = from ? from->find(key) : nullptr;
  wrong = node && !reader.object(*node, in_quotes(key), known);
  return wrong ? nullptr : node;
}

namespace {

/// "09:30" as minutes after midnight; stays where it is not given.
void clock_setting(const Reader& reader, const Node* from, const std::string& prefix, std::string_view key, int& minutes) {
  const Node* node = from ? from->find(key) : nullptr;
  const std::string full = prefix + std::string(key);
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  if (!node) return reader.used_default(full, two(minutes / 60) + ":" + two(minutes % 60));
  const std::string& text = node->text;
  const auto digit = [&](std::size_t k) { return text[k] >= '0' && text[k] <= '9'; };
  if (node->kind == NodeKind::text && text.size() == 5 && digit(0) && digit(1) && text[2] == ':' && digit(3) && digit(4)) {
    const int hours = (text[0] - '0') * 10 + (text[1] - '0');
    const int rest = (text[3] - '0') * 10 + (text[4] - '0');
    if (hours < 24 && rest < 60) {
      minutes = 60 * hours + rest;
      return;
    }
  }
  reader.refuse(*node, full, "give the time of day in quotes, as in \"09:30\"");
}

void truth_setting(const Reader& reader, const Node* from, const std::string& prefix, std::string_view key, bool& value) {
  const Node* node = from ? from->find(key) : nullptr;
  const std::string full = prefix + std::string(key);
  if (!node) return reader.used_default(full, value ? "true" : "false");
  if (const auto read = reader.truth(*node, full)) value = *read;
}

void read_pot_life(const Reader& reader, const Node* node, Workshop& shop) {
  static constexpr std::array<std::string_view, 3> keys{"minutes", "at", "mass_g"};
  bool wrong = false;
  const Node* pot = part(reader, node, "pot_life", keys, wrong);
  if (wrong) return;
  const std::string prefix = "workshop.pot_life.";
  reader.setting(pot, prefix, "minutes", shop.pot_life_minutes, {1, 1000}, "minutes");
  reader.setting(pot, prefix, "at", shop.pot_life_at, {0, 50}, "degrees C");
  reader.setting(pot, prefix, "mass_g", shop.pot_life_mass_g, {1, 10000}, "g");
}

/// What a rule says of one 100 mm bar, in mm: a bare number is mm wherever it can be, else it may be in the job's unit.
std::optional<double> read_bar(const Reader& reader, const Node& bar) {
  constexpr Range sound{90, 110}, a_page_made_to_fit{50, 150};
  const auto within = [](double mm, Range range) { return mm >= range.low && mm <= range.high; };
  std::optional<double> mm;
  if (bar.kind == NodeKind::number) {
    mm = bar.number;
    const bool inches = reader.unit == LengthUnit::inch && within(bar.number, {3.54, 4.33});
    if (inches) return std::clamp(bar.number * mm_per_inch, sound.low, sound.high);
    if (reader.unit == LengthUnit::cm && !within(*mm, a_page_made_to_fit)) *mm *= millimetres_in(reader.unit);
  } else if (bar.kind == NodeKind::text) {
    const LengthOfText read = length_of_text(bar.text, reader.unit);
    if (read.kind == LengthOfText::Kind::length) mm = read.mm;
  }
  if (mm && within(*mm, sound)) return mm;
  if (mm && within(*mm, a_page_made_to_fit)) {
    reader.faults.add(reader.at(bar), "a 100 mm bar that comes out " + trimmed(*mm, 1) + " mm long is no printer's error",
                      "turn \"fit to page\" off in the print dialog, print again at actual size (100 %), and "
                      "measure both bars");
    return std::nullopt;
  }
  const std::string_view other = reader.unit == LengthUnit::inch ? ", or from 3.54 to 4.33 in"
                                 : reader.unit == LengthUnit::cm ? ", or from 9 to 11 cm"
                                                                 : "";
  reader.refuse(bar, "print.ruler_reads", "give what a rule says of the 100 mm bar, from 90 to 110 mm" + std::string(other));
  return std::nullopt;
}

void read_ruler(const Reader& reader, const Node* node, Print& print) {
  const Node* bars = node ? node->find("ruler_reads") : nullptr;
  if (!bars) return reader.used_default("print.ruler_reads", "100 mm across, 100 mm along");
  if (!is_pair(reader, *bars, "print.ruler_reads", "[100, 100]")) return;
  const auto across = read_bar(reader, bars->items[0]);
  if (!across) return;
  const auto along = read_bar(reader, bars->items[1]);
  if (!along) return;
  print.ruler_across = *across;
  print.ruler_along = *along;
}

void read_pages_of(const Reader& reader, const Node* print, Print& out) {
  static constexpr std::array<std::string_view, 4> kinds{"bare", "glassed", "final", "clearance"};
  const Node* wanted = print ? print->find("pages_of") : nullptr;
  if (!wanted) return reader.used_default("print.pages_of", "the stage that the filler is shaped at");
  if (!reader.list(*wanted, "print.pages_of", "[\"bare\", \"final\"]")) return;
  out.pages_of_place = reader.at(*wanted);
  for (const Node& item : wanted->items) {
    if (const auto word = reader.word(item, "print.pages_of", kinds)) {
      out.pages_of.push_back(static_cast<TemplatesOf>(*word));
    }
  }
}

}  // namespace

void read_workshop(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 15> known{"temperature",
                                                          "humidity_percent",
                                                          "pot_life",
                                                          "batch_limit_g",
                                                          "loss_percent",
                                                          "sanding_allowance",
                                                          "spread_kg_per_minute",
                                                          "paint_m2_per_minute",
                                                          "pinhole_litres_per_m2",
                                                          "coat_tip",
                                                          "coat_top",
                                                          "support_patches_m2",
                                                          "bare_percent",
                                                          "start",
                                                          "dusk"};
  bool wrong = false;
  const Node* node = part(reader, &root, "workshop", known, wrong);
  if (wrong) return;
  Workshop& shop = job.workshop;
  const std::string prefix = "workshop.";
  reader.setting(node, prefix, "temperature", shop.temperature, {-10, 50}, "degrees C");
  reader.setting(node, prefix, "humidity_percent", shop.humidity_percent, {1, 100}, "%");
  read_pot_life(reader, node, shop);
  reader.setting(node, prefix, "batch_limit_g", shop.batch_limit_g, {10, 20000}, "g");
  reader.setting(node, prefix, "loss_percent", shop.loss_percent, {0, 90}, "%");
  reader.length_setting(node, prefix, "sanding_allowance", shop.sanding_allowance, {0, 10});
  reader.setting(node, prefix, "spread_kg_per_minute", shop.spread_kg_per_minute, {0.001, 10}, "kg/min");
  reader.setting(node, prefix, "paint_m2_per_minute", shop.paint_m2_per_minute, {0.001, 10}, "m2/min");
  reader.setting(node, prefix, "pinhole_litres_per_m2", shop.pinhole_litres_per_m2, {0, 2}, "L/m2");
  truth_setting(reader, node, prefix, "coat_tip", shop.coat_tip);
  truth_setting(reader, node, prefix, "coat_top", shop.coat_top);
  reader.setting(node, prefix, "support_patches_m2", shop.support_patches_m2, {0, 10}, "m2");
  if (const Node* bare = node ? node->find("bare_percent") : nullptr) {
    shop.bare_percent = reader.number(*bare, "workshop.bare_percent", {0, 100}, "%");
  } else {
    reader.used_default("workshop.bare_percent",
                        job.coating_to_strip > 0 ? "100 % (it is stripped)" : "0 % (nothing is stripped)");
  }
  clock_setting(reader, node, prefix, "start", shop.start);
  clock_setting(reader, node, prefix, "dusk", shop.dusk);
  const Node* dusk = node ? node->find("dusk") : nullptr;
  const Node* start = node ? node->find("start") : nullptr;
  if (shop.dusk <= shop.start && (dusk || start)) {
    reader.faults.add(reader.at(dusk ? *dusk : *start), "the day's work would start after dusk",
                      "check \"workshop.start\" and \"workshop.dusk\"");
  }
}

void read_zones(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 2> known{"leading_edge", "trailing_edge"};
  bool wrong = false;
  const Node* node = part(reader, &root, "zones", known, wrong);
  if (wrong) return;
  reader.setting(node, "zones.", "leading_edge", job.zones.leading_edge, {0, 0.45}, "of the chord");
  reader.setting(node, "zones.", "trailing_edge", job.zones.trailing_edge, {0, 0.45}, "of the chord");
}

void read_water(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 3> known{"end_plate", "helm", "heard"};
  static constexpr std::array<std::string_view, 3> plates{"none", "half", "full"};
  bool wrong = false;
  const Node* node = part(reader, &root, "water", known, wrong);
  if (!node) return;
  if (const Node* plate = node->find("end_plate")) {
    if (const auto word = reader.word(*plate, "water.end_plate", plates)) job.water.end_plate = static_cast<EndPlate>(*word);
  }
  // The load is worked out for small angles, and the sections for 0 to 12 degrees.
  if (const Node* helm = node->find("helm")) job.water.helm = reader.number(*helm, "water.helm", {1, 12}, "degrees");
  if (const Node* heard = node->find("heard")) job.water.heard = reader.number(*heard, "water.heard", {5, 5000}, "Hz");
}

/// In a job in inches gauges stand at whole inches unless told otherwise.
void read_gauge_spacing(const Reader& reader, const Node* print, Job& job) {
  constexpr double inches = 4;
  if (job.units == LengthUnit::inch && !(print && print->find("gauge_spacing"))) {
    job.print.gauge_spacing = inches * mm_per_inch;
    return reader.used_default("print.gauge_spacing", shortest(inches) + " in");
  }
  reader.length_setting(print, "print.", "gauge_spacing", job.print.gauge_spacing, {10, 1000});
}

void read_print(const Reader& reader, const Node& root, Job& job) {
  static constexpr std::array<std::string_view, 9> known{"paper",     "margin", "overlap",       "ruler_reads", "clearance",
                                                         "positives", "split",  "gauge_spacing", "pages_of"};
  static constexpr std::array<std::string_view, 3> splits{"when-needed", "always", "never"};
  static constexpr std::array<std::string_view, 6> papers{"A4", "Letter", "A3", "both", "roll-610", "roll-914"};
  bool wrong = false;
  const Node* node = part(reader, &root, "print", known, wrong);
  if (wrong) return;
  if (const Node* paper = node ? node->find("paper") : nullptr) {
    if (const auto word = reader.word(*paper, "print.paper", papers)) job.print.paper = static_cast<Paper>(*word);
  } else {
    reader.used_default("print.paper", "both");
  }
  reader.length_setting(node, "print.", "margin", job.print.margin, {0, 25});
  reader.length_setting(node, "print.", "overlap", job.print.overlap, {5, 50});
  read_ruler(reader, node, job.print);
  reader.length_setting(node, "print.", "clearance", job.print.clearance, {0, 20});
  truth_setting(reader, node, "print.", "positives", job.print.positives);
  if (const Node* split = node ? node->find("split") : nullptr) {
    if (const auto word = reader.word(*split, "print.split", splits)) job.print.split = static_cast<Split>(*word);
  } else {
    reader.used_default("print.split", "when-needed");
  }
  read_gauge_spacing(reader, node, job);
  read_pages_of(reader, node, job.print);
}

}  // namespace fairblade::job
