#include "job/tree.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {

const Node* Node::find(std::string_view key) const {
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (keys[i] == key) return &items[i];
  }
  return nullptr;
}

Node* Node::find(std::string_view key) { return const_cast<Node*>(std::as_const(*this).find(key)); }

void Node::remove(std::string_view key) {
  const auto found = std::find(keys.begin(), keys.end(), key);
  if (found == keys.end()) return;
  items.erase(items.begin() + (found - keys.begin()));
  keys.erase(found);
}

void Node::set(std::string_view key, Node value) {
  kind = NodeKind::object;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (keys[i] == key) {
      items[i] = std::move(value);
      return;
    }
  }
  keys.emplace_back(key);
  items.push_back(std::move(value));
}

void put_at(Node& root, std::string_view path, Node value) {
  const std::size_t dot = path.find('.');
  if (dot == std::string_view::npos) return root.set(path, std::move(value));
  const std::string_view head = path.substr(0, dot);
  Node* inner = root.find(head);
  if (!inner || inner->kind != NodeKind::object) {
    Node object;
    object.kind = NodeKind::object;
    object.line = value.line;
    root.set(head, std::move(object));
    inner = root.find(head);
  }
  put_at(*inner, path.substr(dot + 1), std::move(value));
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t longest = 60;
  std::size_t end = text.size();
  if (end > longest) {
    end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0) == 0x80) --end;
  }
  std::string out(1, '"');
  out.append(text.substr(0, end));
  if (end < text.size()) out.append("...");
  out.push_back('"');
  return out;
}

std::string described(const Node& node) {
  switch (node.kind) {
    case NodeKind::null: return "null";
    case NodeKind::boolean: return node.number != 0 ? "true" : "false";
    case NodeKind::number:
      return !node.text.empty() && node.text.size() <= 60 ? node.text
             : std::abs(node.number) < 1e9                ? trimmed(node.number, 9)
                                                          : shortest(node.number);
    case NodeKind::text: return (node.loose ? "" : "the text ") + in_quotes(node.text);
    case NodeKind::list: return node.items.empty() ? "an empty list" : "a list";
    case NodeKind::object: return "an object {...}";
  }
  return {};
}

Node node_of_text(std::string_view text, int line) {
  Node node;
  node.line = line;
  node.loose = true;
  text = without_blanks(text);
  node.text = text;
  if (const auto value = decimal(text)) {
    node.kind = NodeKind::number;
    node.number = *value;
  } else if (text == "true" || text == "false") {
    node.kind = NodeKind::boolean;
    node.number = text == "true" ? 1 : 0;
  } else {
    node.kind = NodeKind::text;
  }
  return node;
}

Node node_of_list_text(std::string_view text, int line) {
  if (text.find(',') == std::string_view::npos) return node_of_text(text, line);
  Node node;
  node.line = line;
  node.loose = node.by_commas = true;
  node.kind = NodeKind::list;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t comma = std::min(text.find(',', from), text.size());
    node.items.push_back(node_of_text(text.substr(from, comma - from), line));
    from = comma + 1;
  }
  return node;
}

}  // namespace fairblade::job
