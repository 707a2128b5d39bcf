// read_asked, ask_too and job_file_text: the tree written out, what nobody told as comments.
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "base/text.hpp"
#include "job/asked.hpp"
#include "job/asked_tree.hpp"
#include "job/job_reader.hpp"
#include "job/key_words.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

constexpr std::size_t widest = 100;  // letters; beyond it a value is broken over lines

struct Line {
  std::string text, comment;
};
using Lines = std::vector<Line>;

std::string quoted(const std::string& text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// In a CSV a name may look like a number.
bool wants_text(std::string_view key) {
  static constexpr std::array<std::string_view, 4> names{"job", "name", "centre_station", "currency"};
  return std::find(names.begin(), names.end(), key) != names.end();
}

std::string number_text(const Node& node) {
  return nlohmann::json::accept(node.text) && decimal(node.text) == node.number ? std::string(without_blanks(node.text))
                                                                                : shortest(node.number);
}

std::string on_one_line(const Node& node, std::string_view key) {
  switch (node.kind) {
    case NodeKind::null: return "null";
    case NodeKind::boolean:
    case NodeKind::number:
      if (node.loose && wants_text(key)) return quoted(node.text);
      if (node.kind == NodeKind::number) return number_text(node);
      return node.number != 0 ? "true" : "false";
    case NodeKind::text: return quoted(node.text);
    case NodeKind::list:
    case NodeKind::object: break;
  }
  const bool object = node.kind == NodeKind::object;
  std::string out = object ? "{" : "[";
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (i > 0) out += ',';
    if (object || i > 0) out += ' ';
    if (object) out += quoted(node.keys[i]) + ": ";
    out += on_one_line(node.items[i], object ? std::string_view(node.keys[i]) : "");
  }
  return out + (object ? " }" : "]");
}

bool holds_default(const Node& node) {
  return node.line == default_line || std::any_of(node.items.begin(), node.items.end(), holds_default);
}

/// Objects whose keys are worth a line and a word each.
bool open(std::string_view path) {
  static constexpr std::array<std::string_view, 7> paths{"target",   "fillers", "fillers.edges", "fillers.faces",
                                                         "workshop", "print",   "water"};
  return std::find(paths.begin(), paths.end(), path) != paths.end();
}

Lines lines_of(const Node& node, const std::string& path, bool commented);

Lines entry(const std::string& key, const Node& node, const std::string& path, bool commented) {
  Lines out = lines_of(node, path, commented);
  out.front().text = quoted(key) + ": " + out.front().text;
  std::string& comment = out.front().comment;
  comment = words_of(path);
  if (node.line == option_line) comment += std::string(comment.empty() ? "" : "; ") + "from the command line";
  return out;
}

void indent(Lines& lines, std::string_view by) {
  for (Line& line : lines) line.text.insert(0, by);
}

