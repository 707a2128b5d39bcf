#include "job/csv_readings.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include "base/text.hpp"
#include "job/csv_cells.hpp"
#include "job/csv_columns.hpp"
#include "job/csv_odd_rows.hpp"
#include "job/csv_surplus.hpp"
#include "job/numbers.hpp"

namespace fairblade::job {
namespace {

class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file, bool alone, const std::vector<std::string>& known, Faults& faults)
      : text_(text), alone_(alone), known_(known), faults_(faults), cell_(file, faults) {
    content_.file = file;
  }

  std::optional<CsvContent> read(LengthUnit unit) {
    auto header = find_header(text_);
    if (!header) {
      refuse_header();
      return std::nullopt;
    }
    content_.header = std::move(*header);
    content_.unit = unit;
    if (!read_unit() || !titles_agree()) return std::nullopt;
    const auto columns = find_columns(content_.header, alone_, known_.empty(), content_.file, faults_);
    if (!columns) return std::nullopt;
    columns_ = *columns;
    content_.measured_by = columns_.holds;
    cell_.unit = content_.unit;
    read_rows();
    for (CsvStation& station : content_.stations) join_boards(station);
    content_.whole = content_.whole && cell_.whole;
    if (!content_.whole && content_.stations.empty()) return std::nullopt;
    return std::move(content_);
  }

 private:
  void fault(int line, std::string what, std::string remedy) {
    content_.whole = false;
    faults_.add({content_.file, line}, std::move(what), std::move(remedy));
  }

  void refuse_header() {
    const std::string example = alone_ ? "station,down,ahead,chord,x,port,starboard" : "station,x,port,starboard";
    const auto likely = likely_header(text_);
    if (!likely) return fault(0, "no header row with the columns station and x", "begin the table with " + example);
    for (const std::string_view needed : {"station", "x"}) {
      if (column_of(likely->columns, needed)) continue;
      const auto meant = std::find_if(likely->columns.begin(), likely->columns.end(),
                                      [&](const std::string& name) { return column_meant(name) == needed; });
      fault(likely->line, "this looks like the header row, but has no column " + std::string(needed),
            meant == likely->columns.end() ? "add it, as in " + example
                                           : "rename " + in_quotes(*meant) + " to " + std::string(needed));
    }
  }

  bool read_unit() {
    const KeyRow* first = nullptr;
    for (const KeyRow& row : content_.header.keys) {
      if (row.key == "units") {
        if (first) {
          fault(row.line, stands_twice(*first), "keep one of the two");
          return false;
        }
        first = &row;
        const auto unit = row.values.size() == 1 ? length_unit(row.values[0]) : std::nullopt;
        if (!unit) {
          fault(row.line, "\"units\" is " + (row.values.empty() ? "empty" : in_quotes(row.values[0])), "use mm, cm or in");
          return false;
        }
        content_.unit = *unit;
      }
    }
    return true;
  }

  /// A unit that the sheet itself names must be the one that its numbers are taken in.
  void refuse_unit(int line, const std::string& where, LengthUnit found) {
    const std::string name(name_of(found));
    fault(line, where + " " + name + ", but lengths here count in " + std::string(name_of(content_.unit)),
          "if they are in " + name + ", put a row units," + name + " above the header row; if not, correct this");
  }

  bool titles_agree() {
    const CsvHeader& header = content_.header;
    for (std::size_t i = 0; i < header.units.size(); ++i) {
      const auto unit = unit_of_word(header.units[i]);
      if (!unit || *unit == content_.unit) continue;
      refuse_unit(header.line, "the title of " + header.columns[i] + " says", *unit);
      return false;
    }
    return true;
  }

