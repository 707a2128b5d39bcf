#include "job/table_keys.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

constexpr std::array<std::string_view, 4> of_the_file_alone{"$schema", "units", "stations", "readings_file"};

bool holds_others(const Node& node) { return node.kind == NodeKind::list || node.kind == NodeKind::object; }

std::string text_of(const Node& node) {
  if (node.kind == NodeKind::boolean) return node.number != 0 ? "true" : "false";
  return node.kind == NodeKind::text || !node.text.empty() ? node.text : shortest(node.number);
}

class Rows {
 public:
  KeyRows run(const Node& root) {
    for (std::size_t i = 0; i < root.keys.size(); ++i) {
      const std::string& key = root.keys[i];
      if (std::find(of_the_file_alone.begin(), of_the_file_alone.end(), key) != of_the_file_alone.end()) continue;
      take(key, root.items[i]);
    }
    return std::move(out_);
  }

 private:
  void row(const std::string& path, std::vector<std::string> values) {
    constexpr std::string_view target = "target.";  // a CSV names these without it
    const bool any = std::any_of(values.begin(), values.end(), [](const std::string& one) { return !one.empty(); });
    if (any) out_.rows.emplace_back(path.starts_with(target) ? path.substr(target.size()) : path, std::move(values));
  }

  void take(const std::string& path, const Node& node) {
    if (node.kind == NodeKind::object) return take_object(path, node);
    if (node.kind == NodeKind::list) return take_list(path, node);
    if (node.kind != NodeKind::null) row(path, {text_of(node)});
  }

  /// Two of the target's values have braces in a job file and words in a CSV.
  void take_object(const std::string& path, const Node& node) {
    const Node *most = node.find("up_to"), *percent = node.find("percent_chord");
    if (most && path.starts_with("target.extend_")) return row(path, {"up_to " + text_of(*most)});
    if (percent && path == "target.leading_edge_radius") return row(path, {text_of(*percent) + "%"});
    for (std::size_t i = 0; i < node.keys.size(); ++i) take(path + "." + node.keys[i], node.items[i]);
  }

  void take_list(const std::string& path, const Node& node) {
    if (path == "target.no_cut" && node.items.empty()) return;
    std::vector<std::string> values;
    const auto add = [&](const Node* ends) {
      if (!ends || ends->kind != NodeKind::list) return;
      for (const Node& one : ends->items) values.push_back(text_of(one));
    };
    if (path == "target.no_cut" && node.items.size() == 1) {
      add(node.items[0].find("down"));
      add(node.items[0].find("x"));
    } else if (std::none_of(node.items.begin(), node.items.end(), holds_others)) {
      add(&node);
    }
    if (values.size() > 1) row(path, std::move(values));  // a single one would not be read as a list
    else out_.not_in_it.push_back(path);
  }

  KeyRows out_;
};

}  // namespace

KeyRows key_rows_of(const Node& root) { return Rows().run(root); }

bool same_value(std::span<const std::string> one, std::span<const std::string> other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(), [](const std::string& a, const std::string& b) {
    const auto first = decimal(a), second = decimal(b);
    return first && second ? *first == *second : without_blanks(a) == without_blanks(b);
  });
}

}  // namespace fairblade::job
