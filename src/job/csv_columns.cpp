#include "job/csv_columns.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "job/numbers.hpp"
#include "job/tree.hpp"

namespace fairblade::job {
namespace {

constexpr std::array<std::string_view, 8> reading_columns{"station", "x",         "port",     "starboard",
                                                          "caliper", "thickness", "port_gap", "starboard_gap"};
/// Columns of a station's own keys, in a CSV alone.
constexpr std::array<std::string_view, 8> station_columns{"down", "ahead", "chord",      "trailing_edge_off_centre",
                                                          "skeg", "board", "board_port", "board_starboard"};

/// What sheets in the yard call a side; too short to be told by likeness.
constexpr std::array<std::pair<std::string_view, std::string_view>, 8> short_names{{{"stbd", "starboard"},
                                                                                    {"stb", "starboard"},
                                                                                    {"sb", "starboard"},
                                                                                    {"s", "starboard"},
                                                                                    {"prt", "port"},
                                                                                    {"p", "port"},
                                                                                    {"stn", "station"},
                                                                                    {"sta", "station"}}};

/// Lower case; every run of blanks, hyphens and underscores is one underscore; none at the ends.
std::string plain_name(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::string_view rest = without_blanks(text);
    const bool blank = rest.size() != text.size() && rest.data() != text.data();
    const char c = text.front();
    if (blank || c == '-' || c == '_') {
      if (!out.empty() && out.back() != '_') out += '_';
      text = blank ? rest : text.substr(1);
      continue;
    }
    out += c;
    text.remove_prefix(1);
  }
  while (!out.empty() && (out.back() == '_' || out.back() == ':' || out.back() == '*')) out.pop_back();
  return lower_case(out);
}

class ColumnFinder {
 public:
  ColumnFinder(const CsvHeader& header, bool alone, bool new_heights, const std::string& file, Faults& faults)
      : header_(header), alone_(alone), new_heights_(new_heights), file_(file), faults_(faults) {}

  std::optional<Columns> find() {
    if (twice() || misnamed()) return std::nullopt;
    Columns out;
    out.station = *at("station");
    out.x = *at("x");
    if (!readings(out)) return std::nullopt;
    bool complete = true;
    for (const std::string_view needed : {"down", "chord"}) {
      if (!alone_ || !new_heights_ || at(needed)) continue;
      std::vector<std::string_view> others(header_.columns.begin(), header_.columns.end());
      std::erase_if(others, is_column);
      const std::string near = nearest_name(needed, others);
      refuse("there is no column " + std::string(needed),
             near.empty() ? "add it: it may be filled on a station's first row only" : "rename " + in_quotes(near));
      complete = false;
    }
    if (!complete) return std::nullopt;
    for (const std::string_view name : station_columns) {
      if (const auto column = at(name); alone_ && column) out.own.emplace_back(name, *column);
    }
    for (std::size_t i = 0; i < header_.columns.size(); ++i) {
      if (is_column(header_.columns[i])) out.last = i;
    }
    return out;
  }

 private:
  std::optional<std::size_t> at(std::string_view name) const { return column_of(header_.columns, name); }
  void refuse(std::string what, std::string remedy) { faults_.add({file_, header_.line}, std::move(what), std::move(remedy)); }

  bool twice() {
    for (std::size_t i = 0; i < header_.columns.size(); ++i) {
      const std::string& name = header_.columns[i];
      if (!is_column(name) || at(name) == i) continue;
      refuse("two columns are named " + name, "rename or remove one");
      return true;
    }
    return false;
  }

  /// A column that seems meant as one that is lacking would be passed over, and its readings with it.
  bool misnamed() {
    bool any = false;
    for (const std::string& name : header_.columns) {
      if (name.empty() || is_column(name)) continue;
      const std::string meant = column_meant(name);
      if (meant.empty() || at(meant) || (meant == "down" || meant == "chord")) continue;  // those two are told as lacking
      if (!alone_ && std::find(station_columns.begin(), station_columns.end(), meant) != station_columns.end()) continue;
      if ((meant == "caliper" && at("thickness")) || (meant == "thickness" && at("caliper"))) continue;
      refuse("the column " + in_quotes(name) + " is none that is known",
             "rename it " + in_quotes(meant) + ", or give it another name if it is not meant");
      any = true;
    }
    return any;
  }

