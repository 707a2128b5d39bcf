// Private to the job room. Product: what a file said, before it is judged: a small tree whose nodes know their lines.
// Verbs: read_tree (JSON), node_of_text (a CSV cell or an option), described.
#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "job/faults.hpp"

namespace fairblade::job {

class TextInPieces;

enum class NodeKind { null, boolean, number, text, list, object };

struct Node {
  NodeKind kind = NodeKind::null;
  int line = 0;
  bool loose = false;      ///< from a CSV cell or the command line, where numbers and texts look alike
  bool by_commas = false;  ///< a loose list whose parts stood between commas, any of which may have been a decimal one
  double number = 0;       ///< of a boolean: 0 or 1
  std::string text;        ///< the text, or the number as it was written where that is known
  std::vector<Node> items;
  std::vector<std::string> keys;  ///< of an object, one beside each item

  const Node* find(std::string_view key) const;
  Node* find(std::string_view key);
  /// Sets a key of an object, replacing what stood there.
  void set(std::string_view key, Node value);
  void remove(std::string_view key);
};

/// "workshop.pot_life.at": the value goes to that place; objects that are missing are made, and take its line.
void put_at(Node& root, std::string_view path, Node value);
/// "420", "the text "long"", "a list": a node as a fault names it.
std::string described(const Node& node);
/// The text in double quotes, cut short where it is long, never inside a character.
std::string in_quotes(std::string_view text);
/// A list too long for the tree: its items are handed over one by one, and not kept; its own node stays, without them. One may
/// stand within an item of another.
struct LongList {
  std::string_view key;
  std::size_t depth = 0;  ///< of brackets around it: 1 for a key of the root
  std::function<void(const Node& item)> take;
  /// For items that are all but always written in one way: how many bytes of `rest`, from its beginning, are commas and items so
  /// written, which it has then taken itself; 0 where the next is written otherwise, or not whole. None: there is no such way.
  std::function<std::size_t(std::string_view rest)> take_plain = {};
};

/// The JSON text, // comments allowed. False when nothing can be made of it; a duplicate key is a fault but not the end.
bool read_tree(std::string_view text, const std::string& file, Faults& faults, Node& root);
/// The same of a text that is not held, with more values than a job may have.
bool read_tree(TextInPieces& text, const std::string& file, Faults& faults, Node& root, std::size_t most_values,
               const std::vector<LongList>& long_lists);
/// "8" is a number, "true" a boolean, anything else a text.
Node node_of_text(std::string_view text, int line);
/// The same, and "0.2, 0.75" is a list.
Node node_of_list_text(std::string_view text, int line);

}  // namespace fairblade::job
