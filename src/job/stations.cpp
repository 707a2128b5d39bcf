#include "job/stations.hpp"

#include <algorithm>
#include <array>

namespace fairblade::job {
namespace {

constexpr std::array<std::string_view, 3> methods{"half-breadths", "thickness", "gaps"};
constexpr std::array<std::string_view, 3> origins{"leading-edge", "trailing-edge", "stock"};
constexpr Range breadth_range{-5000, 5000};  // mm; the chord gives the closer limit
constexpr Range x_range{-10000, 10000};

void read_board(const Reader& reader, const Node& node, StationDraft& draft) {
  constexpr Range range{1, 5000};
  if (draft.method_told && draft.station.measured_by != MeasuredBy::gaps) {
    reader.faults.add(reader.at(node), reader.named("board") + " goes with \"measured_by\": \"gaps\" only",
                      "take it out, or say that gaps were measured");
    return;
  }
  if (node.kind == NodeKind::list) {
    if (node.items.size() != 2) return reader.refuse(node, "board", "give one distance, or [port, starboard]");
    draft.board_port = reader.length(node.items[0], "board", range);
    draft.board_starboard = reader.length(node.items[1], "board", range);
  } else {
    draft.board_port = draft.board_starboard = reader.length(node, "board", range);
  }
  if (!draft.board_port || !draft.board_starboard) draft.sound = false;
}

/// The places along the blade: down, ahead, chord and what depends on them.
void read_sizes(const Reader& reader, const Node& node, StationDraft& draft) {
  Station& station = draft.station;
  if (const Node* down = node.find("down")) {
    if (const auto mm = reader.length(*down, "down", {-20000, 20000})) station.down = *mm;
    else draft.sound = false;
  } else {
    reader.missing(node, "down", "give its distance below the top of the blade");
    draft.sound = false;
  }
  if (const Node* chord = node.find("chord")) {
    if (const auto mm = reader.length(*chord, "chord", {10, 5000})) station.chord = *mm;
  } else {
    reader.missing(node, "chord", "give its length from leading to trailing edge");
  }
  if (station.chord == 0) draft.sound = false;
  const double chord = station.chord > 0 ? station.chord : 5000;
  if (const Node* ahead = node.find("ahead")) {
    // A stock aft of the whole blade is a slip; ahead of it, by more than the chord is long, stands that of a raked or swept one.
    station.ahead =
        reader.length(*ahead, "ahead", {-5000, chord}, "no farther ahead than the chord is long, or look at the chord");
    if (!station.ahead) draft.sound = false;
  }
  if (const Node* off = node.find("trailing_edge_off_centre")) {
    station.trailing_edge_off_centre =
        reader.length(*off, "trailing_edge_off_centre", {-chord / 2, chord / 2}, "to port positive, to starboard negative");
  }
  if (const Node* skeg = node.find("skeg")) {
    if (const auto mm = reader.length(*skeg, "skeg", {0, 5000})) station.skeg = *mm;
  }
}

bool has_caliper_too(const Node& row, const StationDraft& draft) {
  return draft.station.measured_by != MeasuredBy::thickness && row.items.size() == 4;
}

bool row_shape(const Reader& reader, const Node& row, const StationDraft& draft) {
  const MeasuredBy by = draft.station.measured_by;
  const std::size_t values = row.items.size();
  const std::size_t wanted = by == MeasuredBy::thickness ? 2 : 3;
  if (row.kind == NodeKind::list && (values == wanted || has_caliper_too(row, draft))) return true;
  const char* shape = by == MeasuredBy::thickness ? "[x, caliper]"
                      : by == MeasuredBy::gaps    ? "[x, port gap, starboard gap]"
                                                  : "[x, port, starboard]";
  const std::string found = row.kind == NodeKind::list ? "has " + std::to_string(values) + " values" : "is " + described(row);
  reader.faults.add(reader.at(row), "a reading" + reader.of + " " + found,
                    std::string("write ") + shape + (values > 4 ? ", with decimal points, not commas" : ""));
  return false;
}

bool read_row(const Reader& reader, const Node& row, StationDraft& draft, Reading& reading) {
  const MeasuredBy by = draft.station.measured_by;
  bool ok = true;
  const auto value = [&](std::size_t i, const char* key, Range range) -> std::optional<double> {
    if (i > 0 && row.items[i].kind == NodeKind::null) return std::nullopt;
    const auto mm = reader.length(row.items[i], key, range);
    ok = ok && mm;
    return mm;
  };
  reading.line = row.items[0].line;
  const auto x = value(0, "x", x_range);
  if (x) reading.x = *x;
  if (by == MeasuredBy::thickness) {
    reading.caliper = value(1, "caliper", {0, breadth_range.high});
  } else {
    const bool gaps = by == MeasuredBy::gaps;
    reading.port = value(1, gaps ? "port gap" : "port", breadth_range);
    reading.starboard = value(2, gaps ? "starboard gap" : "starboard", breadth_range);
    if (has_caliper_too(row, draft)) reading.caliper = value(3, "caliper", {0, breadth_range.high});
  }
  return ok;
}

}  // namespace

void read_method(const Reader& reader, const Node& node, StationDraft& draft) {
  if (const Node* method = node.find("measured_by")) {
    if (const auto word = reader.word(*method, "measured_by", methods)) {
      draft.station.measured_by = static_cast<MeasuredBy>(*word);
      draft.method_told = true;
    } else {
      draft.method_known = draft.sound = false;
    }
  }
  if (const Node* origin = node.find("x_from")) {
    if (const auto word = reader.word(*origin, "x_from", origins)) draft.x_from = static_cast<XFrom>(*word);
    else draft.sound = false;
  }
  if (const Node* board = node.find("board")) read_board(reader, *board, draft);
}

std::string_view name_of(MeasuredBy method) { return methods[static_cast<std::size_t>(method)]; }
std::string_view name_of(XFrom origin) { return origins[static_cast<std::size_t>(origin)]; }

std::optional<MeasuredBy> measured_by_named(std::string_view word) {
  const auto found = std::find(methods.begin(), methods.end(), word);
  if (found == methods.end()) return std::nullopt;
  return static_cast<MeasuredBy>(found - methods.begin());
}

std::span<const std::string_view> station_keys() {
  static constexpr std::array<std::string_view, 11> keys{
      "name",   "down",  "ahead",    "chord",       "trailing_edge_off_centre", "skeg", "measured_by",
      "x_from", "board", "readings", "interpolated"};
  return keys;
}

StationDraft read_station(const Reader& outer, const Node& node, std::size_t number) {
  StationDraft draft;
  Reader reader = outer;
  reader.of = " of station " + std::to_string(number);
  if (const Node* name = node.find("name")) {
    if (auto read = reader.text(*name, "name")) draft.station.name = *read;
  } else {
    reader.missing(node, "name", "give it one, as in \"name\": \"A\"");
  }
  if (draft.station.name.empty()) draft.station.name = std::to_string(number);
  reader.of = " of station " + draft.station.name;
  draft.station.place = reader.at(node);
  read_sizes(reader, node, draft);
  read_method(reader, node, draft);
  if (draft.x_from == XFrom::stock && !node.find("ahead")) {
    reader.missing(node, "ahead", "with x from the stock, say how far the leading edge stands ahead of it");
    draft.sound = false;
  }
  if (const Node* interpolated = node.find("interpolated")) {
    draft.station.interpolated = reader.truth(*interpolated, "interpolated").value_or(false);
  }
  return draft;
}

bool read_inline_readings(const Reader& reader, const Node& list, StationDraft& draft) {
  if (!reader.list(list, "readings", "[[0, 0, 0], [5, 9.8, 9.6]]")) return false;
  Station& station = draft.station;
  station.readings_from = reader.file;
  station.readings.reserve(list.items.size());
  bool ok = true;
  int not_read = 0;
  for (const Node& row : list.items) {
    if (reader.faults.full()) return false;
    Reading reading;
    if (!row_shape(reader, row, draft)) return false;  // the rest is likely to be shaped alike
    if (!read_row(reader, row, draft, reading)) ok = false;
    else if (reading.port || reading.starboard || reading.caliper) station.readings.push_back(reading);
    else ++not_read;
  }
  if (ok && station.readings.empty()) {
    reader.faults.add(reader.at(list), "station " + station.name + " has no readings" + (not_read > 0 ? ", only places" : ""),
                      "give at least two, better eight a side");
    return false;
  }
  return ok;
}

bool take_csv_readings(const Reader& reader, CsvStation&& from, const CsvContent& content, StationDraft& draft) {
  Station& station = draft.station;
  station.readings_from = content.file;
  if (from.readings.empty() && !content.whole) return false;
  const auto has_sides = [](const Reading& r) { return r.port || r.starboard; };
  const bool sides = std::any_of(from.readings.begin(), from.readings.end(), has_sides);
  const MeasuredBy held = sides ? content.measured_by : MeasuredBy::thickness;
  if (from.readings.empty()) {
    reader.faults.add({content.file, from.line}, "station " + station.name + " has no readings, only places",
                      "fill in at least two, better eight a side, or take the station out");
    return false;
  }
  if (!draft.method_told) station.measured_by = held;
  if (station.measured_by != held) {
    reader.faults.add({content.file, from.line},
                      "station " + station.name + " is measured by " + std::string(name_of(station.measured_by)) +
                          ", but here stand " + std::string(name_of(held)),
                      "correct \"measured_by\" or the columns' names");
    return false;
  }
  station.readings = std::move(from.readings);
  station.readings.shrink_to_fit();  // row by row it grew to twice what it holds
  draft.rows_refused = !content.whole;
  return true;
}

}  // namespace fairblade::job
