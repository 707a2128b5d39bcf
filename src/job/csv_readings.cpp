#include "job/csv_readings.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

constexpr int none = -1;
constexpr double furthest = 10000;  // mm; the chord gives the closer limits

/// Which cell holds what; `none` where there is no such column.
struct Columns {
  int station = none, x = none, first = none, second = none, caliper = none;
};
/// Columns of a station's own keys, in a CSV alone.
constexpr std::array<std::string_view, 6> station_columns{"down", "ahead", "chord", "trailing_edge_off_centre", "skeg", "board"};

int column(const CsvHeader& header, std::string_view name) {
  const auto found = std::find(header.columns.begin(), header.columns.end(), name);
  return found == header.columns.end() ? none : static_cast<int>(found - header.columns.begin());
}

class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file, bool alone, const std::vector<std::string>& known, Faults& faults)
      : text_(text), alone_(alone), known_(known), faults_(faults) {
    content_.file = file;
  }

  std::optional<CsvContent> read(LengthUnit unit) {
    auto header = find_header(text_);
    if (!header) {
      fault(0, "no header row with the columns station and x", alone_ ? "begin the table with station,down,ahead,chord,x,port,starboard"
                                                                      : "begin the table with station,x,port,starboard");
      return std::nullopt;
    }
    content_.header = std::move(*header);
    content_.unit = unit;
    if (!read_unit() || !find_columns()) return std::nullopt;
    read_rows();
    return std::move(content_);
  }

 private:
  void fault(int line, std::string what, std::string remedy) {
    content_.whole = false;
    faults_.add({content_.file, line}, std::move(what), std::move(remedy));
  }

  bool read_unit() {
    for (const KeyRow& row : content_.header.keys) {
      if (row.key == "units") {
        const auto unit = row.values.size() == 1 ? length_unit(row.values[0]) : std::nullopt;
        if (!unit) {
          fault(row.line, "\"units\" is " + (row.values.empty() ? "empty" : in_quotes(row.values[0])), "use mm, cm or in");
          return false;
        }
        content_.unit = *unit;
      } else if (!alone_) {
        fault(row.line, in_quotes(row.key) + " stands above the header row", "only units may stand here: put the rest in the job file");
      }
    }
    return true;
  }

  bool find_columns() {
    const CsvHeader& header = content_.header;
    for (std::size_t i = 0; i < header.columns.size(); ++i) {
      const auto& name = header.columns[i];
      if (!name.empty() && is_ours(name) && column(header, name) != static_cast<int>(i)) {
        fault(header.line, "two columns are named " + name, "rename or remove one");
        return false;
      }
    }
    columns_.station = column(header, "station");
    columns_.x = column(header, "x");
    const int port = column(header, "port"), starboard = column(header, "starboard");
    const int port_gap = column(header, "port_gap"), starboard_gap = column(header, "starboard_gap");
    const int thickness = column(header, "thickness"), caliper = column(header, "caliper");
    const bool breadths = port != none || starboard != none, gaps = port_gap != none || starboard_gap != none;
    if (breadths && gaps) return refuse_columns("the columns hold both half-breadths and gaps", "give one kind in one file");
    if (thickness != none && caliper != none) return refuse_columns("there are columns thickness and caliper", "keep one of the two");
    columns_.first = gaps ? port_gap : port;
    columns_.second = gaps ? starboard_gap : starboard;
    columns_.caliper = thickness != none ? thickness : caliper;
    content_.measured_by = gaps ? MeasuredBy::gaps : breadths ? MeasuredBy::half_breadths : MeasuredBy::thickness;
    if (!breadths && !gaps && columns_.caliper == none) {
      return refuse_columns("no column holds readings", "add port and starboard, or thickness, or port_gap and starboard_gap");
    }
    bool complete = true;
    for (const std::string_view needed : {"down", "chord"}) {
      if (!alone_ || !known_.empty() || column(header, needed) != none) continue;
      std::vector<std::string_view> others(header.columns.begin(), header.columns.end());
      std::erase_if(others, is_ours);
      const std::string near = nearest_name(needed, others);
      complete = refuse_columns("there is no column " + std::string(needed),
                                near.empty() ? "add it: it may be filled on a station's first row only" : "rename " + in_quotes(near));
    }
    return complete;
  }

  bool refuse_columns(std::string what, std::string remedy) {
    fault(content_.header.line, std::move(what), std::move(remedy));
    return false;
  }

  static bool is_ours(std::string_view name) {
    static constexpr std::array<std::string_view, 8> reading_columns{"station", "x", "port", "starboard", "caliper",
                                                                     "thickness", "port_gap", "starboard_gap"};
    return std::find(reading_columns.begin(), reading_columns.end(), name) != reading_columns.end() ||
           std::find(station_columns.begin(), station_columns.end(), name) != station_columns.end();
  }

  void read_rows() {
    CsvRows rows(text_, content_.header.delimiter);
    std::vector<std::string_view> cells;
    std::vector<std::pair<std::string_view, int>> own;
    for (const std::string_view name : station_columns) {
      if (const int at = column(content_.header, name); alone_ && at != none) own.emplace_back(name, at);
    }
    while (!faults_.full() && rows.next(cells)) {
      line_ = rows.line();
      if (line_ <= content_.header.line) continue;
      if (rows.quote_left_open()) {
        fault(line_, "a quoted cell does not end on its line", "put the double quote at its end");
        continue;
      }
      if (!even(cells)) continue;
      CsvStation* station = station_of(cells[static_cast<std::size_t>(columns_.station)]);
      if (!station) continue;
      for (const auto& [name, at] : own) read_own(*station, name, cells[static_cast<std::size_t>(at)]);
      read_reading(*station, cells);
    }
  }

  /// Spreadsheets pad rows with empty cells; anything else that is uneven has slipped.
  bool even(const std::vector<std::string_view>& cells) {
    const std::size_t wanted = content_.header.columns.size();
    std::size_t filled = cells.size();
    while (filled > wanted && cells[filled - 1].empty()) --filled;
    if (filled == wanted) return true;
    const bool commas = filled > wanted && content_.header.delimiter == ',';
    fault(line_, "this row has " + std::to_string(filled) + " cells, the header row " + std::to_string(wanted),
          commas ? "check it; with decimal commas, separate the cells by semicolons" : "check it for a missing or extra separator");
    return false;
  }

  CsvStation* station_of(std::string_view name) {
    if (name.empty() && alone_ && current_) return &content_.stations[*current_];  // as the row above
    if (current_ && content_.stations[*current_].name == name) return &content_.stations[*current_];
    const auto found = by_name_.find(name);
    if (found != by_name_.end()) {
      current_ = found->second;
      return &content_.stations[*current_];
    }
    if (name.empty()) {
      fault(line_, "the station's cell is empty", "name the station");
      return nullptr;
    }
    if (refused_ == name) return nullptr;
    if (!alone_ && std::find(known_.begin(), known_.end(), name) == known_.end()) {
      refused_ = name;
      const std::vector<std::string_view> names(known_.begin(), known_.end());
      const std::string near = nearest_name(name, names);
      fault(line_, "station " + in_quotes(name) + " is not in the job file",
            near.empty() ? "add it there, or take its rows out" : "did you mean " + in_quotes(near) + "?");
      return nullptr;
    }
    current_ = content_.stations.size();
    by_name_.emplace(name, *current_);
    CsvStation& station = content_.stations.emplace_back();
    station.name = name;
    station.line = line_;
    station.node.line = line_;
    Node name_node = node_of_text(name, line_);
    name_node.kind = NodeKind::text;
    station.node.set("name", std::move(name_node));
    return &station;
  }

  void read_own(CsvStation& station, std::string_view key, std::string_view cell) {
    if (cell.empty()) return;
    const Node* before = station.node.find(key);
    if (before && before->text == cell) return;
    Node node = node_of_text(cell, line_);
    if (before && before->kind == NodeKind::number && node.kind == NodeKind::number && before->number == node.number) return;
    if (before) {
      return fault(line_, std::string(key) + " of station " + station.name + " is " + std::string(cell) + " here and " + before->text +
                       " on line " + std::to_string(before->line), "keep one value, or give the second station its own name");
    }
    station.node.set(key, std::move(node));
  }

  void read_reading(CsvStation& station, const std::vector<std::string_view>& cells) {
    Reading reading;
    reading.line = line_;
    bool ok = true;
    const auto x = length(cells, columns_.x, ok);
    reading.port = length(cells, columns_.first, ok);
    reading.starboard = length(cells, columns_.second, ok);
    reading.caliper = length(cells, columns_.caliper, ok);
    const bool anything = reading.port || reading.starboard || reading.caliper;
    if (!ok) return;
    if (!x) {
      if (anything) fault(line_, "x is empty", "say how far from the station's origin this was read");
      return;
    }
    reading.x = *x;
    if (anything) station.readings.push_back(reading);
    else ++station.not_read;
  }

  /// The cell in mm, nothing where it is empty; not ok where it is no length.
  std::optional<double> length(const std::vector<std::string_view>& cells, int at, bool& ok) {
    if (at == none) return std::nullopt;
    const std::string_view cell = cells[static_cast<std::size_t>(at)];
    if (cell.empty()) return std::nullopt;
    if (const auto value = decimal(cell)) {
      if (!one_decimal_mark(cell)) ok = false;
      return within_reach(*value * millimetres_in(content_.unit), cell, at, ok);
    }
    const LengthOfText read = length_of_text(cell, content_.unit);
    if (read.kind == LengthOfText::Kind::length) return within_reach(read.mm, cell, at, ok);
    ok = false;
    const std::string what = content_.header.columns[static_cast<std::size_t>(at)] + " is " + in_quotes(cell) + ", not a number";
    if (has_letter_for_digit(cell)) {
      fault(line_, what, "write the digit 0 for a letter O, 1 for a letter l");
    } else if (read.kind == LengthOfText::Kind::fraction_outside_inches) {
      fault(line_, what, "fractions are for inches: put a row units,in above the header row");
    } else {
      fault(line_, what, "write a number, or leave the cell empty where nothing was read");
    }
    return std::nullopt;
  }

  double within_reach(double mm, std::string_view cell, int at, bool& ok) {
    if (mm >= -furthest && mm <= furthest) return mm;
    ok = false;
    fault(line_, content_.header.columns[static_cast<std::size_t>(at)] + " is " + std::string(cell) + ", more than 10 m",
          "check it, and the units");
    return 0;
  }

  /// 1,234 beside 9.8 could be a thousand or one and a bit: refuse rather than guess.
  bool one_decimal_mark(std::string_view cell) {
    const char mark = cell.find(',') != std::string_view::npos ? ',' : cell.find('.') != std::string_view::npos ? '.' : '\0';
    if (mark == '\0' || mark == mark_) return true;
    if (mark_ == '\0') {
      mark_ = mark;
      mark_line_ = line_;
      return true;
    }
    if (mixed_told_) return false;
    mixed_told_ = true;
    fault(line_, "decimal " + std::string(mark == ',' ? "comma" : "point") + " in " + in_quotes(cell) + " but decimal " +
                     (mark == ',' ? "point" : "comma") + " on line " + std::to_string(mark_line_),
          "use one of them throughout");
    return false;
  }

  std::string_view text_;
  bool alone_;
  const std::vector<std::string>& known_;
  Faults& faults_;
  CsvContent content_;
  Columns columns_;
  std::map<std::string, std::size_t, std::less<>> by_name_;
  std::optional<std::size_t> current_;
  std::string refused_;  ///< an unknown station is told once, not on each of its rows
  int line_ = 0;
  char mark_ = '\0';
  int mark_line_ = 0;
  bool mixed_told_ = false;
};

}  // namespace

std::optional<CsvContent> read_csv(std::string_view text, const std::string& file, LengthUnit unit, bool alone,
                                   const std::vector<std::string>& known, Faults& faults) {
  return CsvReader(text, file, alone, known, faults).read(unit);
}

}  // namespace fairblade::job
