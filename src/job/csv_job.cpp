#include "job/csv_job.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "base/text.hpp"
#include "job/csv_cells.hpp"
#include "job/numbers.hpp"
#include "job/target_keys.hpp"

namespace fairblade::job {
namespace {

/// Keys that a CSV sets for all its stations.
constexpr std::array<std::string_view, 3> for_all_stations{"measured_by", "x_from", "board"};
/// What the worksheet's table leaves open for the owner to write.
constexpr std::array<std::string_view, 1> may_be_empty{"coating_to_strip"};

/// A value as it stands in a job file: its quotes go.
Node value_of(std::string_view text, int line) {
  text = without_blanks(text);
  const bool quoted = text.size() > 1 && text.front() == '"' && text.back() == '"';
  return node_of_text(quoted ? text.substr(1, text.size() - 2) : text, line);
}

bool in_brackets(const KeyRow& row) { return row.values.front().starts_with('[') && row.values.back().ends_with(']'); }

/// Of one cell.
std::string_view inside(const KeyRow& row) {
  return std::string_view(row.values.front()).substr(1, row.values.front().size() - 2);
}

/// What is wrong with a list in brackets before its parts are looked at. Where commas do not part the cells, "[50,45]" may be one
/// number as well as two.
std::optional<CellTrouble> list_trouble(const KeyRow& row, char delimiter) {
  if (row.values.empty() || !in_brackets(row)) return std::nullopt;
  if (row.gap) return CellTrouble{" has an empty place in its list", "write what is missing, or take a comma out"};
  const std::string& text = row.values.front();
  if (delimiter == ',' || row.values.size() > 1 || text.find('.') != std::string::npos) return std::nullopt;
  std::size_t decimal_commas = 0;
  for (std::size_t k = 1; k + 1 < text.size(); ++k)
    decimal_commas += text[k] == ',' && is_digit(text[k - 1]) && is_digit(text[k + 1]);
  if (decimal_commas == 0) return std::nullopt;
  std::string remedy = "put each number into a cell of its own, without brackets";
  if (const auto one = decimal(inside(row))) remedy += ", or write " + shortest(*one) + " if it is one";
  return CellTrouble{" is " + in_quotes(text) + ", one number or several", std::move(remedy)};
}

/// One value, several in their cells, or a list in brackets as a job file has it, in one cell or several.
Node value_of(const KeyRow& row, char delimiter) {
  const bool brackets = in_brackets(row);
  const bool commas_part = delimiter == ',' || row.values.size() == 1;  // else they are decimal ones
  if (row.values.size() == 1 && !brackets) return node_of_text(row.values.front(), row.line);
  Node list;
  list.kind = NodeKind::list;
  list.line = row.line;
  list.loose = true;
  list.by_commas = delimiter == ',';
  for (std::size_t k = 0; k < row.values.size(); ++k) {
    std::string_view rest = row.values[k];
    if (!brackets) {
      list.items.push_back(node_of_text(rest, row.line));
      continue;
    }
    if (k == 0) rest.remove_prefix(1);
    if (k + 1 == row.values.size()) rest.remove_suffix(std::min<std::size_t>(rest.size(), 1));
    for (bool more = true; more;) {
      const std::size_t comma = commas_part ? rest.find(',') : std::string_view::npos;
      more = comma != std::string_view::npos;
      list.items.push_back(value_of(rest.substr(0, comma), row.line));
      if (more) rest.remove_prefix(comma + 1);
    }
  }
  return list;
}

bool among(std::string_view name, std::span<const std::string_view> names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

Node tree_of_csv(const CsvContent& content, Faults& faults) {
  Node root;
  root.kind = NodeKind::object;
  root.line = content.header.line;
  const char delimiter = content.header.delimiter;
  std::vector<const KeyRow*> seen;
  std::vector<std::pair<std::string_view, Node>> of_all_stations;
  for (const KeyRow& row : content.header.keys) {
    const auto twice = std::find_if(seen.begin(), seen.end(), [&](const KeyRow* r) { return r->key == row.key; });
    if (twice != seen.end()) {
      faults.add({content.file, row.line}, stands_twice(**twice), "keep one of the two");
      continue;
    }
    seen.push_back(&row);
    if (row.values.empty() && among(row.key, may_be_empty)) continue;  // not filled in: the default, which is listed
    if (row.values.empty()) {
      faults.add({content.file, row.line}, in_quotes(row.key) + " has no value", "write key,value or take the row out");
    } else if (const auto trouble = list_trouble(row, delimiter)) {
      faults.add({content.file, row.line}, in_quotes(row.key) + trouble->what, trouble->remedy);
      // Something stands there, so that nothing is missed at the stations.
      if (among(row.key, for_all_stations)) of_all_stations.emplace_back(row.key, node_of_text(inside(row), row.line));
    } else if (among(row.key, for_all_stations)) {
      of_all_stations.emplace_back(row.key, value_of(row, delimiter));
    } else if (std::count(row.key.begin(), row.key.end(), '.') > 4) {
      faults.add({content.file, row.line}, in_quotes(row.key) + " is not a key of the job", "check its points");
    } else {
      put_at(root, among(row.key, target_keys()) ? "target." + row.key : row.key, value_of(row, delimiter));
    }
  }
  Node stations;
  stations.kind = NodeKind::list;
  stations.line = content.header.line;
  for (const CsvStation& from : content.stations) {
    Node station = from.node;
    for (const auto& [key, value] : of_all_stations) {
      if (!station.find(key)) station.set(key, value);
    }
    stations.items.push_back(std::move(station));
  }
  root.set("stations", std::move(stations));
  return root;
}

}  // namespace fairblade::job
