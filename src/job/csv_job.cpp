#include "job/csv_job.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <vector>

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

/// One value, several in their cells, or a list in brackets as a job file has it, in one cell or several.
Node value_of(const KeyRow& row) {
  const bool brackets = row.values.front().starts_with('[') && row.values.back().ends_with(']');
  if (row.values.size() == 1 && !brackets) return node_of_text(row.values.front(), row.line);
  Node list;
  list.kind = NodeKind::list;
  list.line = row.line;
  list.loose = true;
  for (std::size_t k = 0; k < row.values.size(); ++k) {
    std::string_view rest = row.values[k];
    if (!brackets) {
      list.items.push_back(node_of_text(rest, row.line));
      continue;
    }
    if (k == 0) rest.remove_prefix(1);
    if (k + 1 == row.values.size()) rest.remove_suffix(std::min<std::size_t>(rest.size(), 1));
    for (bool more = true; more;) {
      const std::size_t comma = rest.find(',');
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
  std::vector<const KeyRow*> station_rows, seen;
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
    } else if (among(row.key, for_all_stations)) {
      station_rows.push_back(&row);
    } else if (std::count(row.key.begin(), row.key.end(), '.') > 4) {
      faults.add({content.file, row.line}, in_quotes(row.key) + " is not a key of the job", "check its points");
    } else {
      put_at(root, among(row.key, target_keys()) ? "target." + row.key : row.key, value_of(row));
    }
  }
  Node stations;
  stations.kind = NodeKind::list;
  stations.line = content.header.line;
  for (const CsvStation& from : content.stations) {
    Node station = from.node;
    for (const KeyRow* row : station_rows) {
      if (!station.find(row->key)) station.set(row->key, value_of(*row));
    }
    stations.items.push_back(std::move(station));
  }
  root.set("stations", std::move(stations));
  return root;
}

}  // namespace fairblade::job
