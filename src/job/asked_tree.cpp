#include "job/asked_tree.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "base/text.hpp"
#include "job/numbers.hpp"
#include "job/target_keys.hpp"

namespace fairblade::job {
namespace {

Node number_node(double value, int line = 0) {
  Node out;
  out.kind = NodeKind::number;
  out.number = value;
  out.line = line;
  return out;
}

Node text_node(std::string text, int line = 0) {
  Node out;
  out.kind = NodeKind::text;
  out.text = std::move(text);
  out.line = line;
  return out;
}

Node list_node(std::vector<Node> items, int line = 0) {
  Node out;
  out.kind = NodeKind::list;
  out.items = std::move(items);
  out.line = line;
  return out;
}

Node object_node(int line) {
  Node out;
  out.kind = NodeKind::object;
  out.line = line;
  return out;
}

/// The shortest number of the unit that becomes exactly so many mm when it is read; nothing where there is none.
std::optional<double> exactly_in(double mm, LengthUnit unit) {
  const double scale = millimetres_in(unit);
  std::optional<double> best;
  double low = mm / scale, high = low;
  for (int step = 0; step < 3; ++step) {
    for (const double one : {low, high}) {
      if (one * scale == mm && (!best || shortest(one).size() < shortest(*best).size())) best = one;
    }
    low = std::nextafter(low, -INFINITY);
    high = std::nextafter(high, INFINITY);
  }
  return best;
}

/// What a row or an option writes without braces, as a job file has it.
Node with_braces(std::string_view key, Node value) {
  if (!value.loose) return value;
  const int line = value.line;
  if (key.starts_with("extend_") && value.kind == NodeKind::text && value.text.size() > 6) {
    const std::string_view start = std::string_view(value.text).substr(0, 5);
    if (!same_word(start, "up_to") && !same_word(start, "up-to")) return value;
    Node out = object_node(line);
    out.set("up_to", node_of_text(value.text.substr(6), line));
    return out;
  }
  if (key == "no_cut" && value.kind == NodeKind::list && value.items.size() == 4) {
    Node patch = object_node(line);
    patch.set("down", list_node({value.items[0], value.items[1]}, line));
    patch.set("x", list_node({value.items[2], value.items[3]}, line));
    return list_node({patch}, line);
  }
  return value;
}

/// The numbers in a text that is written for people, such as "0.2 to 0.75 of the chord".
std::vector<double> numbers_in(std::string_view text) {
  std::vector<double> out;
  while (!text.empty()) {
    double value = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
    if (end.ec == std::errc()) out.push_back(value);
    const std::size_t blank = text.find(' ');
    text = blank == std::string_view::npos ? std::string_view() : text.substr(blank + 1);
  }
  return out;
}

/// Defaults are listed for people: "1 mm", "100 : 38", "09:00", "none"; this is what a job file would say.
Node node_of_default(const DefaultUsed& one, LengthUnit unit) {
  if (one.key == "centre_station") return text_node(one.value, default_line);
  if (one.key == "print.pages_of") return list_node({}, default_line);  // no list: what the work asks for
  // What is told beside a value, in brackets or as where it is from, is not of it.
  const std::size_t value_ends = std::min(one.value.find(" ("), one.value.find(", from "));
  const std::string told =
      one.key.starts_with("target.") ? std::string(target_default(one.key.substr(7))) : one.value.substr(0, value_ends);
  if (told == "none" && (one.key == "coats" || one.key == "target.no_cut")) return list_node({}, default_line);
  const bool clock = told.size() == 5 && told[2] == ':';
  const std::vector<double> numbers = clock ? std::vector<double>() : numbers_in(told);
  if (numbers.empty()) {
    Node word = node_of_text(told, default_line);
    word.loose = false;
    return word;
  }
  const bool lengths = told.find(" mm") != std::string::npos;
  std::vector<Node> nodes;
  for (const double value : numbers) nodes.push_back(lengths ? node_of_length(value, unit) : number_node(value));
  Node out = nodes.size() == 1 ? nodes.front() : list_node(nodes);
  out.line = default_line;
  return out;
}

}  // namespace

Node node_of_length(double mm, LengthUnit unit) {
  constexpr std::size_t longest = 12;  // letters: 64ths of an inch below a hundred inches fit
  const auto number = exactly_in(mm, unit);
  if (number && shortest(*number).size() <= longest) return number_node(*number);
  return text_node(shortest(mm) + "mm");
}

Node node_of_readings(const Station& station, LengthUnit unit) {
  const auto value = [&](const std::optional<double>& mm) { return mm ? node_of_length(*mm, unit) : Node{}; };
  std::vector<Node> rows;
  for (const Reading& reading : station.readings) {
    std::vector<Node> row{node_of_length(reading.x, unit)};
    if (station.measured_by != MeasuredBy::thickness) {
      row.push_back(value(reading.port));
      row.push_back(value(reading.starboard));
    }
    if (station.measured_by == MeasuredBy::thickness || reading.caliper) row.push_back(value(reading.caliper));
    rows.push_back(list_node(std::move(row)));
  }
  Node out = object_node(0);
  out.set("measured_by", text_node(std::string(name_of(station.measured_by))));
  out.set("readings", list_node(std::move(rows)));
  return out;
}

void erase_key(Node& object, std::string_view key) {
  for (std::size_t i = 0; i < object.keys.size(); ++i) {
    if (object.keys[i] != key) continue;
    object.keys.erase(object.keys.begin() + static_cast<std::ptrdiff_t>(i));
    object.items.erase(object.items.begin() + static_cast<std::ptrdiff_t>(i));
    return;
  }
}

void tell_target(Node& root, std::string_view key, Node value) {
  put_at(root, "target." + std::string(key), with_braces(key, std::move(value)));
}

void add_defaults(Node& root, const std::vector<DefaultUsed>& defaults, LengthUnit unit) {
  constexpr std::string_view each = "stations.", coat = "coats[";
  const auto items_of = [&](std::string_view key) -> std::vector<Node>& { return root.find(key)->items; };
  for (const DefaultUsed& one : defaults) {
    Node value = node_of_default(one, unit);
    if (one.key.starts_with(each)) {
      const std::string key = one.key.substr(each.size());
      for (Node& station : items_of("stations")) {
        if (!station.find(key)) station.set(key, value);
      }
    } else if (one.key.starts_with(coat)) {
      std::size_t index = 0;
      std::from_chars(one.key.data() + coat.size(), one.key.data() + one.key.size(), index);
      put_at(items_of("coats")[index], one.key.substr(one.key.find("].") + 2), std::move(value));
    } else if (one.key != "job") {  // a job file has to name its job
      put_at(root, one.key, std::move(value));
    }
  }
}

}  // namespace fairblade::job