  void read_rows() {
    CsvRows rows(text_, content_.header.delimiter);
    std::vector<std::string_view> cells;
    bool first = true;
    while (!faults_.full() && rows.next(cells)) {
      if (rows.line() <= content_.header.line) continue;
      line_ = cell_.line = rows.line();
      if (!whole_row(rows.quotes(), cells)) continue;
      if (std::exchange(first, false)) {
        if (const auto unit = unit_row(columns_, cells, content_.unit)) {
          if (*unit != content_.unit) return refuse_unit(line_, "this row of units says", *unit);
          continue;
        }
      }
      if (is_header_again(cells)) continue;
      if (is_total(cells)) continue;
      last_named_ = !cells[columns_.station].empty();
      CsvStation* station = station_of(cells[columns_.station]);
      if (!station) continue;
      for (const auto& [name, at] : columns_.own) read_own(*station, name, cells[at]);
      read_reading(*station, cells);
    }
    refuse_unnamed_total();
    if (content_.header.delimiter != ',') return;
    for (const Surplus::Row& row : surplus_.suspect()) refuse_cells(row.line, row.cells, content_.header.cells);
  }

  /// Its quotes close, and it has the header's cells: spreadsheets pad rows with empty ones, and leave off what the owner
  /// put behind our columns; anything else that is uneven has slipped.
  bool whole_row(QuoteTrouble quotes, std::vector<std::string_view>& cells) {
    if (quotes == QuoteTrouble::left_open) {
      fault(line_, "a quoted cell does not end on its line", "put the double quote at its end");
      return false;
    }
    if (quotes == QuoteTrouble::text_after) {
      fault(line_, "something stands behind the closing quote of a cell",
            "put all of the cell inside its quotes, and a separator after it");
      return false;
    }
    const std::size_t wanted = content_.header.columns.size();
    std::size_t filled = cells.size();
    while (filled > wanted && cells[filled - 1].empty()) --filled;
    if (filled > columns_.last && filled <= wanted) {
      surplus_.take(line_, cells, content_.header.cells);
      cells.resize(wanted);
      return true;
    }
    refuse_cells(line_, filled, wanted);
    return false;
  }

  void refuse_cells(int line, std::size_t found, std::size_t wanted) {
    const bool commas = found > wanted && content_.header.delimiter == ',';
    fault(
        line, "this row has " + std::to_string(found) + " cells, the header row " + std::to_string(wanted),
        commas ? "check it; with decimal commas, separate the cells by semicolons" : "check it for a missing or extra separator");
  }

  bool is_header_again(const std::vector<std::string_view>& cells) const {
    const std::string_view x = cells[columns_.x];
    if (x.empty() || (x.front() != 'x' && x.front() != 'X')) return false;
    if (title_of(cells[columns_.station]).name != "station") return false;
    for (std::size_t i = 0; i < content_.header.columns.size(); ++i) {
      if (title_of(cells[i]).name != content_.header.columns[i]) return false;
    }
    return true;
  }

  bool is_total(const std::vector<std::string_view>& cells) {
    const std::string_view name = cells[columns_.station], x = cells[columns_.x];
    const bool as_before = !name.empty() && current_ && content_.stations[*current_].name == name;
    if (as_before && (x.empty() || x.front() < 'A')) return false;  // the name was judged on a row above
    const auto word = total_word(columns_, cells);
    if (!word || std::find(known_.begin(), known_.end(), *word) != known_.end()) return false;
    fault(line_, "this row is a " + in_quotes(*word) + ", not a reading",
          "take it out" + std::string(alone_ && *word == cells[columns_.station] ? ", or give the station another name" : ""));
    return true;
  }

