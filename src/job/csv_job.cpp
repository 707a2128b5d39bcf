#include "job/csv_job.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <vector>

#include "job/target_keys.hpp"

namespace fairblade::job {
namespace {

/// Keys that a CSV sets for all its stations.
constexpr std::array<std::string_view, 3> for_all_stations{"measured_by", "x_from", "board"};
/// What the worksheet's table leaves open for the owner to write.
constexpr std::array<std::string_view, 1> may_be_empty{"coating_to_strip"};

Node value_of(const KeyRow& row) {
  if (row.values.size() == 1) return node_of_text(row.values.front(), row.line);
  Node list;
  list.kind = NodeKind::list;
  list.line = row.line;
  list.loose = true;
  for (const std::string& value : row.values) list.items.push_back(node_of_text(value, row.line));
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
      faults.add({content.file, row.line},
                 in_quotes(row.key) + " stands twice (first on line " + std::to_string((*twice)->line) + ")",
                 "keep one of the two");
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