void append(Lines& out, Lines more, bool comma) {
  if (comma) more.back().text += ',';
  out.insert(out.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// A default is a comment; those that need no words share a line. It ends in a comma, since what was told follows.
void append_defaults(const Node& object, const std::string& path, Lines& out) {
  std::string wordless;
  for (std::size_t i = 0; i < object.items.size(); ++i) {
    const Node& node = object.items[i];
    if (node.line != default_line) continue;
    const std::string full = path.empty() ? object.keys[i] : path + "." + object.keys[i];
    Lines lines = entry(object.keys[i], node, full, true);
    if (lines.size() == 1 && lines.front().comment.empty() && !path.empty()) {
      wordless += (wordless.empty() ? "" : ", ") + lines.front().text;
      continue;
    }
    lines.front().comment = lines.front().comment.empty() ? "default" : "default; " + lines.front().comment;
    lines.back().text += ',';
    indent(lines, "// ");
    out.insert(out.end(), lines.begin(), lines.end());
  }
  if (!wordless.empty()) out.push_back({"// " + wordless + ",", "defaults"});
}

Lines lines_of_object(const Node& node, const std::string& path, bool commented) {
  Lines out{{"{", ""}}, inner;
  if (!commented) append_defaults(node, path, inner);
  std::vector<std::size_t> told;
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (commented || node.items[i].line != default_line) told.push_back(i);
  }
  for (const std::size_t i : told) {
    const std::string full = path.empty() ? node.keys[i] : path + "." + node.keys[i];
    append(inner, entry(node.keys[i], node.items[i], full, commented), i != told.back());
  }
  indent(inner, "  ");
  append(out, std::move(inner), false);
  out.push_back({"}", ""});
  return out;
}

Lines lines_of(const Node& node, const std::string& path, bool commented) {
  const std::string key = path.substr(path.rfind('.') + 1);
  const bool object = node.kind == NodeKind::object, list = node.kind == NodeKind::list;
  if (object && !node.items.empty() && (open(path) || (!commented && holds_default(node)))) {
    return lines_of_object(node, path, commented);
  }
  std::string plain = on_one_line(node, key);
  const bool readings = key == "readings";  // a line each, so that a refusal can name it
  if (!(object || list) || node.items.empty() ||
      (plain.size() <= widest && !readings && !(list && !commented && holds_default(node)))) {
    return {{std::move(plain), ""}};
  }
  if (object) return lines_of_object(node, path, commented);
  Lines out{{"[", ""}};
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    Lines item = lines_of(node.items[i], path + "[]", commented);
    indent(item, "  ");
    append(out, std::move(item), i + 1 < node.items.size());
  }
  out.push_back({"]", ""});
  return out;
}

/// Keys in the order of the job file, the stations last: something that was told has to follow every default.
Node in_order(Node root) {
  static constexpr std::array<std::string_view, 18> order{
      "$schema",          "job",      "units",          "reading_error", "coating_to_strip",
      "bottom",           "speed",    "centre_station", "target",        "coats",
      "fillers",          "workshop", "zones",          "nose_glass",    "packs",
      "compare_coatings", "water",    "print"};
  Node out;
  out.kind = NodeKind::object;
  for (const std::string_view key : order) {
    if (const Node* found = root.find(key)) out.set(key, *found);
  }
  out.set("stations", *root.find("stations"));
  return out;
}

}  // namespace

Outcome<Asked> read_asked(const std::string& path, const std::vector<Override>& overrides, bool to_be_written) {
  if (!to_be_written) {
    auto job = read_job(path, overrides);
    if (!job) return job.faults();
    return Asked{std::move(*job), nullptr};
  }
  JobReader reader(path, overrides, JobReader::For::plan_and_file);
  auto job = reader.run();
  if (!job) return job.faults();
  return Asked{std::move(*job), std::make_shared<Node>(std::move(reader).asked())};
}

void ask_too(Asked& asked, std::string_view path, std::string_view value) {
  if (asked.tree) put_at(*asked.tree, path, node_of_text(value, option_line));
}

std::string job_file_text(const Node& tree, const Job& job, const std::vector<std::string>& remarks) {
  Node root = tree;
  add_defaults(root, job.defaults, job.units);
  root = in_order(std::move(root));
  std::string out;
  for (std::string remark : remarks) {
    std::replace_if(
        remark.begin(), remark.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }, '?');
    out += "// " + remark + "\n";
  }
  out +=
      "// A line that begins with // is not read. Those marked \"default\" say what fairblade takes where nothing is written:\n"
      "// to choose otherwise, take its // away (of a block: every one) and change the value. Lengths are in " +
      (job.units == LengthUnit::inch ? "inches" : std::string(name_of(job.units))) + ".\n{\n";
  Lines in_turn;
  for (std::size_t i = 0; i < root.items.size(); ++i) {
    Node one;
    one.kind = NodeKind::object;
    one.keys.push_back(root.keys[i]);
    one.items.push_back(root.items[i]);
    if (root.items[i].line == default_line) append_defaults(one, "", in_turn);
    else append(in_turn, entry(root.keys[i], root.items[i], root.keys[i], false), root.keys[i] != "stations");
  }
  indent(in_turn, "  ");
  for (const Line& line : in_turn) out += line.text + (line.comment.empty() ? "" : "  // " + line.comment) + "\n";
  return out + "}\n";
}

}  // namespace fairblade::job