  /// The last row, where it names no station: a spreadsheet puts sums and means there.
  void refuse_unnamed_total() {
    if (!alone_ || last_named_ || !current_) return;
    const std::vector<Reading>& own = content_.stations[*current_].readings;
    if (own.empty() || own.back().line != line_) return;
    std::vector<std::span<const Reading>> above{std::span(own).first(own.size() - 1)};
    bool sum = adds_up(above, own.back());
    for (const CsvStation& station : content_.stations) {
      if (&station != &content_.stations[*current_]) above.emplace_back(station.readings);
    }
    sum = sum || adds_up(above, own.back());
    if (!sum) return;
    fault(line_, "every number of this row is the sum or the mean of those above it", "take the row out: it is no reading");
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
      fault(line_, "the station's cell is empty", "name the station, or take the row out if it is a total");
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
    if (cell.empty() || is_dash(cell)) return;
    const Node* before = station.node.find(key);
    if (before && before->text == cell) return;
    Node node = node_of_text(cell, line_);
    if (node.kind == NodeKind::number && !cell_.one_decimal_mark(cell)) return;
    if (before && before->kind == NodeKind::number && node.kind == NodeKind::number && before->number == node.number) return;
    if (before) {
      return fault(line_,
                   std::string(key) + " of station " + station.name + " is " + std::string(cell) + " here and " + before->text +
                       " on line " + std::to_string(before->line),
                   "keep one value, or give the second station its own name");
    }
    station.node.set(key, std::move(node));
  }

  /// Two boards at their own distances are one "board": [port, starboard].
  void join_boards(CsvStation& station) {
    const Node *port = station.node.find("board_port"), *starboard = station.node.find("board_starboard");
    if (!port && !starboard) return;
    std::string trouble;
    if (station.node.find("board")) trouble = std::string("board and ") + (port ? "board_port" : "board_starboard") + " as well";
    else if (!port) trouble = "board_starboard alone";
    else if (!starboard) trouble = "board_port alone";
    const int line = port ? port->line : starboard ? starboard->line : 0;
    Node both;
    both.kind = NodeKind::list;
    both.line = line;
    both.loose = true;
    if (port && starboard) both.items = {*port, *starboard};
    for (const char* key : {"board_port", "board_starboard"}) station.node.remove(key);
    if (trouble.empty()) return station.node.set("board", std::move(both));
    fault(line, "station " + station.name + " has " + trouble,
          "give board_port and board_starboard, or one board where they stand alike");
  }

  void read_reading(CsvStation& station, const std::vector<std::string_view>& cells) {
    Reading reading;
    reading.line = line_;
    bool ok = true;
    const auto length = [&](std::optional<std::size_t> at) -> std::optional<double> {
      if (!at) return std::nullopt;
      return cell_.length(cells[*at], content_.header.columns[*at], ok);
    };
    const auto x = length(columns_.x);
    reading.port = length(columns_.first);
    reading.starboard = length(columns_.second);
    reading.caliper = length(columns_.caliper);
    const bool anything = reading.port || reading.starboard || reading.caliper;
    if (!ok) return;
    if (!x) {
      if (anything)
        fault(line_, "x is empty", "say how far from the station's origin this was read, or take the row out if it is a total");
      return;
    }
    reading.x = *x;
    if (anything) station.readings.push_back(reading);
    else ++station.not_read;
  }

  std::string_view text_;
  bool alone_;
  const std::vector<std::string>& known_;
  Faults& faults_;
  CellReader cell_;
  CsvContent content_;
  Columns columns_;
  Surplus surplus_;
  std::map<std::string, std::size_t, std::less<>> by_name_;
  std::optional<std::size_t> current_;
  std::string refused_;  ///< an unknown station is told once, not on each of its rows
  int line_ = 0;
  bool last_named_ = true;
};

}  // namespace

std::optional<CsvContent> read_csv(std::string_view text, const std::string& file, LengthUnit unit, bool alone,
                                   const std::vector<std::string>& known, Faults& faults) {
  return CsvReader(text, file, alone, known, faults).read(unit);
}

bool anything_read(const CsvContent& content, Faults& faults) {
  int places = 0;
  for (const CsvStation& station : content.stations) {
    if (!station.readings.empty()) return true;
    places += station.not_read;
  }
  const Place header{content.file, content.header.line};
  if (places == 0) {
    faults.add(header, "there are no readings below the header row", "write one row for each place that was measured");
  } else {
    const std::string wait = places == 1 ? " place waits for its reading" : " places wait for their readings";
    faults.add(header, "nothing is filled in yet: " + std::to_string(places) + wait,
               "write what was read beside each x; places that cannot be reached may stay empty");
  }
  return false;
}

}  // namespace fairblade::job
