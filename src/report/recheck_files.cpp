// recheck.json and still-to-do.csv.
#include <algorithm>
#include <cmath>
#include <cstdint>

#include "base/text.hpp"
#include "report/csv_cell.hpp"
#include "report/json_values.hpp"
#include "report/recheck.hpp"
#include "report/recheck_words.hpp"

namespace fairblade::report {
namespace {

using recheck::HeightRead;
using recheck::Judged;
using recheck::Recheck;
using recheck::RoundResult;

const char* side_of(const Judged& one) { return one.both ? "both" : section::name_of(one.face); }
std::string origin_of(const Judged& one) { return one.from_old_edge ? "old-leading-edge" : std::string(name_of(one.from)); }
// A line each, without a tree made of them: of a scanned blade there are millions.
std::string reading_of(const Recheck& all, const Judged& one) {
  const auto truth = [](bool value) { return value ? "true" : "false"; };
  std::string out = "    {\"x\": ";
  out.append(number(one.read_x)).append(", \"x_from\": \"").append(origin_of(one)).append("\", \"x_plan\": ");
  out.append(number(one.x)).append(", \"side\": \"").append(section::name_of(one.face)).append("\", \"calipers\": ");
  out.append(truth(one.both)).append(", \"measured\": ").append(number(one.half_breadth)).append(", \"target\": ");
  out.append(number(one.target)).append(", \"change\": ").append(number(one.depth)).append(", \"within\": ");
  out.append(truth(recheck::within(one, all.options.tolerance)))
      .append(", \"alone\": ")
      .append(truth(one.alone))
      .append(", \"repeats\": ");
  return out + std::to_string(one.repeats) + ", \"line\": " + std::to_string(one.line) + '}';
}

std::string height_of(const Recheck& all, std::size_t h) {
  const RoundResult& now = all.now();
  const HeightRead& height = now.heights[h];
  const Json object = {{"name", height.surface.name},
                       {"down", height.surface.down},
                       {"between", height.surface.between.empty() ? Json(nullptr) : Json(height.surface.between)},
                       {"add", now.litres.by_height[h].add},
                       {"remove", now.litres.by_height[h].remove},
                       {"edges",
                        {{"leading_edge_short", maybe(height.edges.leading)},
                         {"trailing_edge_short", maybe(height.edges.trailing)},
                         {"chord_short", maybe(height.edges.chord)}}}};
  std::string out = left_open(object) + " \"readings\": [\n";
  for (const Judged& one : height.readings) {
    out += reading_of(all, one) + (&one == &height.readings.back() ? "\n" : ",\n");
  }
  return out + (h + 1 == now.heights.size() ? " ]\n}\n" : " ]\n},\n");
}

Json spots_of(const Recheck& all) {
  Json out = Json::array();
  for (const recheck::Spot& spot : all.spots) {
    const HeightRead& worst = all.now().heights[spot.worst_at.height];
    Json heights = Json::array();
    for (const recheck::Reach& one : spot.reach) heights.push_back(all.now().heights[one.height].surface.name);
    out.push_back({{"kind", recheck::name_of(spot.kind)},
                   {"side", spot.both ? "both" : section::name_of(spot.face)},
                   {"heights", heights},
                   {"worst_at", worst.surface.name},
                   {"from", worst.readings[spot.worst_at.first].read_x},
                   {"to", worst.readings[spot.worst_at.last].read_x},
                   {"worst", spot.worst},
                   {"mean", spot.mean},
                   {"standard_deviations", spot.chance}});
  }
  return out;
}

Json round_of(const RoundResult& one) {
  return {{"file", one.file},
          {"stage", fill::name_of(one.stage)},
          {"reading_error", one.reading_error},
          {"reading_error_told", one.told_error},
          {"readings", one.readings},
          {"within", one.within},
          {"deepest_low", one.deepest_low},
          {"deepest_high", one.deepest_high},
          {"add", one.litres.left.add},
          {"remove", one.litres.left.remove}};
}

std::string head_of(const Recheck& all) {
  const RoundResult& now = all.now();
  const recheck::Litres& l = now.litres;
  Json out = {{"fairblade", FAIRBLADE_VERSION}, {"job", all.frozen.job.name}, {"plan", all.frozen.job.file}};
  const fill::Stage& stage = all.frozen.stage;
  out["stage"] = {{"name", fill::name_of(stage.kind)}, {"surface", stage.surface}, {"to_come", stage.to_come}};
  if (all.other_stage) out["other_stage"] = {{"name", all.other_stage->name}, {"coats", all.other_stage->coats}};
  out["tolerance"] = all.options.tolerance;
  out["verdict"] = recheck::name_of(all.verdict);
  out["next"] = what_next(all);
  out["litres"] = {
      {"add", l.left.add},
      {"add_error", l.add_error},
      {"remove", l.left.remove},
      {"remove_error", l.remove_error},
      {"perfect_blade_would_show", l.by_chance},
      {"beyond", {{"add", l.beyond.add}, {"remove", l.beyond.remove}}},
      {"how", "depth straight between readings along the girth and between heights; carried on to the plan's end stations"}};
  out["readings"] = {{"all", now.readings},
                     {"within", now.within},
                     {"beyond_by_chance", all.beyond_by_chance},
                     {"reading_error", now.reading_error},
                     {"reading_error_told", now.told_error}};
  out["common"] = {{"change", all.common}, {"error", all.common_error}};
  return left_open(out) + " \"heights\": [\n";
}

std::string tail_of(const Recheck& all) {
  Json out = {{"spots", spots_of(all)}};
  out["progress"] = Json::array({round_of(all.first)});
  for (const RoundResult& one : all.rounds) out["progress"].push_back(round_of(one));
  out["defaults"] = Json::object();
  for (const DefaultUsed& one : all.defaults) out["defaults"][one.key] = one.value;
  out["notes"] = all.notes;
  return " ],\n" + dumped(out).substr(2) + '\n';  // without its opening brace
}

/// Of a scan there are millions: by number, and sorted where they stand.
struct Row {
  std::uint32_t height = 0, reading = 0;
};

std::vector<Row> rows_to_do(const Recheck& all) {
  const auto& heights = all.now().heights;
  std::vector<Row> rows;
  rows.reserve(all.now().readings - all.now().within);
  for (std::uint32_t h = 0; h < heights.size(); ++h) {
    for (std::uint32_t k = 0; k < heights[h].readings.size(); ++k) {
      const Judged& one = heights[h].readings[k];
      if (!recheck::within(one, all.options.tolerance) && !(one.both && one.face == section::Face::starboard))
        rows.push_back({h, k});
    }
  }
  const auto depth = [&](const Row& row) { return std::abs(heights[row.height].readings[row.reading].depth); };
  std::sort(rows.begin(), rows.end(), [&](const Row& a, const Row& b) {
    if (depth(a) != depth(b)) return depth(a) > depth(b);
    return a.height != b.height ? a.height < b.height : a.reading < b.reading;
  });
  return rows;
}

std::string row_of(const HeightRead& height, const Judged& one) {
  constexpr int decimals = 3;
  return csv_cell(height.surface.name) + ',' + fixed(height.surface.down, decimals) + ',' + fixed(one.read_x, decimals) + ',' +
         origin_of(one) + ',' + side_of(one) + ',' + fixed(one.half_breadth, decimals) + ',' + fixed(one.target, decimals) + ',' +
         fixed(one.depth, decimals) + ',' + (one.depth > 0 ? "add" : "take off") + (one.alone ? "; alone: read it again" : "") +
         '\n';
}

}  // namespace

Pieces recheck_json(const Recheck& all) {
  const std::size_t heights = all.now().heights.size();
  return {heights + 2, [&all, heights](std::size_t k) {
            return k == 0 ? head_of(all) : k <= heights ? height_of(all, k - 1) : tail_of(all);
          }};
}

Pieces still_to_do_csv(const Recheck& all) {
  constexpr std::size_t together = 1000;  // rows to a piece
  auto rows = rows_to_do(all);
  const std::size_t pieces = 1 + (rows.size() + together - 1) / together;
  return {pieces, [rows = std::move(rows), &heights = all.now().heights](std::size_t k) {
            if (k == 0) return std::string("station,down,x,x_from,side,measured,target,change,what\n");
            std::string out;
            for (std::size_t r = (k - 1) * together; r < std::min(rows.size(), k * together); ++r) {
              const HeightRead& height = heights[rows[r].height];
              out += row_of(height, height.readings[rows[r].reading]);
            }
            return out;
          }};
}

}  // namespace fairblade::report