  bool readings(Columns& out) {
    const auto port = at("port"), starboard = at("starboard"), port_gap = at("port_gap"), starboard_gap = at("starboard_gap");
    const auto thickness = at("thickness"), caliper = at("caliper");
    const bool breadths = port || starboard, gaps = port_gap || starboard_gap;
    if (breadths && gaps) {
      refuse("the columns hold both half-breadths and gaps", "give one kind in one file");
      return false;
    }
    if (thickness && caliper) {
      refuse("there are columns thickness and caliper", "keep one of the two");
      return false;
    }
    if (!breadths && !gaps && !thickness && !caliper) {
      refuse("no column holds readings", "add port and starboard, or thickness, or port_gap and starboard_gap");
      return false;
    }
    out.first = gaps ? port_gap : port;
    out.second = gaps ? starboard_gap : starboard;
    out.caliper = thickness ? thickness : caliper;
    out.holds = gaps ? MeasuredBy::gaps : breadths ? MeasuredBy::half_breadths : MeasuredBy::thickness;
    return true;
  }

  const CsvHeader& header_;
  bool alone_, new_heights_;
  const std::string& file_;
  Faults& faults_;
};

}  // namespace

std::optional<LengthUnit> unit_of_word(std::string_view word) {
  static constexpr std::array<std::pair<std::string_view, LengthUnit>, 16> words{{{"mm", LengthUnit::mm},
                                                                                  {"millimetre", LengthUnit::mm},
                                                                                  {"millimetres", LengthUnit::mm},
                                                                                  {"millimeter", LengthUnit::mm},
                                                                                  {"millimeters", LengthUnit::mm},
                                                                                  {"cm", LengthUnit::cm},
                                                                                  {"centimetre", LengthUnit::cm},
                                                                                  {"centimetres", LengthUnit::cm},
                                                                                  {"centimeter", LengthUnit::cm},
                                                                                  {"centimeters", LengthUnit::cm},
                                                                                  {"in", LengthUnit::inch},
                                                                                  {"ins", LengthUnit::inch},
                                                                                  {"inch", LengthUnit::inch},
                                                                                  {"inches", LengthUnit::inch},
                                                                                  {"\"", LengthUnit::inch},
                                                                                  {"\xe2\x80\xb3", LengthUnit::inch}}};
  word = without_blanks(word);
  if (word.size() >= 2 && ((word.front() == '(' && word.back() == ')') || (word.front() == '[' && word.back() == ']'))) {
    word = without_blanks(word.substr(1, word.size() - 2));
  }
  std::string plain = lower_case(word);
  if (plain.size() > 1 && plain.back() == '.') plain.pop_back();
  for (const auto& [name, unit] : words) {
    if (plain == name) return unit;
  }
  return std::nullopt;
}

ColumnTitle title_of(std::string_view cell) {
  cell = without_blanks(cell);
  ColumnTitle whole{plain_name(cell), {}};
  if (is_column(whole.name)) return whole;
  // The unit is the last word, set off by a bracket, blank, comma, slash or underscore.
  std::size_t from = cell.find_last_of("([");
  if (from == std::string_view::npos) from = cell.find_last_of(" ,/_");
  if (from == std::string_view::npos || from == 0) return whole;
  const bool bracket = cell[from] == '(' || cell[from] == '[';
  const std::string_view unit = without_blanks(cell.substr(bracket ? from : from + 1));
  std::string_view base = cell.substr(0, from);
  while (!base.empty() && std::string_view(" ,/_").find(base.back()) != std::string_view::npos) base.remove_suffix(1);
  std::string name = plain_name(base);
  if (!unit_of_word(unit) || !is_column(name)) return whole;
  return {std::move(name), std::string(unit)};
}

bool is_column(std::string_view name) {
  return std::find(reading_columns.begin(), reading_columns.end(), name) != reading_columns.end() ||
         std::find(station_columns.begin(), station_columns.end(), name) != station_columns.end();
}

std::string column_meant(std::string_view name) {
  for (const auto& [shortened, meant] : short_names) {
    if (name == shortened) return std::string(meant);
  }
  if (name.size() < 4) return {};
  std::vector<std::string_view> ours(reading_columns.begin(), reading_columns.end());
  ours.insert(ours.end(), station_columns.begin(), station_columns.end());
  for (const std::string_view one : ours) {  // "port_(half-breadth)", "chord_length"
    if (one.size() > 1 && name.size() > one.size() && name.starts_with(one) &&
        (name[one.size()] == '_' || name[one.size()] == '(')) {
      return std::string(one);
    }
  }
  // Other columns may stand beside ours ("worn", "note"): likeness counts only where the first letter is the same.
  const std::string near = nearest_name(name, ours);
  return !near.empty() && near.front() == name.front() ? near : std::string();
}

std::optional<std::size_t> column_of(std::span<const std::string> columns, std::string_view name) {
  const auto found = std::find(columns.begin(), columns.end(), name);
  if (found == columns.end()) return std::nullopt;
  return static_cast<std::size_t>(found - columns.begin());
}

std::optional<Columns> find_columns(const CsvHeader& header, bool alone, bool new_heights, const std::string& file,
                                    Faults& faults) {
  return ColumnFinder(header, alone, new_heights, file, faults).find();
}

}  // namespace fairblade::job
